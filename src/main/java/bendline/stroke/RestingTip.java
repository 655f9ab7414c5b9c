package bendline.stroke;

import bendline.signal.LeastSquares;
import bendline.signal.Scatter;
import java.util.Arrays;

/**
 * How the tip of a rod at rest goes on by itself: a drift and one swing, fitted to a stretch of its lag. A rod rings for seconds
 * after a cast, by as much as a soft pull bends it, so a pull is what this does not foretell.
 */
final class RestingTip {

    private static final double LOWEST_HZ = 1.5;
    private static final double HIGHEST_HZ = 9;

    /** Half of it shifts the phase at either end of half a second by less than a tenth of a turn. */
    private static final double STEP_HZ = 0.2;

    private static final int LEAST_FRAMES = 10;

    private final double origin;
    private final double hz;
    private final double[] part;
    private final double scatter;

    private RestingTip(double origin, double hz, double[] part, double scatter) {
        this.origin = origin;
        this.hz = hz;
        this.part = part;
        this.scatter = scatter;
    }

    /** Whether a stretch shows enough to be gone on with. */
    static boolean enough(double[] t) {
        return t.length >= LEAST_FRAMES;
    }

    /**
     * Fits what of {@code 1, t, cos ωt, sin ωt} fits best.
     *
     * @param t real seconds, rising, {@link #enough}
     * @param lag radians
     */
    static RestingTip of(double[] t, double[] lag) {
        double origin = t[t.length - 1];
        double least = Double.POSITIVE_INFINITY;
        double hz = LOWEST_HZ;
        for (double f = LOWEST_HZ; f <= HIGHEST_HZ; f += STEP_HZ) {
            double left = LeastSquares.residual(rows(t, origin, f), lag);
            if (left < least) {
                least = left;
                hz = f;
            }
        }
        double[] part = LeastSquares.solve(rows(t, origin, hz), lag);
        RestingTip tip = new RestingTip(origin, hz, part, 0);
        double[] off = new double[t.length];
        for (int i = 0; i < t.length; i++) {
            off[i] = Math.abs(lag[i] - tip.at(t[i]));
        }
        Arrays.sort(off);
        double freedom = Math.sqrt((double) t.length / (t.length - part.length - 1));
        return new RestingTip(origin, hz, part, Scatter.SD_OVER_MEDIAN * off[off.length / 2] * freedom);
    }

    private static double[][] rows(double[] t, double origin, double hz) {
        double[][] rows = new double[t.length][];
        for (int i = 0; i < t.length; i++) {
            rows[i] = row(t[i] - origin, hz);
        }
        return rows;
    }

    private static double[] row(double t, double hz) {
        double w = 2 * Math.PI * hz * t;
        return new double[] {1, t, Math.cos(w), Math.sin(w)};
    }

    /** Foretold lag, radians. */
    double at(double t) {
        double[] row = row(t - origin, hz);
        double sum = 0;
        for (int i = 0; i < part.length; i++) {
            sum += part[i] * row[i];
        }
        return sum;
    }

    /** How far single frames stray from it, radians, strays left out. */
    double scatter() {
        return scatter;
    }
}
