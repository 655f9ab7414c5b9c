package bendline.stroke;

import bendline.signal.SmoothCurve;
import bendline.signal.Trend;
import java.util.stream.IntStream;

/**
 * How far a blank is bent and to which side, as a number that is smoothed well: √(1 − chord ratio), positive where the tip trails a
 * forward stroke. The chord ratio itself falls like the square of the bend, is known a hundred times better of a straight rod than
 * of a bent one, and touches 1 with a corner each time the blank swings through the straight; a smoother takes the few deep frames
 * of a stroke at 30 frames a second for strays then. This number goes with the bend, is known about equally well everywhere and
 * passes through the straight smoothly.
 *
 * @param value one entry a frame, NaN where the chord ratio is not known
 * @param sd its 68 % uncertainty
 */
record BendSize(double[] value, double[] sd) {

    static BendSize of(RodSeries rod) {
        int n = rod.size();
        double[] value = new double[n];
        double[] sd = new double[n];
        double side = 1;
        for (int i = 0; i < n; i++) {
            double size = Math.sqrt(Math.max(0, 1 - rod.chord()[i]));
            side = Double.isNaN(rod.lag()[i]) ? side : Math.signum(rod.lag()[i]);
            value[i] = Double.isNaN(rod.chord()[i]) ? Double.NaN : side * size;
            // The root's slope is endless at the straight: there the uncertainty is the root of the ratio's own.
            sd[i] = rod.chordSd()[i] / (2 * Math.sqrt(size * size + rod.chordSd()[i] / 4));
        }
        return new BendSize(value, sd);
    }

    /** The chord ratio of a smooth bend. */
    static SmoothCurve chord(SmoothCurve bend) {
        return bend.oneLessSquare();
    }

    static double[] chord(Trend bend) {
        return IntStream.range(0, bend.values().length)
                .mapToDouble(i -> 1 - bend.values()[i] * bend.values()[i])
                .toArray();
    }

    static double[] chordSd(Trend bend) {
        return IntStream.range(0, bend.values().length)
                .mapToDouble(i -> bend.valueSds()[i] * Math.hypot(2 * bend.values()[i], bend.valueSds()[i]))
                .toArray();
    }
}
