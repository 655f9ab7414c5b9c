package bendline.stroke;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import bendline.body.BodySight;
import bendline.body.BodyTrace;
import bendline.body.Joint;
import bendline.body.JointSight;
import bendline.body.RodHold;
import bendline.footage.SlowMotion;
import bendline.geometry.Point;
import bendline.scene.Setup;
import bendline.scene.Setup.Side;
import bendline.trace.Trace;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A body made of smooth steps whose fastest moments are known by hand: a least-jerk step is fastest in its middle. */
class BodyReaderTest {

    private static final double FPS = 120;
    private static final double HEIGHT_PX = 350;
    private static final double METRES_PER_PX = 1.75 / HEIGHT_PX;
    private static final SlowMotion REAL = new SlowMotion(1, "given");

    /** Moments after the forward start at which hips, shoulders, upper and lower hand are fastest, seconds. */
    private record Script(
            double hips, double shoulders, double upper, double lower, double handOverNosePx, double pullPx) {}

    private static final Script GOOD = new Script(0.02, 0.06, 0.10, 0.16, 30, 80);

    private static double step(double t, double middle, double seconds) {
        double u = Math.max(0, Math.min(1, (t - middle) / seconds + 0.5));
        return u * u * u * (10 + u * (6 * u - 15));
    }

    private static BodyTrace body(Stroke stroke, Script s, double noise, Side side) {
        double start = stroke.event(EventKind.FORWARD_START).seconds();
        double sign = side == Side.RIGHT ? 1 : -1;
        Random random = new Random(11);
        List<BodySight> sights = new ArrayList<>();
        for (int i = stroke.firstFrame(); i <= stroke.lastFrame(); i++) {
            double t = i / FPS - start;
            Map<Joint, JointSight> joints = new EnumMap<>(Joint.class);
            double hips = 25 * step(t, s.hips(), 0.16);
            double shoulders = 30 * step(t, s.shoulders(), 0.16);
            double hand = 120 * step(t, s.upper(), 0.16);
            double pull = s.pullPx() * (1 - step(t, s.lower(), 0.16));
            for (Joint j : Joint.values()) {
                double x = switch (j) {
                    case LEFT_HIP, RIGHT_HIP -> hips;
                    case LEFT_SHOULDER, RIGHT_SHOULDER, NOSE -> shoulders;
                    case RIGHT_WRIST -> hand;
                    case LEFT_WRIST -> 0.7 * shoulders + 0.3 * hips + 20 + pull;
                    default -> 0;
                };
                double y = switch (j) {
                    case LEFT_HIP, RIGHT_HIP -> 400;
                    case LEFT_SHOULDER, RIGHT_SHOULDER -> 300;
                    case NOSE -> 270;
                    case RIGHT_WRIST -> 270 - s.handOverNosePx();
                    case LEFT_WRIST -> 330;
                    default -> 570;
                };
                joints.put(
                        j,
                        new JointSight(
                                new Point(sign * x + noise * random.nextGaussian(), y + noise * random.nextGaussian()),
                                0.9,
                                0.033 * HEIGHT_PX));
            }
            sights.add(new BodySight(i, i / FPS, 0.95, joints));
        }
        RodHold hold = new RodHold(Joint.RIGHT_WRIST, 80, 8, "both wrists along the butt");
        return new BodyTrace(sights, sights.size(), HEIGHT_PX, 0.06 * HEIGHT_PX, hold, null);
    }

    private static Stroke read(Script script, double noise, Side side) {
        Trace trace = AnalyticStroke.GOOD.trace(FPS, 1, side, 0.5, 0.02, 31);
        Stroke bare = Strokes.timed(AnalyticStroke.GOOD, FPS, 1, side);
        return new BodyReader(trace, Setup.NONE, REAL).read(bare, body(bare, script, noise, side));
    }

    private static double value(Stroke s, String id) {
        Measure m = s.measure(id);
        assertThat(m.value()).as(m.basis()).isNotNull();
        return m.value();
    }

    @ParameterizedTest
    @CsvSource({"0.05, RIGHT, 0.006", "0.05, LEFT, 0.006", "1.0, RIGHT, 0.02"})
    void fastestMomentsAreThoseOfTheScript(double noise, Side side, double tolerance) {
        Stroke s = read(GOOD, noise, side);
        assertThat(value(s, "hipsBeforeUpperHand")).isEqualTo(0.08, within(tolerance));
        assertThat(value(s, "shouldersBeforeUpperHand")).isEqualTo(0.04, within(tolerance));
        assertThat(value(s, "lowerHandPullAfterPush")).isEqualTo(0.06, within(tolerance));
        assertThat(s.body().peaks()).extracting(Peak::part).containsExactly(BodyPart.values());
    }

    /** All but 0.6 thousandths of a least-jerk step of 0.16 s are made in its middle 0.15 s, over which speeds are told. */
    @Test
    void heightsAndPullAreThoseOfTheScript() {
        Stroke s = read(GOOD, 0.05, Side.RIGHT);
        assertThat(value(s, "upperHandAgainstHead")).isEqualTo(30 * METRES_PER_PX, within(0.003));
        assertThat(value(s, "upperHandAgainstShoulder")).isEqualTo(60 * METRES_PER_PX, within(0.003));
        assertThat(value(s, "lowerHandPullLength")).isEqualTo(80 * METRES_PER_PX, within(0.04));
        assertThat(value(s, "lowerHandPullSpeed")).isEqualTo(80 / 0.15 * METRES_PER_PX, within(0.1));
        assertThat(s.measure("upperHandAgainstHead").plusMinus()).isBetween(0.03, 0.12);
    }

    @Test
    void aStepAgainstTheOrderIsTold() {
        Stroke good = read(GOOD, 0.05, Side.RIGHT);
        Stroke bad = read(new Script(0.14, 0.12, 0.04, 0.16, 30, 80), 0.05, Side.RIGHT);
        assertThat(value(good, "peakOrder")).isLessThan(0.01);
        assertThat(value(bad, "peakOrder")).isEqualTo(0.08, within(0.015));
    }

    @Test
    void whatDoesNotMoveHasNoFastestMoment() {
        Stroke s = read(new Script(9, 9, 0.1, 9, 30, 80), 1, Side.RIGHT);
        assertThat(s.measure("hipsBeforeUpperHand").value()).isNull();
        assertThat(s.measure("hipsBeforeUpperHand").basis()).contains("hips");
    }

    /** The far arm behind the chest, as from a phone on the other side: what needs it is not told, the rest is. */
    @Test
    void aHiddenLowerHandIsNotGuessed() {
        Stroke bare = Strokes.timed(AnalyticStroke.GOOD, FPS, 1, Side.RIGHT);
        Trace trace = AnalyticStroke.GOOD.trace(FPS, 1, Side.RIGHT, 0.5, 0.02, 31);
        Stroke s = new BodyReader(trace, Setup.NONE, REAL).read(bare, hiding(body(bare, GOOD, 0.05, Side.RIGHT)));
        assertThat(s.measure("lowerHandPullSpeed").value()).isNull();
        assertThat(s.measure("lowerHandPullSpeed").basis()).contains("hidden");
        assertThat(s.measure("upperHandAgainstHead").value()).isNotNull();
    }

    private static BodyTrace hiding(BodyTrace body) {
        List<BodySight> sights = new ArrayList<>();
        for (BodySight b : body.sights()) {
            Map<Joint, JointSight> joints = new EnumMap<>(b.joints());
            JointSight w = b.joint(Joint.LEFT_WRIST);
            joints.put(Joint.LEFT_WRIST, new JointSight(w.place(), 0.2, 2 * w.sdPx()));
            sights.add(new BodySight(b.frame(), b.seconds(), b.person(), joints));
        }
        return new BodyTrace(sights, body.asked(), body.heightPx(), body.heightSdPx(), body.hands(), null);
    }

    @Test
    void withoutABodyEveryMeasureOfItHasTheReason() {
        Stroke bare = Strokes.timed(AnalyticStroke.GOOD, FPS, 1, Side.RIGHT);
        Trace trace = AnalyticStroke.GOOD.trace(FPS, 1, Side.RIGHT, 0.5, 0.02, 31);
        Stroke s = new BodyReader(trace, Setup.NONE, REAL)
                .read(bare, BodyTrace.nobody(90, "nobody was seen to hold the rod"));
        for (Quantity q : BodyReader.TOLD) {
            assertThat(s.measure(q.id()).value()).isNull();
            assertThat(s.measure(q.id()).basis()).isEqualTo("nobody was seen to hold the rod");
        }
        assertThat(s.body().peaks()).allMatch(p -> p.seconds() == null);
    }
}
