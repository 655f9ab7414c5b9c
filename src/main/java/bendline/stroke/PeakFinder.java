package bendline.stroke;

import bendline.signal.SmoothCurve;
import java.util.Random;

/**
 * When a followed joint is fastest, with what its noise allows. Speeds are means over some frames: what a joint's place is off by
 * wanders, and a shorter look would mostly see that.
 */
final class PeakFinder {

    /** Over which a fastest moment is looked for: shorter than any link's way, real seconds. */
    private static final double WINDOW_SECONDS = 0.08;

    /** Over which a speed itself is told: half of a usual turn, real seconds. */
    private static final double SPEED_SECONDS = 0.15;

    private static final int DRAWS = 40;

    /** How many times its own uncertainty a fastest speed must be, or it is only noise: 95 %. */
    private static final double CONTRAST = 2;

    /** A joint is blurred over the exposure and read a little early or late: share of a step that this adds. */
    private static final double FRAME_SHARE = 0.5;

    /** A wandering error has as much speed in each of these, Hz. */
    private static final double[] WANDER_HZ = {1, 2, 3, 4, 5, 6, 7};

    private final double from;
    private final double to;
    private final double step;

    /**
     * @param from real seconds
     * @param to real seconds
     * @param step between frames, real seconds
     */
    PeakFinder(double from, double to, double step) {
        this.from = from;
        this.to = to;
        this.step = step;
    }

    /** When a series grows fastest, real seconds. */
    Found rising(BodyTrend trend, String what) {
        return time(trend, 1, what);
    }

    /** When a series falls fastest, real seconds. */
    Found falling(BodyTrend trend, String what) {
        return time(trend, -1, what);
    }

    private Found time(BodyTrend trend, int way, String what) {
        SmoothCurve speed = speed(trend.trend().valueCurve(), way, WINDOW_SECONDS, t -> 0);
        double at = speed.argMax(from, to);
        if (Double.isNaN(at)) {
            return Found.nothing(what + " was not followed through the forward stroke");
        }
        if (speed.at(at) < CONTRAST * speedSd(trend, WINDOW_SECONDS)) {
            return Found.nothing(what + " does not move fast enough against the noise to time it");
        }
        if (at - from < step || to - at < step) {
            return Found.nothing(what + " has no fastest moment in the forward stroke");
        }
        double[] draws = new double[DRAWS];
        for (int k = 0; k < DRAWS; k++) {
            long seed = 31L * k + 7;
            Wander error = new Wander(trend.wanderPx(), seed);
            draws[k] = speed(trend.trend().draw(seed).values(), way, WINDOW_SECONDS, error)
                    .argMax(from, to);
        }
        double sd = Math.hypot(Spread.of(draws), FRAME_SHARE * step);
        return Double.isNaN(sd)
                ? Found.nothing(what + " was followed with too many gaps")
                : new Found(at, sd, what + ", where its smoothed speed is largest");
    }

    /** The largest speed itself, in the series' unit a real second. */
    Found fastestFall(BodyTrend trend, String what) {
        SmoothCurve speed = speed(trend.trend().valueCurve(), -1, SPEED_SECONDS, t -> 0);
        double at = speed.argMax(from, to);
        if (Double.isNaN(at)) {
            return Found.nothing(what + " was not followed through the forward stroke");
        }
        return new Found(speed.at(at), speedSd(trend, SPEED_SECONDS), what + ", largest mean speed over 0.15 s");
    }

    /** Both ends of the window have wandered apart, the farther the longer it is. */
    private static double speedSd(BodyTrend trend, double window) {
        return Math.sqrt(2 * window / BodyTrend.WANDER_SECONDS) * trend.wanderPx() / window;
    }

    /** Something added to a place, by time. */
    private interface Added {
        double at(double t);
    }

    /** Mean speeds about each time. */
    private SmoothCurve speed(SmoothCurve place, int way, double window, Added added) {
        int n = 2 + (int) Math.ceil((to - from) / Math.min(step, 0.25 * WINDOW_SECONDS));
        double[] t = new double[n];
        double[] v = new double[n];
        double[] slope = new double[n];
        for (int i = 0; i < n; i++) {
            t[i] = from + (to - from) * i / (n - 1);
            double a = t[i] - 0.5 * window;
            double b = t[i] + 0.5 * window;
            v[i] = way * (place.at(b) + added.at(b) - place.at(a) - added.at(a)) / window;
        }
        for (int i = 0; i < n; i++) {
            int a = Math.max(0, i - 1);
            int b = Math.min(n - 1, i + 1);
            slope[i] = (v[b] - v[a]) / (t[b] - t[a]);
        }
        return new SmoothCurve(t, v, slope);
    }

    /** An error that wanders like a joint's: its changes over a tenth of a second scatter by √2 of the size given. */
    private static final class Wander implements Added {

        private final double[] cosine = new double[WANDER_HZ.length];
        private final double[] sine = new double[WANDER_HZ.length];

        Wander(double size, long seed) {
            Random random = new Random(seed);
            double sum = 0;
            for (double hz : WANDER_HZ) {
                sum += (1 - Math.cos(2 * Math.PI * hz * BodyTrend.WANDER_SECONDS)) / (hz * hz);
            }
            for (int i = 0; i < WANDER_HZ.length; i++) {
                double a = size / Math.sqrt(sum) / WANDER_HZ[i];
                cosine[i] = a * random.nextGaussian();
                sine[i] = a * random.nextGaussian();
            }
        }

        @Override
        public double at(double t) {
            double sum = 0;
            for (int i = 0; i < WANDER_HZ.length; i++) {
                double phase = 2 * Math.PI * WANDER_HZ[i] * t;
                sum += cosine[i] * Math.cos(phase) + sine[i] * Math.sin(phase);
            }
            return sum;
        }
    }
}
