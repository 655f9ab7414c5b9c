package bendline.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import bendline.footage.ClipInfo;
import bendline.footage.SlowMotion;
import bendline.scene.Setup;
import bendline.stroke.HangingRig;
import bendline.trace.FrameTrace;
import bendline.trace.Trace;
import java.util.List;
import org.junit.jupiter.api.Test;

class TimekeeperTest {

    private static final Setup FREE = new Setup(null, HangingRig.FREE_M, null, null, null, null, List.of());
    private static final SlowMotion AS_PLAYED = new SlowMotion(1, "as played: nothing tells", false);

    /** Captured at 120 frames a second and played so many times slower. */
    private static Trace clip(double factor) {
        return HangingRig.trace(120, factor, 3.5, HangingRig.STILL, HangingRig.swinging(1.1, 4));
    }

    private static ClipInfo info(Trace trace, SlowMotion slowMotion) {
        List<Double> times = trace.frames().stream().map(FrameTrace::seconds).toList();
        double end = times.get(times.size() - 1);
        return new ClipInfo(1920, 1080, times.size(), end, 0, false, slowMotion, times, List.of());
    }

    @Test
    void aFactorThatNothingTellsIsInferredFromTheHangingRig() {
        Trace slowed = clip(4);
        SlowMotion found =
                Timekeeper.inferred(info(slowed, AS_PLAYED), slowed, FREE).slowMotion();
        assertThat(found.factor()).isCloseTo(4, within(1e-9));
        assertThat(found.basis()).contains("inferred").contains("swings once in");
        assertThat(found.told()).isTrue();
    }

    @Test
    void realTimeStaysRealTimeAndIsSaidToHold() {
        Trace real = clip(1);
        ClipInfo info = info(real, AS_PLAYED);
        assertThat(Timekeeper.inferred(info, real, FREE)).isSameAs(info);
        assertThat(Timekeeper.checked(info, real, FREE, List.of()).notes())
                .singleElement()
                .asString()
                .startsWith("The clip's time fits gravity");
    }

    @Test
    void aFactorThatTheRigContradictsRaisesAnAlarmButIsKept() {
        Trace real = clip(1);
        ClipInfo wrong = info(real, new SlowMotion(8, "as you gave it"));
        assertThat(Timekeeper.inferred(wrong, real, FREE)).isSameAs(wrong);
        ClipInfo checked = Timekeeper.checked(wrong, real, FREE, List.of());
        assertThat(checked.slowMotion().factor()).isEqualTo(8);
        assertThat(checked.notes()).singleElement().asString().startsWith("Check the slow-motion factor");
    }

    @Test
    void aVagueClueRaisesAnAlarmButSetsNothing() {
        Trace slowed = clip(4);
        ClipInfo info = info(slowed, AS_PLAYED);
        assertThat(Timekeeper.inferred(info, slowed, Setup.NONE)).isSameAs(info);
        assertThat(Timekeeper.checked(info, slowed, Setup.NONE, List.of()).notes())
                .singleElement()
                .asString()
                .startsWith("Check the slow-motion factor");
    }
}
