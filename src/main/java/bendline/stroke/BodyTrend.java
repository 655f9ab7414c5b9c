package bendline.stroke;

import bendline.signal.Trend;

/**
 * A smoothed number of a followed body.
 *
 * @param trend the number and its rate
 * @param wanderPx what its error changes by from one tenth of a second to the next, one of the two ends' share (standard deviation of
 *     the change over √2), reference pixels: smoothing does not take that off, since neighbouring frames err alike
 */
record BodyTrend(Trend trend, double wanderPx) {

    /** Over which the wandering is told, real seconds. */
    static final double WANDER_SECONDS = 0.1;
}
