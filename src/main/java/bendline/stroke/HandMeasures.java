package bendline.stroke;

import bendline.body.BodyTrace;
import bendline.body.Joint;
import bendline.signal.SmoothCurve;
import java.util.Map;

/** Heights of the upper hand and the lower hand's pull. */
final class HandMeasures {

    /** Share of the frames of the forward stroke in which a joint must show. */
    private static final double SHOWN = 0.6;

    /** Error of a height between two joints, over the radius of one. */
    private static final double HEIGHT = 1.2;

    private final BodySeries series;
    private final BodyTrace body;
    private final BodyReader.Trends trends;
    private final BodyReader.Span span;
    private final BodyScale scale;

    HandMeasures(BodySeries series, BodyTrace body, BodyReader.Trends trends, BodyReader.Span span, BodyScale scale) {
        this.series = series;
        this.body = body;
        this.trends = trends;
        this.span = span;
        this.scale = scale;
    }

    void into(Map<Quantity, Measure> out) {
        height(out, Quantity.HAND_BELOW_HEAD, trends.aboveHead(), span.start());
        height(out, Quantity.HAND_AT_SHOULDER, trends.aboveShoulders(), span.start());
        height(out, Quantity.RELEASE_HAND_HEAD, trends.aboveHead(), span.release());
        height(out, Quantity.RELEASE_HAND_SHOULDER, trends.aboveShoulders(), span.release());
        pull(out);
        out.put(
                Quantity.HANDS_APART,
                scale.metres(
                        Quantity.HANDS_APART,
                        new Found(
                                body.hands().apartPx(),
                                body.hands().apartSdPx(),
                                body.hands().basis())));
    }

    /** Of two joints, each with its own error, one coordinate: √2/1.515 of the radius in which one of them lies, and some to spare. */
    private void height(Map<Quantity, Measure> out, Quantity q, BodyTrend trend, double at) {
        double value = trend.trend().valueCurve().at(at);
        Found px = hidden(upper())
                ? Found.nothing("the upper hand is hidden in most of the forward stroke")
                : Double.isNaN(value)
                        ? Found.nothing("the body was not followed at that moment")
                        : new Found(
                                value,
                                HEIGHT * scale.jointSdPx(),
                                "wrist, nose and shoulders, smoothed, seen from the side");
        out.put(q, scale.metres(q, px));
    }

    private void pull(Map<Quantity, Measure> out) {
        boolean hidden = hidden(upper().other());
        String why = "the lower hand is hidden in most of the forward stroke";
        Found speed = hidden
                ? Found.nothing(why)
                : span.peaks().fastestFall(trends.toChest(), "the lower hand's distance from the chest");
        out.put(Quantity.PULL_SPEED, scale.metres(Quantity.PULL_SPEED, speed));
        out.put(Quantity.PULL_LENGTH, scale.metres(Quantity.PULL_LENGTH, hidden ? Found.nothing(why) : way()));
    }

    /** From the farthest to the nearest after it; between them the error has wandered as far as it goes. */
    private Found way() {
        SmoothCurve c = trends.toChest().trend().valueCurve();
        double near = c.argMin(span.start(), span.release() + 0.1);
        double far = c.argMax(span.start() - 0.1, near);
        double value = c.at(far) - c.at(near);
        return Double.isNaN(value)
                ? Found.nothing("the lower hand was not followed through the forward stroke")
                : new Found(value, scale.jointSdPx(), "farthest to nearest distance from the chest");
    }

    private Joint upper() {
        return body.hands().upper() == Joint.LEFT_WRIST ? Joint.LEFT_WRIST : Joint.RIGHT_WRIST;
    }

    private boolean hidden(Joint wrist) {
        return series.shown(wrist, span.start(), span.release()) < SHOWN;
    }
}
