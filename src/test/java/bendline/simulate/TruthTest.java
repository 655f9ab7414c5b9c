package bendline.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import bendline.geometry.Point;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The truth agrees with itself and with what was scripted. */
class TruthTest {

    private static Truth good;
    private static Truth faulty;

    @BeforeAll
    static void simulate() {
        good = Simulator.truth(SmallScenario.cast(0, 0));
        faulty = Simulator.truth(CastTuner.tunedAndTrimmed(SmallScenario.cast(1, 1)));
    }

    @Test
    void aGoodCastHasItsMomentsInOrder() {
        Map<String, Double> e = good.casts().get(0).events();
        List<String> order = List.of(
                "backswingStart", "backswingEnd", "forwardStart", "fastestTurn", "peakBend", "release", "rodStraight");
        for (int i = 1; i < order.size(); i++) {
            assertThat(e.get(order.get(i))).as(order.get(i)).isGreaterThan(e.get(order.get(i - 1)));
        }
        assertThat(e.get("stop")).isGreaterThan(e.get("fastestTurn"));
        assertThat(e).containsKeys("rearmost", "tipLowest");
    }

    @Test
    void aGoodCastIsLikeARealOne() {
        Map<String, Double> m = good.casts().get(0).measures();
        assertThat(m.get("launchSpeedMps")).isBetween(25.0, 50.0);
        assertThat(m.get("launchAngleDeg")).isBetween(30.0, 50.0);
        assertThat(m.get("smallestChordRatio")).isBetween(0.78, 0.92);
        assertThat(m.get("backswingSeconds")).isBetween(1.2, 2.5);
        assertThat(m.get("buttDropAfter250msDeg")).isBetween(-2.0, 4.0);
    }

    @Test
    void aRushedCastIsHurriedFlatAndLate() {
        Map<String, Double> m = faulty.casts().get(0).measures();
        Map<String, Double> g = good.casts().get(0).measures();
        assertThat(m.get("tempo")).isLessThan(0.5 * g.get("tempo"));
        assertThat(m.get("settleSeconds")).isLessThan(g.get("settleSeconds"));
        assertThat(m.get("layBackDeg")).isGreaterThan(g.get("layBackDeg") + 20);
        assertThat(m.get("rigSpeedAtForwardStartMps")).isGreaterThan(2 * g.get("rigSpeedAtForwardStartMps"));
        assertThat(m.get("buttDropAfter250msDeg")).isGreaterThan(25);
        assertThat(faulty.casts().get(0).faults().values()).containsOnly(Severity.CLEAR);
        assertThat(good.casts().get(0).faults().values()).containsOnly(Severity.NONE);
    }

    @Test
    void blankGripAndTipLieOnOneCurve() {
        for (Truth.Frame f : good.frames()) {
            assertThat(f.blank()).hasSize(25);
            assertThat(f.blank().get(24).distance(f.tip())).isLessThan(0.01);
            bendline.geometry.Polyline blank = new bendline.geometry.Polyline(f.blank());
            assertThat(blank.distanceTo(f.grip())).isLessThan(0.1);
            // What is seen is as long as the rod, less a little where it leans out of the square.
            double metres = blank.length() / f.pxPerMetreGrip();
            assertThat(metres).isEqualTo(RodSpec.medium().lengthM(), within(0.1));
        }
    }

    @Test
    void thePlaneMapTakesMetresToPixels() {
        Truth.Frame f = good.frames().get(3);
        List<Double> m = good.planeToStill();
        Motion motion = Simulator.motion(good.scenario());
        Motion.Moment at = motion.at(3 / 30.0);
        double w = m.get(6) * at.tipX() + m.get(7) * at.tipY() + m.get(8);
        Point p = new Point(
                (m.get(0) * at.tipX() + m.get(1) * at.tipY() + m.get(2)) / w,
                (m.get(3) * at.tipX() + m.get(4) * at.tipY() + m.get(5)) / w);
        assertThat(p.distance(f.tip())).isLessThan(0.01);
    }

    @Test
    void tipSpeedIsTheWayOverTheTime() {
        List<Truth.Frame> frames = good.frames();
        double exposure = good.clip().exposureSeconds();
        for (Truth.Frame f : frames.subList(20, 150)) {
            double way = f.tipBlur().get(0).distance(f.tipBlur().get(1)) / f.pxPerMetreTip();
            assertThat(way / exposure).isEqualTo(f.tipSpeedMps(), within(0.4 + 0.08 * f.tipSpeedMps()));
        }
    }

    @Test
    void slowMotionStretchesMomentsButNotDurations() {
        Scenario s = SmallScenario.cast(0, 0);
        CameraSpec c = s.camera();
        CameraSpec slow = new CameraSpec(
                c.width(),
                c.height(),
                0,
                120,
                30,
                0.002,
                c.focalPx(),
                c.distanceM(),
                c.heightM(),
                0,
                c.aimXM(),
                c.aimYM(),
                0,
                0,
                0,
                0,
                c.bitsPerSecond());
        Truth t = Simulator.truth(new Scenario(
                s.name(),
                s.seed(),
                s.seconds(),
                true,
                true,
                s.statureM(),
                s.tipColour(),
                s.rod(),
                s.rig(),
                s.casts(),
                slow,
                s.scene()));
        Truth.Cast a = good.casts().get(0);
        Truth.Cast b = t.casts().get(0);
        assertThat(b.events().get("release")).isEqualTo(4 * a.events().get("release"), within(1e-5));
        assertThat(b.measures()).isEqualTo(a.measures());
        assertThat(t.frames().get(120).seconds()).isEqualTo(4.0, within(1e-9));
    }

    @Test
    void nobodyHoldsNothing() {
        Truth t = Simulator.truth(SmallScenario.nobody());
        assertThat(t.casts()).isEmpty();
        assertThat(t.frames()).allSatisfy(f -> assertThat(f.tip()).isNull());
    }

    @Test
    void aRodPutDownIsNoCast() {
        Scenario s = SmallScenario.cast(0, 0);
        Truth t = Simulator.truth(
                s.withCasts(List.of(s.casts().get(0).puttingDown())).lasting(3));
        assertThat(t.casts()).isEmpty();
        assertThat(t.frames()).allSatisfy(f -> assertThat(f.rigHeld()).isTrue());
    }
}
