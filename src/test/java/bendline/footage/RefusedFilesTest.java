package bendline.footage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is no usable clip gets one sentence that says what, where and what to do. */
class RefusedFilesTest {

    @TempDir
    Path folder;

    private static void assertRefused(Path file, String because) {
        FootageException refusal = catchThrowableOfType(
                FootageException.class, () -> Footage.open(file).survey(done -> {}));
        assertThat(refusal).as("%s", file.getFileName()).isNotNull();
        assertThat(refusal.getMessage())
                .contains(file.toString())
                .contains(because)
                .contains("; ")
                .endsWith(".")
                .doesNotContain("\n");
    }

    private Path file(String name, byte[] content) throws IOException {
        return Files.write(folder.resolve(name), content);
    }

    @Test
    void missingFileFolderAndEmptyFile() throws IOException {
        assertRefused(folder.resolve("nowhere.mp4"), "There is no file");
        assertRefused(folder, "is a folder");
        assertRefused(file("empty.mp4", new byte[0]), "is empty (0 bytes)");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "<!doctype html><title>x</title>",
                "#EXTM3U\n#EXTINF:1,\nneighbour.ts\n",
                "ffconcat version 1.0\nfile /etc/hostname\n",
                "<MPD><BaseURL>http://127.0.0.1:9/v.mp4</BaseURL></MPD>",
                "v=0\no=- 0 0 IN IP4 127.0.0.1\nm=video 5004 RTP/AVP 96\n",
                "Würfe vom Sonntag, ganz ohne Bild"
            })
    void textOfAnyKind(String text) throws IOException {
        assertRefused(file("text.mp4", text.getBytes(StandardCharsets.UTF_8)), "is text, not a film");
        assertRefused(file("list.m3u8", text.getBytes(StandardCharsets.UTF_8)), "is text, not a film");
    }

    @ParameterizedTest
    @CsvSource({"jpg, is a photo", "png, is a photo", "gif, is a GIF picture", "bmp, is a photo"})
    void stillPictures(String format, String because) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ImageIO.write(BarClip.picture(0), format, out);
        assertRefused(file("photo.mp4", out.toByteArray()), because);
    }

    @Test
    void archiveAndSound() throws IOException {
        ByteArrayOutputStream zip = new ByteArrayOutputStream();
        try (ZipOutputStream out = new ZipOutputStream(zip)) {
            out.putNextEntry(new ZipEntry("clip.mp4"));
            out.write(new byte[100_000]);
        }
        assertRefused(file("zipped.mp4", zip.toByteArray()), "is an archive");
        byte[] wave = "RIFF\0\0\0\0WAVEfmt \0".getBytes(StandardCharsets.ISO_8859_1);
        assertRefused(file("sound.mp4", wave), "holds sound");
    }

    @Test
    void noise() throws IOException {
        byte[] bytes = new byte[50_000];
        new java.util.Random(1).nextBytes(bytes);
        assertRefused(file("noise.mp4", bytes), "is damaged or not a film");
    }

    @Test
    void noPictureTrack() throws IOException {
        Mp4Surgery surgery = new Mp4Surgery(BarClip.write(folder.resolve("c.mp4"), BarClip.steady(5, 30)));
        surgery.callItSound();
        assertRefused(surgery.save(folder.resolve("sound.mp4")), "has no picture track");
    }

    @Test
    void noIndex() throws IOException {
        Mp4Surgery surgery = new Mp4Surgery(BarClip.write(folder.resolve("c.mp4"), BarClip.steady(5, 30)));
        surgery.loseIndex();
        assertRefused(surgery.save(folder.resolve("cut.mp4")), "is cut short");
    }

    @Test
    void oneFrame() throws IOException {
        assertRefused(BarClip.write(folder.resolve("one.mp4"), BarClip.steady(1, 30)), "holds one frame only");
    }

    @Test
    void smallFilesThatClaimHugePictures() throws IOException {
        byte[] liar = MjpegAvi.claiming(MjpegAvi.jpeg(BarClip.picture(0)), 65_000, 65_000);
        Path file = MjpegAvi.write(folder.resolve("bomb.avi"), List.of(liar, liar, liar), 65_000, 65_000, 25);
        long before = org.bytedeco.javacpp.Pointer.physicalBytes();
        assertThatThrownBy(() -> Footage.open(file).survey(done -> {})).isInstanceOf(FootageException.class);
        // A 65000 x 65000 grey picture would be 4.2 GB.
        assertThat(org.bytedeco.javacpp.Pointer.physicalBytes() - before).isLessThan(200_000_000);
    }

    @Test
    void wrongTurn() throws IOException {
        Path clip = BarClip.write(folder.resolve("c.mp4"), BarClip.steady(2, 30));
        assertThatThrownBy(() -> Footage.open(clip, 45)).isInstanceOf(IllegalArgumentException.class);
    }
}
