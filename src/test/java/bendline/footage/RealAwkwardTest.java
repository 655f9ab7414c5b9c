package bendline.footage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bendline.benchmark.SharedFolder;
import java.nio.file.Path;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Real files with awkward containers, from public test collections; they stay beside the project. */
class RealAwkwardTest {

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
        sample_edit_list.mp4                                 | 1080 | 1920 |  77 |  90 | 1 | high dynamic range (HLG)
        dolbyVision-hdr.MOV                                  |  720 | 1280 |   4 |  90 | 1 | high dynamic range (HLG)
        hdr10-video-with-sdr-container.mp4                   | 1920 | 1080 |  28 |   0 | 1 | longest hole is 0.100 s
        sample_android_slow_motion.mp4                       | 1280 |  720 |   7 |   0 | 8 | longest hole is 0.325 s
        sample_sef_slow_motion.mp4                           |  320 |  569 |  63 |   0 | 8 | ``
        portrait_4k60.mp4                                    | 2160 | 3840 |  18 |  90 | 1 | ``
        internal_emulator_transformer_output_270_rotated.mp4 |  720 | 1280 | 149 | 270 | 1 | ``
        sample_rotate_and_reflect.mp4                        |  720 | 1080 |  30 | 270 | 1 | mirrored
        sample_with_htc_rotation_track_name.mkv              | 1080 |  720 |  30 |   0 | 1 | give that turn
        edit_list_positive_shift.mp4                         | 1920 | 1080 | 270 |   0 | 1 | ``
        bbb_800x640_768kbps_30fps_avc_2b_firstpts_10_sec.mp4 | 1137 |  640 | 120 |   0 | 1 | ``
        roadtrip-vp92-10bit.webm                             |  426 |  240 |  72 |   0 | 1 | ``
        bear-vp9-odd-dimensions.webm                         |  161 |  121 |  30 |   0 | 1 | ``
        sample_fragmented.mp4                                | 1080 |  720 |  30 |   0 | 1 | ``
        sample_av1.mp4                                       | 1080 |  720 |  30 |   0 | 1 | ``
        pixel-motion-photo-2-hevc-tracks.mp4                 |  768 | 1024 |  58 |  90 | 1 | ``
        sample_without_stss.mp4                              | 1080 |  720 |  30 |   0 | 1 | ``
        webcam uneven.mov                                    |  640 |  480 | 123 |   0 | 1 | uneven steps
        phone-14-frames.mov                                  |  720 | 1280 |  14 |  90 | 1 | ``
        thermal-gaps.mp4                                     | 1080 | 1440 |  84 |   0 | 1 | longest hole is 1.997 s
        interlaced.mts                                       | 1920 | 1080 |  13 |   0 | 1 | interlaced
        mjpeg-422.avi                                        |  640 |  480 |  78 |   0 | 1 | ``
        old-3gp5.mp4                                         |  720 | 1280 |  39 |  90 | 1 | ``
        """)
    void isRead(String name, int width, int height, int frames, int turn, double slower, String word) {
        Footage clip = Footage.open(SharedFolder.need("awkward/real").resolve(name));
        ClipInfo info = clip.survey(done -> {});
        assertThat(info.width()).isEqualTo(width);
        assertThat(info.height()).isEqualTo(height);
        assertThat(info.frames()).isEqualTo(frames);
        assertThat(info.rotationDegrees()).isEqualTo(turn);
        assertThat(Math.round(info.slowMotion().factor() * 100) / 100.0).isEqualTo(slower);
        assertThat(String.join(" ", info.notes())).contains(word);
        assertThat(info.times().get(0)).isZero();
        assertThat(clip.pictureAt(info.durationSeconds() / 2).image().getWidth())
                .isEqualTo(width);
    }

    @ParameterizedTest
    @ValueSource(strings = {"sample_malformed_free_box.mp4", "broken.mp4", "sample_audio_only.mp4"})
    void isRefusedInOneSentence(String name) {
        Path file = SharedFolder.need("awkward/real").resolve(name);
        assertThatThrownBy(() -> Footage.open(file))
                .isInstanceOf(FootageException.class)
                .hasMessageContaining(name)
                .hasMessageEndingWith(".");
    }

    /** Only a track beside the pictures is damaged: all thirty frames are there. */
    @ParameterizedTest
    @ValueSource(strings = {"sample_missing_stsd.mp4", "sample_empty_track.mp4"})
    void isReadInSpiteOfAnotherTrack(String name) {
        Path file = SharedFolder.need("awkward/real").resolve(name);
        assertThat(Footage.open(file).survey(done -> {}).frames()).isEqualTo(30);
    }

    @ParameterizedTest
    @ValueSource(strings = {"fall-slow-motion.mp4"})
    void theFallIsKnownToBeSlowed(String name) {
        ClipInfo info = Footage.open(SharedFolder.need("clips").resolve(name)).survey(done -> {});
        assertThat(info.slowMotion().factor()).isBetween(3.99, 4.01);
        assertThat(info.rotationDegrees()).isEqualTo(90);
    }
}
