package bendline.footage;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Locale;

/**
 * What a phone wrote about slow motion.
 *
 * @param captureRate frames per second at which the sensor ran; 0 where nothing is said
 * @param segments whether the file also marks stretches to be played at speeds of their own
 */
record SlowMotionTag(double captureRate, boolean segments) {

    /** Rates that differ by less than this are one rate, unevenly kept: no phone slows by less than two. */
    private static final double LEAST_FACTOR = 1.5;

    private static final int TAIL = 65_536;

    static SlowMotionTag of(Container container) {
        return new SlowMotionTag(container.captureRate(), hasSegments(container.file()));
    }

    /** Some phones append a directory that ends in SEFT, with the slow stretches in an entry of its own. */
    private static boolean hasSegments(Path file) {
        try (FileChannel channel = FileChannel.open(file)) {
            long start = Math.max(0, channel.size() - TAIL);
            ByteBuffer tail = ByteBuffer.allocate((int) (channel.size() - start));
            channel.read(tail, start);
            String text = new String(tail.array(), 0, tail.position(), StandardCharsets.ISO_8859_1);
            return text.endsWith("SEFT") && text.contains("SlowMotion_Data");
        } catch (IOException unreadable) {
            return false;
        }
    }

    /**
     * The factor for a clip.
     *
     * @param step its usual step from frame to frame, seconds of clip time; the middle one, so that holes do not count
     */
    SlowMotion read(double step) {
        if (!(captureRate > 0) || !(step > 0)) {
            return new SlowMotion(1, "as played: the clip carries no capture rate", false);
        }
        double stored = 1 / step;
        double factor = captureRate / stored;
        String rates = String.format(
                Locale.ROOT, "capture rate tag %.4g per second, stored at %.4g per second", captureRate, stored);
        if (factor > 1 / LEAST_FACTOR && factor < LEAST_FACTOR) {
            return new SlowMotion(1, rates + ": real time");
        }
        String doubt = segments ? "; uncertain, because the phone also marks stretches played at other speeds" : "";
        return new SlowMotion(factor, rates + doubt);
    }
}
