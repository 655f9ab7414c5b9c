package bendline.footage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import bendline.image.Luma;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Clips that phones, players and accidents make odd, remade from our own frames. */
class OddClipsTest {

    @TempDir
    Path folder;

    private Path clip(int frames) throws IOException {
        return BarClip.write(folder.resolve("clip.mp4"), BarClip.steady(frames, 30));
    }

    private static Luma first(Path file) {
        try (LumaReader reader = Footage.open(file).lumas()) {
            return reader.next().luma();
        }
    }

    private static ClipInfo survey(Path file) {
        return Footage.open(file).survey(done -> {});
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 90, 180, 270})
    void theTaggedTurnIsTakenOnce(int degrees) throws IOException {
        Path file = BarClip.write(
                folder.resolve("turned.mp4"),
                BarClip.steady(3, 30),
                new ClipWriterSettings(30, 3_000_000, degrees, 0, 15));
        ClipInfo info = survey(file);
        assertThat(info.rotationDegrees()).isEqualTo(degrees);
        assertThat(info.width()).isEqualTo(degrees % 180 == 0 ? 320 : 240);
        // What is stored stands upright, so only turning it back by hand makes it upright again.
        ClipInfo back = Footage.open(file, (360 - degrees) % 360).survey(done -> {});
        assertThat(back.width()).isEqualTo(320);
        try (LumaReader reader = Footage.open(file, (360 - degrees) % 360).lumas()) {
            assertThat(BarClip.upright(reader.next().luma())).isTrue();
        }
        assertThat(BarClip.upright(first(file))).isEqualTo(degrees == 0);
    }

    @Test
    void aTurnThatOnlyThePicturesTellIsTakenOnce() throws IOException {
        Mp4Surgery surgery = new Mp4Surgery(BarClip.write(folder.resolve("plain.mp4"), BarClip.steady(6, 30)));
        surgery.turnInTheStream();
        ClipInfo info = survey(surgery.save(folder.resolve("stream.mp4")));
        assertThat(info.rotationDegrees()).as("90 degrees anticlockwise").isEqualTo(270);
        assertThat(info.width()).isEqualTo(240);
        assertThat(info.frames()).isEqualTo(6);
    }

    @Test
    void whereContainerAndPicturesDisagreeTheContainerIsHeeded() throws IOException {
        // As players do: a phone's own editor turns a clip by its container and leaves the pictures alone.
        Mp4Surgery surgery = new Mp4Surgery(BarClip.write(
                folder.resolve("turned.mp4"),
                BarClip.steady(6, 30),
                new ClipWriterSettings(30, 3_000_000, 180, 0, 15)));
        surgery.turnInTheStream();
        assertThat(survey(surgery.save(folder.resolve("both.mp4"))).rotationDegrees())
                .isEqualTo(180);
    }

    @Test
    void aKnownClipIsTurnedAsBeforeAndNotSurveyedAgain() throws IOException {
        Path file = clip(3);
        ClipInfo known = Footage.open(file, 90).survey(done -> {});
        Footage again = Footage.open(file, known);
        assertThat(again.survey(done -> {})).isSameAs(known);
        assertThat(again.pictureAt(0).image().getWidth()).isEqualTo(240);
    }

    @Test
    void readersOnSeveralThreadsDoNotDisturbEachOther() throws IOException {
        Footage clip = Footage.open(clip(30));
        java.util.stream.IntStream.range(0, 40).parallel().forEach(i -> {
            try (LumaReader reader = clip.lumas()) {
                // Some stop half way.
                for (int k = 0; k < (i % 3 == 0 ? 7 : 30); k++) {
                    assertThat(BarClip.number(reader.next().luma())).isEqualTo(k);
                }
            }
        });
    }

    @Test
    void aMirroredClipIsPutRightAndSaysSo() throws IOException {
        Mp4Surgery surgery = new Mp4Surgery(clip(3));
        surgery.displayMatrix(-1, 0, 0, 1);
        Path file = surgery.save(folder.resolve("mirrored.mp4"));
        Luma luma = first(file);
        assertThat(BarClip.patch(luma, 320 - 12, 12)).isGreaterThan(180);
        assertThat(BarClip.patch(luma, 12, 240 - 12)).isLessThan(60);
        ClipInfo info = survey(file);
        assertThat(info.mirrored()).isTrue();
        assertThat(info.rotationDegrees()).isZero();
        assertThat(info.notes()).anyMatch(n -> n.contains("mirrored"));
    }

    @Test
    void pixelsAreMadeSquare() throws IOException {
        Mp4Surgery surgery = new Mp4Surgery(clip(3));
        surgery.describePicture("pasp", 4, 3);
        ClipInfo info = survey(surgery.save(folder.resolve("wide.mp4")));
        assertThat(info.width()).isEqualTo(427);
        assertThat(info.height()).isEqualTo(240);
        surgery = new Mp4Surgery(clip(3));
        surgery.describePicture("pasp", 3, 4);
        info = survey(surgery.save(folder.resolve("tall.mp4")));
        assertThat(info.width()).isEqualTo(320);
        assertThat(info.height()).isEqualTo(320);
    }

    @Test
    void onlyTheCleanApertureIsShown() throws IOException {
        Mp4Surgery surgery = new Mp4Surgery(clip(3));
        // 280 x 220 around the centre, moved 4 to the right: columns 24 to 304, rows 10 to 230.
        surgery.describePicture("clap", 280, 1, 220, 1, 4, 1, 0, 1);
        Luma luma = first(surgery.save(folder.resolve("aperture.mp4")));
        assertThat(luma.width()).isEqualTo(280);
        assertThat(luma.height()).isEqualTo(220);
        assertThat(BarClip.patch(luma, 40 + 8 - 24, 15 - 10)).isGreaterThan(180);
        assertThat(BarClip.patch(luma, 56 + 8 - 24, 15 - 10)).isLessThan(60);
    }

    @Test
    void aLateStartIsZero() throws IOException {
        double[] times = BarClip.steady(20, 30);
        for (int i = 0; i < times.length; i++) {
            times[i] += 10;
        }
        ClipInfo info = survey(BarClip.write(folder.resolve("late.mp4"), times));
        assertThat(info.times().get(0)).isZero();
        assertThat(info.durationSeconds()).isCloseTo(20 / 30.0, within(1e-3));
        assertThat(info.notes()).isEmpty();
    }

    private Path unevenWithStep(int index, int ticks) throws IOException {
        double[] times = new double[30];
        for (int i = 0; i < times.length; i++) {
            times[i] = i / 30.0 + (i % 2) * 0.002;
        }
        Mp4Surgery surgery = new Mp4Surgery(BarClip.write(folder.resolve("uneven.mp4"), times));
        surgery.step(index, ticks);
        surgery.show(30_000);
        return surgery.save(folder.resolve("step.mp4"));
    }

    @Test
    void twoFramesAtOneMomentAreSpread() throws IOException {
        ClipInfo info = survey(unevenWithStep(10, 0));
        assertThat(info.frames()).isEqualTo(30);
        assertThat(new ArrayList<>(info.times())).isSorted().doesNotHaveDuplicates();
        assertThat(info.times().get(11))
                .isCloseTo((info.times().get(10) + info.times().get(12)) / 2, within(1e-3));
        assertThat(info.notes()).anyMatch(n -> n.startsWith("1 frame had a missing, repeated or backward time stamp"));
    }

    @Test
    void aLastFrameHoursLaterIsOneStepLater() throws IOException {
        ClipInfo info = survey(unevenWithStep(28, 20_000 * 90_000));
        assertThat(info.frames()).isEqualTo(30);
        assertThat(info.durationSeconds()).isCloseTo(1.0, within(0.01));
        assertThat(info.notes()).anyMatch(n -> n.contains("jumps ahead by 20000 s"));
    }

    @Test
    void aTornTailGivesWhatIsThereAndSaysSo() throws IOException {
        Mp4Surgery surgery = new Mp4Surgery(clip(90));
        surgery.cutTo(0.55);
        ClipInfo info = survey(surgery.save(folder.resolve("torn.mp4")));
        assertThat(info.frames()).isBetween(20, 70);
        assertThat(info.notes())
                .anyMatch(n -> n.startsWith("The file ends early: " + info.frames() + " of 90 frames, "));
    }

    @Test
    void aSpoiltPictureIsNeverPassedInSilence() throws IOException {
        Mp4Surgery surgery = new Mp4Surgery(clip(60));
        surgery.spoilPicture(20);
        ClipInfo info = survey(surgery.save(folder.resolve("spoilt.mp4")));
        assertThat(info.times().get(info.frames() - 1)).isCloseTo(59 / 30.0, within(1e-3));
        assertThat(info.notes()).anyMatch(n -> n.contains("damaged") || n.contains("could not be decoded"));
    }

    @Test
    void boxesThatLieAboutTheSizeAreNotBelieved() throws IOException {
        Mp4Surgery surgery = new Mp4Surgery(clip(5));
        surgery.claimSize(65_535, 65_535);
        ClipInfo info = survey(surgery.save(folder.resolve("liar.mp4")));
        assertThat(info.width()).isEqualTo(320);
        assertThat(info.height()).isEqualTo(240);
    }

    @Test
    void motionJpegInAviIsReadWithOddSizes() throws IOException {
        List<byte[]> pictures = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            pictures.add(MjpegAvi.jpeg(BarClip.picture(i).getSubimage(0, 0, 319, 239)));
        }
        Path file = MjpegAvi.write(folder.resolve("odd.avi"), pictures, 319, 239, 25);
        try (LumaReader reader = Footage.open(file).lumas()) {
            for (int i = 0; i < 8; i++) {
                Frame frame = reader.next();
                assertThat(frame.luma().width()).isEqualTo(319);
                assertThat(frame.luma().height()).isEqualTo(239);
                assertThat(BarClip.number(frame.luma())).isEqualTo(i);
                assertThat(frame.seconds()).isCloseTo(i / 25.0, within(1e-6));
            }
            assertThat(reader.next()).isNull();
        }
    }

    @Test
    void pictureAtShowsWhatAPlayerShows() throws IOException {
        Footage clip = Footage.open(clip(40));
        for (double seconds : new double[] {0, 0.0334, 0.5, 0.99, 77}) {
            int expected = clip.survey(done -> {}).frameAt(seconds);
            Picture picture = clip.pictureAt(seconds);
            assertThat(picture.index()).isEqualTo(expected);
            assertThat(picture.seconds())
                    .isEqualTo(clip.survey(done -> {}).times().get(expected));
        }
        assertThat(clip.pictureAt(77).index()).isEqualTo(39);
    }

    @Test
    void manyReadersLeaveNoMemoryBehind() throws IOException {
        Path status = Path.of("/proc/self/status");
        org.junit.jupiter.api.Assumptions.assumeTrue(Files.exists(status), "skipped: no /proc here");
        Footage clip = Footage.open(clip(20));
        List<Long> sizes = new ArrayList<>();
        for (int i = 0; i < 90; i++) {
            try (LumaReader reader = clip.lumas();
                    PictureReader pictures = clip.pictures()) {
                reader.next();
                pictures.next();
            }
            if (i >= 40) {
                sizes.add(residentKilobytes(status));
            }
        }
        // One unclosed reader of this clip holds about 6 MB; the forty between would show as a quarter of a gigabyte.
        assertThat(Collections.max(sizes.subList(40, 50)) - Collections.min(sizes.subList(0, 10)))
                .isLessThan(80_000L);
    }

    private static long residentKilobytes(Path status) throws IOException {
        return Files.readAllLines(status).stream()
                .filter(line -> line.startsWith("VmRSS:"))
                .mapToLong(line -> Long.parseLong(line.replaceAll("\\D", "")))
                .findFirst()
                .orElseThrow();
    }
}
