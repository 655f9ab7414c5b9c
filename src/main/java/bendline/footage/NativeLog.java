package bendline.footage;

import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.Pointer;
import org.bytedeco.opencv.global.opencv_core;
import org.bytedeco.opencv.opencv_core.ErrorCallback;
import org.jspecify.annotations.Nullable;

/**
 * How much the native libraries may write to standard error: nothing unless asked. FFmpeg's codecs, the H.264 encoder among
 * them, speak through FFmpeg's log. OpenCV prints each error before it throws it; a callback takes the print away, the
 * exception stays. Safe to call from any thread.
 */
public final class NativeLog {

    private static boolean chosen;
    /** Held for as long as the native side may call it. */
    private static @Nullable ErrorCallback silence;

    private NativeLog() {}

    /** Silences FFmpeg, the codecs inside it and OpenCV. */
    public static synchronized void quiet() {
        chosen = true;
        avutil.av_log_set_level(avutil.AV_LOG_QUIET);
        if (silence == null) {
            silence = new Silence();
        }
        opencv_core.redirectError(silence);
    }

    /** Lets warnings and errors through, for people who look for a fault. */
    public static synchronized void verbose() {
        chosen = true;
        avutil.av_log_set_level(avutil.AV_LOG_WARNING);
        opencv_core.redirectError(null);
    }

    /** Quiets FFmpeg unless somebody has already chosen. */
    static synchronized void quietUnlessChosen() {
        if (!chosen) {
            chosen = true;
            avutil.av_log_set_level(avutil.AV_LOG_QUIET);
        }
    }

    /** Takes an OpenCV error message and drops it. */
    private static final class Silence extends ErrorCallback {
        @Override
        public int call(
                int status, BytePointer function, BytePointer message, BytePointer file, int line, Pointer data) {
            return 0;
        }
    }
}
