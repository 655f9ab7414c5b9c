package bendline.stroke;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.footage.SlowMotion;
import bendline.scene.Setup;
import bendline.scene.Setup.Side;
import java.util.List;

/** Timed strokes for tests of what comes after the timing. */
public final class Strokes {

    private Strokes() {}

    /** An analytic stroke as it would be timed from a trace with 0.5 px of error. */
    public static Stroke timed(AnalyticStroke stroke, double fps, double factor, Side side) {
        List<Stroke> strokes = new StrokeTimer()
                .time(stroke.trace(fps, factor, side, 0.5, 0.02, 31), Setup.NONE, new SlowMotion(factor, "given"));
        assertThat(strokes).hasSize(1);
        return strokes.get(0);
    }

    /** A clean stroke with another way back. */
    public static AnalyticStroke withBackswing(double seconds, double settle, double rearmost) {
        return AnalyticStroke.GOOD.withBackswing(seconds, settle, rearmost);
    }

    /** The same with another load: deepest turn of the tip, when it starts as a share of the turn, and early slack. */
    public static AnalyticStroke withLoad(AnalyticStroke s, double deepest, double from, double slack) {
        return s.withLoad(deepest, from, slack);
    }

    /** The same with another finish: angle of the stop, fall, its delay and its time. */
    public static AnalyticStroke withFinish(AnalyticStroke s, double stop, double fall, double delay, double seconds) {
        return s.withFinish(stop, fall, delay, seconds);
    }
}
