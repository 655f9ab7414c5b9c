package bendline.stroke;

import bendline.signal.Scatter;
import bendline.signal.Trend;
import bendline.signal.TrendSmoother;
import java.util.Arrays;

/**
 * The smoothed series of one cast's frames.
 *
 * @param angle butt angle
 * @param gripX upper hand, forward
 * @param bend signed size of the bend, see {@link BendSize}
 * @param lag tip behind the butt's direction
 * @param tipX tip, forward
 * @param tipY tip, up
 */
record StrokeTrends(Trend angle, Trend gripX, Trend bend, Trend lag, Trend tipX, Trend tipY) {

    /** Longest gap that is bridged, real seconds: under half a forward stroke. */
    static final double BRIDGE_SECONDS = 0.1;

    private static final double BRIDGE_FRAMES = 3.5;

    /**
     * Longest gap over which the ways of butt and hand are drawn on to tell when a movement began or ended that was seen on both
     * sides of it, real seconds: a forward stroke. Nothing else is told from within, and how wide the gap leaves a moment open is
     * in the paths that are drawn through it.
     */
    static final double LONG_BRIDGE_SECONDS = 0.35;

    /** What a place read from a picture can be trusted to at best. */
    private static final double LEAST_SCATTER_PX = 0.2;

    /** In which a hand gathers speed, real seconds. */
    private static final double START_SECONDS = 0.05;

    /** A smoother for series with the given usual step between frames, real seconds. */
    static TrendSmoother smoother(double step) {
        return new TrendSmoother(bridge(step));
    }

    /** The longest gap that such a smoother bridges, real seconds. */
    static double bridge(double step) {
        return Math.max(BRIDGE_SECONDS, BRIDGE_FRAMES * step);
    }

    /** The butt angle, its long gaps bridged too. */
    static Trend angle(RodSeries rod, double step) {
        return across(step).smooth(rod.time(), rod.angle(), rod.angleSd());
    }

    private static TrendSmoother across(double step) {
        return new TrendSmoother(Math.max(LONG_BRIDGE_SECONDS, bridge(step)));
    }

    static StrokeTrends of(RodSeries rod, double step) {
        TrendSmoother s = smoother(step);
        BendSize bend = BendSize.of(rod);
        return new StrokeTrends(
                angle(rod, step),
                across(step).smooth(rod.time(), rod.gripX(), straying(rod.gripX(), rod.gripSd(), step)),
                s.smooth(rod.time(), bend.value(), bend.sd()),
                s.smooth(rod.time(), rod.lag(), rod.lagSd()),
                s.smooth(rod.time(), rod.tipX(), rod.tipSd()),
                s.smooth(rod.time(), rod.tipY(), rod.tipSd()));
    }

    /**
     * The hand's radius says how well its place on the rod is known, which is alike in all frames; for its speed only what
     * differs from frame to frame counts, and over the time in which it starts.
     */
    private static double[] straying(double[] place, double[] radius, double step) {
        int stride = (int) Math.max(1, Math.round(START_SECONDS / step));
        double scatter = Math.max(LEAST_SCATTER_PX, Math.max(Scatter.of(place, 1), Scatter.of(place, stride)));
        return Double.isNaN(scatter)
                ? radius
                : Arrays.stream(radius).map(r -> Math.min(r, scatter)).toArray();
    }

    Curves curves() {
        return curves(angle.path(), gripX.path(), bend.path(), lag.path());
    }

    /** Curves as likely as the trace's uncertainties say. */
    Curves draw(long seed) {
        return curves(angle.draw(seed), gripX.draw(seed + 1), bend.draw(seed + 2), lag.draw(seed + 3));
    }

    private static Curves curves(Trend.Path angle, Trend.Path grip, Trend.Path bend, Trend.Path lag) {
        return new Curves(
                angle.values(),
                angle.rates().negated(),
                grip.rates(),
                BendSize.chord(bend.values()),
                lag.values(),
                lag.rates());
    }
}
