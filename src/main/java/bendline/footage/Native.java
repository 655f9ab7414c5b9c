package bendline.footage;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.javacpp.BytePointer;

/** What every call into FFmpeg needs: its error codes in words, and file names it cannot misread. */
final class Native {

    /** FFmpeg's "not now, feed me first" (the C library's EAGAIN, which differs between systems). */
    static final int AGAIN = avutil.AVERROR_EAGAIN();

    private Native() {}

    static void check(int code, String task) throws IOException {
        if (code < 0) {
            throw new IOException("could not " + task + ": " + text(code));
        }
    }

    static String text(int code) {
        byte[] text = new byte[128];
        avutil.av_strerror(code, text, text.length);
        int end = 0;
        while (end < text.length && text[end] != 0) {
            end++;
        }
        return new String(text, 0, end, StandardCharsets.UTF_8);
    }

    /** The file as FFmpeg's own file protocol, so that no name is taken for an option, a pattern or another protocol. */
    static BytePointer url(Path file) {
        return new BytePointer(("file:" + file.toAbsolutePath() + "\0").getBytes(StandardCharsets.UTF_8));
    }
}
