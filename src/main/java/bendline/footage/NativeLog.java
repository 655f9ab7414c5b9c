package bendline.footage;

import org.bytedeco.ffmpeg.global.avutil;

/** How much the native libraries may write to standard error: nothing unless asked. Safe to call from any thread. */
public final class NativeLog {

    private static boolean chosen;

    private NativeLog() {}

    /** Silences FFmpeg, the codecs inside it and OpenCV. */
    public static synchronized void quiet() {
        chosen = true;
        avutil.av_log_set_level(avutil.AV_LOG_QUIET);
    }

    /** Lets warnings and errors through, for people who look for a fault. */
    public static synchronized void verbose() {
        chosen = true;
        avutil.av_log_set_level(avutil.AV_LOG_WARNING);
    }

    /** Quiet unless somebody has already chosen. */
    static synchronized void quietUnlessChosen() {
        if (!chosen) {
            chosen = true;
            avutil.av_log_set_level(avutil.AV_LOG_QUIET);
        }
    }
}
