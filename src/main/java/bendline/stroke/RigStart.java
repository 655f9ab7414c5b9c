package bendline.stroke;

import bendline.geometry.Angles;
import bendline.signal.LocalPolynomial;
import bendline.signal.PolynomialFit;
import java.util.stream.IntStream;

/**
 * What the rig does on its drop when the forward stroke begins.
 *
 * @param swingDeg rig behind (+) or before (−) the plumb line under the tip, degrees
 * @param awayRate backward speed of the rig in drops per second, positive while it still swings away from the cast
 * @param slack largest slack between tip and rig in the first half of the sweep, over the drop
 * @param dropPx the drop, pixels
 */
record RigStart(Found swingDeg, Found awayRate, Found slack, Found dropPx) {

    private static final double HALF_WINDOW_SECONDS = 0.06;
    private static final double HALF_WINDOW_FRAMES = 3.2;
    private static final int LEAST_FRAMES = 4;

    static RigStart of(RodSeries rod, double step, double forwardStart, double halfSweep, double fastest) {
        double drop = RigLine.drop(rod, rod.time()[0], fastest);
        if (Double.isNaN(drop)) {
            Found none = Found.nothing("the rig was not seen often enough before the forward stroke");
            return new RigStart(none, none, none, none);
        }
        Found length =
                new Found(drop, 0.02 * drop, "the largest distances between tip and rig before the forward stroke");
        double half = Math.max(HALF_WINDOW_SECONDS, HALF_WINDOW_FRAMES * step);
        int[] near = seenBetween(rod, forwardStart - half, forwardStart + half);
        if (near.length < LEAST_FRAMES) {
            Found none = Found.nothing("the rig was not seen round the forward start");
            return new RigStart(none, none, slack(rod, drop, forwardStart, halfSweep), length);
        }
        return new RigStart(
                swing(rod, near, forwardStart),
                away(rod, near, forwardStart, drop),
                slack(rod, drop, forwardStart, halfSweep),
                length);
    }

    private static int[] seenBetween(RodSeries rod, double from, double to) {
        return IntStream.range(0, rod.size())
                .filter(i -> rod.time()[i] >= from && rod.time()[i] <= to && !Double.isNaN(RigLine.distance(rod, i)))
                .toArray();
    }

    private static Found swing(RodSeries rod, int[] near, double at) {
        double[] relative = IntStream.of(near)
                .mapToDouble(i -> Math.atan2(rod.tipX()[i] - rod.rigX()[i], rod.tipY()[i] - rod.rigY()[i]))
                .toArray();
        double[] angles = Angles.unwrap(relative);
        double[] sd = IntStream.of(near)
                .mapToDouble(i -> RigLine.distanceSd(rod, i) / Math.max(1, RigLine.distance(rod, i)))
                .toArray();
        PolynomialFit fit = LocalPolynomial.fit(times(rod, near), angles, sd, at, 1);
        return new Found(
                Math.toDegrees(fit.value(at)),
                Math.toDegrees(fit.sd(at, 0) * fit.excess()),
                "direction from tip to rig in " + near.length + " frames round the forward start");
    }

    private static Found away(RodSeries rod, int[] near, double at, double drop) {
        double[] x = IntStream.of(near).mapToDouble(i -> rod.rigX()[i]).toArray();
        double[] sd = IntStream.of(near)
                .mapToDouble(i -> rod.rigSd()[i] / Math.sqrt(2))
                .toArray();
        PolynomialFit fit = LocalPolynomial.fit(times(rod, near), x, sd, at, 1);
        return new Found(
                -fit.derivative(at, 1) / drop,
                fit.sd(at, 1) * fit.excess() / drop,
                "the rig's level speed in " + near.length + " frames round the forward start");
    }

    private static Found slack(RodSeries rod, double drop, double from, double to) {
        int[] seen = seenBetween(rod, from, to);
        if (seen.length < 3) {
            return Found.nothing(
                    "the rig was seen in " + seen.length + " frames of the first half of the sweep, too few");
        }
        double[] slack = IntStream.of(seen)
                .mapToDouble(i -> 1 - RigLine.distance(rod, i) / drop)
                .sorted()
                .toArray();
        double sd = IntStream.of(seen)
                        .mapToDouble(i -> RigLine.distanceSd(rod, i))
                        .max()
                        .orElse(0)
                / drop;
        return new Found(
                Math.max(0, slack[slack.length - 2]),
                Math.hypot(sd, 0.02),
                "distance tip to rig against the drop, second largest slack of " + seen.length + " frames");
    }

    private static double[] times(RodSeries rod, int[] frames) {
        return IntStream.of(frames).mapToDouble(i -> rod.time()[i]).toArray();
    }
}
