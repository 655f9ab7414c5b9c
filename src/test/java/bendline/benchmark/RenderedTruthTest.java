package bendline.benchmark;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import bendline.geometry.Point;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.util.Locale;
import org.junit.jupiter.api.Test;

class RenderedTruthTest {

    @Test
    void movesPixelCentresToHalves() throws IOException {
        StringBuilder rod = new StringBuilder();
        for (int i = 0; i < 25; i++) {
            rod.append(String.format(Locale.ROOT, "%s[%d, 10]", i == 0 ? "" : ",", 10 * i));
        }
        String json = """
                {"schema": "castclip-truth", "case": "made-up", "video": {"width": 320, "height": 240},
                 "events": [{"release": 0.5}],
                 "casts": [{"faults": {"tip_drop": "clear"},
                            "measures": {"launch_speed_m_s": 30, "launch_angle_deg": 40}}],
                 "frames": [%s, %s]}""".formatted(frame(0.0, rod), frame(1.0, rod));
        TruthClip clip = RenderedTruth.read(new ObjectMapper().readTree(json));
        TruthFrame first = clip.at(0.01);
        assertThat(first.tip()).isEqualTo(new Point(240.5, 10.5));
        assertThat(first.blank().first().distance(new Point(40.5, 10.5))).isLessThan(1e-9);
        assertThat(first.blank().length()).isEqualTo(200, within(1e-9));
        assertThat(first.rigHeld()).isTrue();
        assertThat(clip.at(1.0).rigHeld()).isFalse();
        assertThat(clip.casts().get(0).faults()).containsEntry("tip-dropped-early", "clear");
        assertThat(first.camera().apply(new Point(0.5, 0.5)).distance(new Point(2.5, 3.5)))
                .isLessThan(1e-9);
    }

    private static String frame(double seconds, CharSequence rod) {
        return String.format(
                Locale.ROOT,
                "{\"pts_s\": %s, \"tip_px\": [240, 10], \"tip_in_frame\": true, \"rig_px\": [240, 60],"
                        + " \"rig_visible\": true, \"grip_px\": [40, 12], \"rod_px\": [%s], \"butt_angle_deg\": 0,"
                        + " \"chord_ratio\": 1, \"homography\": [1, 0, 2, 0, 1, 3, 0, 0, 1]}",
                seconds,
                rod);
    }

    @Test
    void readsTheClipsBeside() throws IOException {
        TruthClip clip = RenderedTruth.read(SharedFolder.need("rendered/good-fhd60.json"));
        assertThat(clip.frames()).hasSize(303);
        assertThat(clip.casts()).hasSize(1);
        assertThat(clip.casts().get(0).events()).containsKeys("release", "backswingStart", "tipLowest");
        TruthFrame f = clip.frames().get(151);
        assertThat(f.blank().last().distance(f.tip())).isLessThan(1e-6);
        assertThat(f.rod().length() - f.blank().length()).isGreaterThan(50);
    }
}
