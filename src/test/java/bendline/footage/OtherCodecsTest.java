package bendline.footage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.util.Map;
import org.bytedeco.ffmpeg.global.avcodec;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.javacv.FFmpegFrameRecorder;
import org.bytedeco.javacv.FrameRecorder;
import org.bytedeco.javacv.Java2DFrameConverter;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Codecs and containers that our own writer does not make, written by the encoders in the same library. */
class OtherCodecsTest {

    private static final int FRAMES = 12;

    @TempDir
    Path folder;

    @BeforeAll
    static void silence() {
        NativeLog.quiet();
    }

    private interface Pictures {
        BufferedImage at(int index);
    }

    private Path record(String name, int codec, int pixelFormat, Map<String, String> options, Pictures pictures)
            throws FrameRecorder.Exception {
        Path file = folder.resolve(name);
        try (FFmpegFrameRecorder recorder = new FFmpegFrameRecorder(file.toFile(), BarClip.WIDTH, BarClip.HEIGHT, 0);
                Java2DFrameConverter converter = new Java2DFrameConverter()) {
            recorder.setFormat(name.endsWith("ts") ? "mpegts" : name.endsWith("mkv") ? "matroska" : null);
            recorder.setVideoCodec(codec);
            recorder.setPixelFormat(pixelFormat);
            recorder.setFrameRate(25);
            recorder.setVideoBitrate(4_000_000);
            recorder.setMaxBFrames(0);
            options.forEach(recorder::setVideoOption);
            recorder.start();
            for (int i = 0; i < FRAMES; i++) {
                recorder.record(converter.convert(pictures.at(i)));
            }
        }
        return file;
    }

    private static void assertFramesTellTheirNumbers(Path file) {
        try (LumaReader reader = Footage.open(file).lumas()) {
            for (int i = 0; i < FRAMES; i++) {
                Frame frame = reader.next();
                assertThat(frame).as("frame %d", i).isNotNull();
                assertThat(BarClip.number(frame.luma())).isEqualTo(i);
                assertThat(BarClip.upright(frame.luma())).isTrue();
                // Matroska and AVI clocks tick in milliseconds.
                assertThat(frame.seconds()).isCloseTo(i / 25.0, within(1e-3));
            }
            assertThat(reader.next()).isNull();
        }
    }

    @ParameterizedTest
    @CsvSource({
        "a.mp4, mpeg4",
        "b.mov, mpeg4",
        "c.avi, mpeg4",
        "d.mkv, mpeg4",
        "e.ts, mpeg2video",
        "f.3gp, mpeg4",
        "g.webm, vp8",
        "h.webm, vp9",
        "i.mkv, mjpeg"
    })
    void eachIsReadFrameByFrame(String name, String codec) throws FrameRecorder.Exception {
        int id = avcodec.avcodec_descriptor_get_by_name(codec).id();
        int format = codec.equals("mjpeg") ? avutil.AV_PIX_FMT_YUVJ420P : avutil.AV_PIX_FMT_YUV420P;
        Map<String, String> options = codec.startsWith("vp") ? Map.of("deadline", "realtime") : Map.of();
        assertFramesTellTheirNumbers(record(name, id, format, options, BarClip::picture));
    }

    @Test
    void tenBitsOfHybridLogGammaAreReadAndShown() throws FrameRecorder.Exception {
        Map<String, String> hlg = Map.of(
                "color_trc", "arib-std-b67",
                "color_primaries", "bt2020",
                "colorspace", "bt2020nc",
                "color_range", "tv");
        Path file = record("hlg.mov", avcodec.AV_CODEC_ID_PRORES, avutil.AV_PIX_FMT_YUV422P10LE, hlg, BarClip::picture);
        assertFramesTellTheirNumbers(file);
        Footage clip = Footage.open(file);
        assertThat(clip.survey(done -> {}).notes()).anyMatch(n -> n.contains("high dynamic range (HLG)"));
        try (PictureReader reader = clip.pictures()) {
            BufferedImage shown = reader.next().image();
            assertThat(shown.getRGB(12, 12) & 255).isGreaterThan(235);
            assertThat(shown.getRGB(BarClip.WIDTH - 12, BarClip.HEIGHT - 12) & 255)
                    .isLessThan(10);
            // The sky's signal, 174 of 255, lies under HLG's reference white of 75 % and must not be blown out.
            assertThat(shown.getRGB(200, 120) >> 8 & 255).isBetween(90, 225);
        }
    }

    @Test
    void ofAnInterlacedFrameOneMomentIsSeen() throws FrameRecorder.Exception {
        Map<String, String> fields = Map.of("flags", "+ilme+ildct", "field_order", "tt", "qmin", "1", "qmax", "3");
        Path file = record(
                "fields.ts", avcodec.AV_CODEC_ID_MPEG2VIDEO, avutil.AV_PIX_FMT_YUV420P, fields, OtherCodecsTest::woven);
        ClipInfo info = Footage.open(file).survey(done -> {});
        assertThat(info.notes()).anyMatch(n -> n.startsWith("The clip is interlaced"));
        assertThat(info.height()).isEqualTo(BarClip.HEIGHT);
        try (LumaReader reader = Footage.open(file).lumas()) {
            int first = BarClip.number(reader.next().luma());
            assertThat(first).isIn(0, 500);
            for (int i = 1; i < FRAMES; i++) {
                assertThat(BarClip.number(reader.next().luma())).isEqualTo(first + i);
            }
        }
    }

    /** Even rows show the frame's number, odd rows that number and 500. */
    private static BufferedImage woven(int index) {
        BufferedImage top = BarClip.picture(index);
        BufferedImage bottom = BarClip.picture(500 + index);
        for (int y = 1; y < BarClip.HEIGHT; y += 2) {
            for (int x = 0; x < BarClip.WIDTH; x++) {
                top.setRGB(x, y, bottom.getRGB(x, y));
            }
        }
        return top;
    }
}
