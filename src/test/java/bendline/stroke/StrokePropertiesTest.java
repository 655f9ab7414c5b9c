package bendline.stroke;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import bendline.footage.SlowMotion;
import bendline.scene.Setup;
import bendline.scene.Setup.Side;
import bendline.trace.Trace;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

/** What must not matter. */
class StrokePropertiesTest {

    private static final Setup METRES = new Setup(null, 3.3, null, null, null, null, List.of());

    private static AnalyticStroke stroke(double backswing, double rearmost, double fall) {
        return AnalyticStroke.GOOD.withBackswing(backswing, 0.4, rearmost).withFinish(52, fall, 0.05, 0.3);
    }

    private static Stroke timed(Trace trace, double factor) {
        List<Stroke> strokes = new StrokeTimer().time(trace, METRES, new SlowMotion(factor, "given"));
        assertThat(strokes).hasSize(1);
        return strokes.get(0);
    }

    private static void sameMeasures(Stroke a, Stroke b, double tolerance) {
        for (Measure m : a.measures()) {
            Double other = b.measure(m.id()).value();
            if (m.value() == null) {
                assertThat(other).as(m.id()).isNull();
            } else {
                double room = tolerance * Math.max(1, Math.abs(m.value()));
                assertThat(other).as(m.id()).isNotNull().isCloseTo(m.value(), within(room));
                assertThat(b.measure(m.id()).plusMinus()).as(m.id() + " ±").isCloseTo(m.plusMinus(), within(room));
            }
        }
    }

    /** Seen in a mirror a cast has the same measures. */
    @Property(tries = 6)
    void leftAndRightGiveTheSame(
            @ForAll @DoubleRange(min = 0.8, max = 2) double backswing,
            @ForAll @DoubleRange(min = 125, max = 165) double rearmost,
            @ForAll @DoubleRange(min = 0, max = 45) double fall) {
        AnalyticStroke s = stroke(backswing, rearmost, fall);
        Trace right = s.trace(60, 1, Side.RIGHT, 0.6, 0.03, 21);
        Trace left = Mirror.of(right);
        Stroke a = timed(right, 1);
        Stroke b = timed(left, 1);
        assertThat(a.castsTo()).isEqualTo(Side.RIGHT);
        assertThat(b.castsTo()).isEqualTo(Side.LEFT);
        sameMeasures(a, b, 1e-5);
    }

    /** The same frames played slower are the same cast: real times, rates and speeds stay, clip times stretch. */
    @Property(tries = 6)
    void slowMotionChangesNothingReal(
            @ForAll @IntRange(min = 2, max = 10) int factor,
            @ForAll @DoubleRange(min = 125, max = 165) double rearmost,
            @ForAll @DoubleRange(min = 0, max = 45) double fall) {
        AnalyticStroke s = stroke(1.0, rearmost, fall);
        Stroke real = timed(s.trace(120, 1, Side.RIGHT, 0.6, 0.03, 22), 1);
        Stroke slow = timed(s.trace(120, factor, Side.RIGHT, 0.6, 0.03, 22), factor);
        sameMeasures(real, slow, 1e-5);
        for (EventKind k : EventKind.values()) {
            Double t = real.event(k).seconds();
            if (t != null) {
                assertThat(slow.event(k).seconds()).as(k.id()).isCloseTo(t * factor, within(1e-5 * factor));
                assertThat(slow.event(k).frame()).isEqualTo(real.event(k).frame());
            }
        }
    }
}
