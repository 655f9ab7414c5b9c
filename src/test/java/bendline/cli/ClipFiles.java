package bendline.cli;

import bendline.footage.ClipWriter;
import bendline.footage.ClipWriterSettings;
import bendline.footage.NativeLog;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.ShortBuffer;
import java.nio.file.Path;
import org.bytedeco.ffmpeg.global.avcodec;
import org.bytedeco.javacv.FFmpegFrameRecorder;

/** Small files to give to the program. */
final class ClipFiles {

    private static final int RATE = 8_000;

    private ClipFiles() {}

    /** A clip of 320x240 at 30 frames a second with a block that drifts over a meadow, and nobody in it. */
    static Path moving(Path file, int frames) throws IOException {
        try (ClipWriter writer = new ClipWriter(file, 320, 240, ClipWriterSettings.of(30, 500_000))) {
            for (int i = 0; i < frames; i++) {
                BufferedImage image = new BufferedImage(320, 240, BufferedImage.TYPE_3BYTE_BGR);
                Graphics2D g = image.createGraphics();
                g.setColor(new Color(150, 180, 205));
                g.fillRect(0, 0, 320, 150);
                g.setColor(new Color(80, 110, 70));
                g.fillRect(0, 150, 320, 90);
                g.setColor(new Color(190, 170, 120));
                g.fillRect(20 + 2 * i, 140, 40, 30);
                g.dispose();
                writer.write(image, i / 30.0);
            }
        }
        return file;
    }

    /** An MP4 that holds one second of silence and no picture track. */
    static Path soundOnly(Path file) throws IOException {
        try (FFmpegFrameRecorder recorder = new FFmpegFrameRecorder(file.toFile(), 1)) {
            NativeLog.quiet();
            recorder.setFormat("mp4");
            recorder.setAudioBitrate(24_000);
            recorder.setAudioCodec(avcodec.AV_CODEC_ID_AAC);
            recorder.setSampleRate(RATE);
            recorder.start();
            recorder.recordSamples(RATE, 1, ShortBuffer.allocate(RATE));
        }
        return file;
    }
}
