package bendline.stroke;

import bendline.body.Joint;
import java.util.Map;

/** Turns as moments, the step and the weight. */
final class StanceMeasures {

    private static final double SHOWN = 0.6;

    private final BodySeries series;

    private final BodyReader.Trends trends;
    private final BodyReader.Span span;
    private final BodyScale scale;

    StanceMeasures(BodySeries series, BodyReader.Trends trends, BodyReader.Span span, BodyScale scale) {
        this.series = series;
        this.trends = trends;
        this.span = span;
        this.scale = scale;
    }

    void into(Map<Quantity, Measure> out) {
        turn(
                out,
                Quantity.HIP_TURN,
                trends.hipTurn(),
                "the hips' turn, as the change of how far they lie apart in the picture");
        turn(
                out,
                Quantity.SHOULDER_TURN,
                trends.shoulderTurn(),
                "the shoulders' turn, as the change of how far they lie apart in the picture");
        boolean feet = shows(Joint.LEFT_ANKLE) && shows(Joint.RIGHT_ANKLE);
        String why = "the feet are hidden";
        out.put(Quantity.STEP_LENGTH, scale.metres(Quantity.STEP_LENGTH, feet ? step() : Found.nothing(why)));
        out.put(Quantity.WEIGHT_SHIFT, scale.metres(Quantity.WEIGHT_SHIFT, feet ? shift() : Found.nothing(why)));
    }

    private boolean shows(Joint j) {
        return series.shown(j, span.start() - 0.3, span.release()) >= SHOWN;
    }

    /** The side of the upper hand comes forward in the push, so the gap between the sides grows fastest when they turn fastest. */
    private void turn(Map<Quantity, Measure> out, Quantity q, BodyTrend trend, String what) {
        Found at = span.peaks().rising(trend, what);
        out.put(q, at.known() ? q.known(span.release() - at.value(), at.sd(), at.basis()) : q.unknown(at.basis()));
    }

    /** How far the foot nearer the water is farther forward at the release than at the beginning of what was followed. */
    private Found step() {
        BodyTrend front = series.trend(
                Joint.LEFT_ANKLE, 1, b -> Math.max(series.x(b, Joint.LEFT_ANKLE), series.x(b, Joint.RIGHT_ANKLE)));
        return change(front, front.trend().times()[0], "the ankle nearer the water, first seen to release");
    }

    private Found shift() {
        BodyTrend over = series.trend(
                Joint.LEFT_HIP,
                1,
                b -> series.middle(b, Joint.LEFT_HIP).x()
                        - series.middle(b, Joint.LEFT_ANKLE).x());
        return change(over, span.start(), "middle of the hips over the middle of the ankles, forward start to release");
    }

    /** Each of the two moments has its own error. */
    private Found change(BodyTrend trend, double from, String basis) {
        double value = trend.trend().valueCurve().at(span.release())
                - trend.trend().valueCurve().at(from);
        return Double.isNaN(value)
                ? Found.nothing("the body was not followed at both moments")
                : new Found(value, Math.sqrt(2) * scale.jointSdPx(), basis);
    }
}
