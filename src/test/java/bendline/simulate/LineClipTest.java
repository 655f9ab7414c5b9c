package bendline.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The line that comes tight on its clip, firmly, softly or never. */
class LineClipTest {

    private record Flown(Motion motion, Map<String, Double> times) {

        /** How far the tip is pulled from a moment on within half a second, as a turn of the line from hand to tip, degrees. */
        double dipDeg(double from) {
            double before = direction(motion.at(from));
            double most = 0;
            for (double t = from; t < from + 0.5; t += 0.01) {
                most = Math.max(most, before - direction(motion.at(t)));
            }
            return Math.toDegrees(most);
        }

        private static double direction(Motion.Moment m) {
            return Math.atan2(m.tipY() - m.handY(), m.tipX() - m.handX());
        }
    }

    private static Flown firm;
    private static Flown soft;
    private static Flown none;

    @BeforeAll
    static void fly() {
        firm = flown("clip-firm");
        soft = flown("clip-soft");
        none = flown("clip-none");
    }

    private static Flown flown(String preset) {
        Scenario s = Presets.named(preset);
        Motion motion = CastRun.compute(s.rod(), s.rig(), s.casts(), s.statureM(), s.seconds(), s.seed());
        CastTimes times = new CastTimes(
                motion, s.casts().get(0), motion.launches().get(0), s.rod().freeLengthM());
        return new Flown(motion, times.times());
    }

    @Test
    void theRigNeverGetsFurtherThanTheLineStretches() {
        for (Flown flown : List.of(firm, soft)) {
            double furthest = 0;
            for (int i = 0; i < flown.motion().size(); i++) {
                Motion.Moment m = flown.motion().sample(i);
                furthest = Math.max(furthest, Math.hypot(m.rigX() - m.tipX(), m.rigY() - m.tipY()));
            }
            assertThat(furthest).isBetween(74.9, 76.0);
        }
    }

    @Test
    void aFirmClipPullsTheTipFurtherThanASoftOne() {
        double hard = firm.dipDeg(firm.times().get("clipNod"));
        double gentle = soft.dipDeg(soft.times().get("clipNod"));
        assertThat(hard).isGreaterThan(1.5 * gentle);
        assertThat(gentle).isGreaterThan(3);
    }

    @Test
    void theNodIsTheMomentInWhichThePullBegins() {
        for (Flown flown : List.of(firm, soft)) {
            Motion m = flown.motion();
            int nod = m.indexAt(flown.times().get("clipNod"));
            assertThat(m.tension(nod - 10)).isLessThan(0.7);
            assertThat(m.tension(nod + 300)).isGreaterThan(2);
        }
    }

    @Test
    void withoutAClipNothingPulls() {
        assertThat(none.times()).doesNotContainKey("clipNod").containsKey("release");
        assertThat(none.dipDeg(none.times().get("release") + 3)).isLessThan(1.5);
    }

    /** What the hands put in is in the rod, the rig, the line, or lost to air and line: the line that stops the rig included. */
    @Test
    void noEnergyComesFromNowhere() {
        for (Flown flown : List.of(firm, soft, none)) {
            assertThat(flown.motion().worstBalance())
                    .isLessThan(1e-3 * flown.motion().workIn());
        }
    }

    @Test
    void aClipNearerThanAnyoneFishesIsRefused() {
        RigSpec rig = RigSpec.feeder(85, 1.25);
        assertThatThrownBy(() -> rig.clippedAt(2, 0)).hasMessageContaining("line clip (m)");
        assertThatThrownBy(() -> rig.clippedAt(60, 11)).hasMessageContaining("feathering (N)");
    }
}
