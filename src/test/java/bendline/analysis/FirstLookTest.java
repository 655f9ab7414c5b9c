package bendline.analysis;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.footage.ClipInfo;
import bendline.footage.SlowMotion;
import bendline.geometry.Homography;
import bendline.scene.CameraMotion;
import bendline.scene.Setup;
import bendline.trace.FirstSight;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

class FirstLookTest {

    private static ClipInfo clip(double fps, SlowMotion slow) {
        List<Double> times = new ArrayList<>();
        for (int i = 0; i < 3 * fps; i++) {
            times.add(i / fps);
        }
        return new ClipInfo(1280, 720, times.size(), 3, 0, false, slow, times, List.of());
    }

    private static FirstSight sight(double shiftPx, int seen, int edge, double freePx, double longer) {
        List<FirstSight.Sight> sights = new ArrayList<>();
        for (int i = 0; i < 20; i++) {
            sights.add(new FirstSight.Sight(i * 0.15, i < seen, i < edge));
        }
        return new FirstSight(
                new CameraMotion(Collections.nCopies(20, Homography.IDENTITY), shiftPx, true), sights, freePx, longer);
    }

    private static FirstLook look(double fps, FirstSight sight) {
        return FirstLook.of(clip(fps, new SlowMotion(1, "as played", false)), sight, Setup.NONE);
    }

    @Test
    void aGoodClipNeedsNoAdvice() {
        FirstLook good = look(120, sight(0, 19, 0, 300, 0.03));
        assertThat(good.advice()).isEmpty();
        assertThat(good.says()).anyMatch(s -> s.contains("42 pictures")).anyMatch(s -> s.contains("stood still"));
    }

    @Test
    void theBlurToExpectIsSpeedTimesExposure() {
        // 30 m/s, 310 px for 3.1 m: 3000 px/s, so 50 px in a sixtieth and 3 in a thousandth of a second.
        assertThat(look(60, sight(0, 19, 0, 310, 0)).says().get(0))
                .contains("up to 50 px")
                .contains("about 3 px");
    }

    @Test
    void eachShortcomingHasItsAdvice() {
        FirstLook poor = look(30, sight(12, 9, 4, 300, 0.2));
        assertThat(poor.advice())
                .anyMatch(s -> s.contains("120 or 240"))
                .anyMatch(s -> s.contains("doesn't move"))
                .anyMatch(s -> s.contains("farther back"))
                .anyMatch(s -> s.contains("plainer background"))
                .anyMatch(s -> s.contains("to the left"));
        assertThat(poor.says())
                .anyMatch(s -> s.contains("reaches the edge of the picture in 4 of them, first at 0.00 s"));
    }

    @Test
    void withoutARodItSaysWhatToDo() {
        FirstLook none = look(60, sight(0, 0, 0, Double.NaN, Double.NaN));
        assertThat(none.says()).anyMatch(s -> s.contains("no rod shows"));
        assertThat(none.advice()).anyMatch(s -> s.contains("mark grip and tip"));
    }

    @Test
    void slowMotionCountsByItsCaptureRate() {
        FirstLook slow =
                FirstLook.of(clip(30, new SlowMotion(8, "as you gave it")), sight(0, 19, 0, 300, 0), Setup.NONE);
        assertThat(slow.says().get(0)).contains("240 pictures a second (as you gave it)");
    }
}
