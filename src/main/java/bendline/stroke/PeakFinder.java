package bendline.stroke;

import bendline.signal.SmoothCurve;
import bendline.signal.Trend;
import java.util.function.UnaryOperator;

/** When the rate of a smoothed series is largest, with what its noise allows. */
final class PeakFinder {

    private static final int DRAWS = 40;

    /** How many times its own uncertainty a peak must be, or it is only noise. */
    private static final double CONTRAST = 3;

    /** A joint is blurred over the exposure and read a little early or late: share of a step that this adds. */
    private static final double FRAME_SHARE = 0.5;

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
    Found rising(Trend trend, String what) {
        return time(trend, c -> c, what);
    }

    /** When a series falls fastest, real seconds. */
    Found falling(Trend trend, String what) {
        return time(trend, SmoothCurve::negated, what);
    }

    private Found time(Trend trend, UnaryOperator<SmoothCurve> way, String what) {
        SmoothCurve rate = way.apply(trend.rateCurve());
        double at = rate.argMax(from, to);
        if (Double.isNaN(at)) {
            return Found.nothing(what + " was not followed through the forward stroke");
        }
        if (rate.at(at) < CONTRAST * noise(trend, at)) {
            return Found.nothing(what + " does not move fast enough against the noise to time it");
        }
        if (at - from < step || to - at < step) {
            return Found.nothing(what + " has no fastest moment in the forward stroke");
        }
        double[] draws = new double[DRAWS];
        for (int k = 0; k < DRAWS; k++) {
            draws[k] = way.apply(trend.draw(31L * k + 7).rates()).argMax(from, to);
        }
        double sd = Math.hypot(Spread.of(draws), FRAME_SHARE * step);
        return Double.isNaN(sd)
                ? Found.nothing(what + " was followed with too many gaps")
                : new Found(at, sd, what + ", where its smoothed speed is largest");
    }

    /** The largest rate itself, in the series' unit a real second. */
    Found fastestFall(Trend trend, String what) {
        SmoothCurve rate = trend.rateCurve().negated();
        double at = rate.argMax(from, to);
        if (Double.isNaN(at)) {
            return Found.nothing(what + " was not followed through the forward stroke");
        }
        return new Found(rate.at(at), noise(trend, at), what + ", largest smoothed speed");
    }

    private static double noise(Trend trend, double at) {
        double[] t = trend.times();
        int best = 0;
        for (int i = 1; i < t.length; i++) {
            if (Math.abs(t[i] - at) < Math.abs(t[best] - at)) {
                best = i;
            }
        }
        return trend.rateSds()[best];
    }
}
