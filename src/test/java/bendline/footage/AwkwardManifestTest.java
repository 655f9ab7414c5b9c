package bendline.footage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import bendline.benchmark.SharedFolder;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Files made by somebody else to be awkward, each frame of which tells its own true time in 240ths of a second. */
class AwkwardManifestTest {

    private static final double BAR_RATE = 240;
    /** Number shown by the first frame, where it is not 0. */
    private static final Map<String, Integer> FIRST_NUMBER = Map.of("made/editlist_trimmed_half_second.mp4", 120);

    private static final Map<String, Double> PLAYED_SLOWER =
            Map.of("made/slowmo_baked30_tagged.mp4", 8.0, "made/slowmo_baked30_untagged.mp4", 8.0);
    /** What must be said of a file, where its case asks for a word. */
    private static final Map<String, String> WORD = Map.ofEntries(
            Map.entry("made/vfr_phone.mp4", "longest hole is 0.250 s after 1.25 s"),
            Map.entry("made/claims_ten_hours.mp4", "jumps ahead by 35997 s"),
            Map.entry("made/cut_off_tail.mp4", "43 of 90 frames"),
            Map.entry("made/interlaced_tff.mp4", "interlaced"),
            Map.entry("made/hevc10_hlg.mov", "high dynamic range (HLG)"),
            Map.entry("made/eight_k.mp4", "reduced to 1/2"),
            Map.entry("made/zero_bytes.mp4", "is empty"),
            Map.entry("made/cut_off_no_moov.mp4", "is cut short"),
            Map.entry("made/web_page_named.mp4", "is text, not a film"),
            Map.entry("made/audio_only.mp4", "no picture track"),
            Map.entry("made/song_with_cover.m4a", "no picture track"),
            Map.entry("made/photo_named.mp4", "is a photo, not a film"),
            Map.entry("made/zip_bomb_named.mp4", "not a film"),
            Map.entry("made/playlist.m3u8", "is text, not a film"));

    record Case(String file, String frames, String size) {}

    static Stream<Case> cases() throws IOException {
        Path manifest = SharedFolder.path().resolve("awkward/manifest.tsv");
        if (!Files.exists(manifest)) {
            return Stream.of(new Case("manifest.tsv", "", ""));
        }
        List<Case> cases = new ArrayList<>();
        for (String line : Files.readAllLines(manifest)) {
            String[] cells = line.split("\t");
            if (cells[1].contains("/")) {
                cases.add(new Case(cells[1], cells[6].split(" ")[0], cells[8]));
            }
        }
        return cases.stream();
    }

    @ParameterizedTest
    @MethodSource("cases")
    void doesWhatIsExpectedOfIt(Case c) {
        Path file = SharedFolder.need("awkward").resolve(c.file());
        boolean refused = !c.frames().matches("\\d+")
                || Integer.parseInt(c.frames()) < 2
                || c.file().endsWith(".gif");
        String word = WORD.getOrDefault(c.file(), "");
        if (refused) {
            assertThatThrownBy(() -> Footage.open(file).survey(done -> {}))
                    .isInstanceOf(FootageException.class)
                    .hasMessageContaining(word);
            return;
        }
        ClipInfo info = Footage.open(file).survey(done -> {});
        assertThat(info.frames()).isEqualTo(Integer.parseInt(c.frames()));
        assertThat(String.join(" ", info.notes())).contains(word);
        if (!c.file().equals("made/eight_k.mp4")) {
            assertThat(info.width() + "x" + info.height()).isEqualTo(c.size());
            assertEveryFrameTellsItsTime(file, c);
        }
    }

    private static void assertEveryFrameTellsItsTime(Path file, Case c) {
        int first = FIRST_NUMBER.getOrDefault(c.file(), 0);
        double slower = PLAYED_SLOWER.getOrDefault(c.file(), 1.0);
        try (LumaReader reader = Footage.open(file).lumas()) {
            for (Frame f = reader.next(); f != null; f = reader.next()) {
                double told = (BarClip.number(f.luma()) - first) / BAR_RATE;
                assertThat(f.seconds() / slower).as("frame %d", f.index()).isCloseTo(told, within(1e-4));
                if (c.file().contains("busy")) {
                    // This scene has no squares in its corners.
                    continue;
                }
                int white = BarClip.patch(f.luma(), 12, 12);
                int black =
                        BarClip.patch(f.luma(), f.luma().width() - 12, f.luma().height() - 12);
                assertThat(white - black)
                        .as("frame %d stands upright", f.index())
                        .isGreaterThan(80);
            }
        }
    }

    @Test
    void theCaptureRateTagGivesTheFactor() {
        Path tagged = SharedFolder.need("awkward/made/slowmo_baked30_tagged.mp4");
        assertThat(Footage.open(tagged).survey(done -> {}).slowMotion().factor())
                .isCloseTo(8, within(1e-3));
        Path plain = SharedFolder.need("awkward/made/slowmo_baked30_untagged.mp4");
        SlowMotion unknown = Footage.open(plain).survey(done -> {}).slowMotion();
        assertThat(unknown.factor()).isEqualTo(1);
        assertThat(unknown.basis()).startsWith("as played");
    }

    @Test
    void brightnessIsThatOfTheReference() {
        double reference = skyGreen("moov_at_end.mp4");
        assertThat(reference).isCloseTo(174.8, within(2.0));
        assertThat(skyGreen("full_range.mp4")).isCloseTo(reference, within(2.0));
        assertThat(skyGreen("hevc10_hlg.mov")).isCloseTo(reference, within(10.0));
    }

    private static double skyGreen(String name) {
        try (PictureReader reader =
                Footage.open(SharedFolder.need("awkward/made/" + name)).pictures()) {
            Picture picture = reader.next();
            double sum = 0;
            for (int y = 80; y < 120; y++) {
                for (int x = 200; x < 240; x++) {
                    sum += picture.image().getRGB(x, y) >> 8 & 255;
                }
            }
            return sum / 1600;
        }
    }
}
