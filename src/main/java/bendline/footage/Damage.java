package bendline.footage;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.bytedeco.ffmpeg.avutil.AVFrame;

/** What went wrong while a clip was decoded, so that none of it passes in silence. */
final class Damage {

    private int lostPieces;
    private int damagedFrames;
    private int interlacedFrames;
    private boolean brokenOff;
    private double firstDamage = Double.NaN;
    private double last;
    private double first = Double.NaN;

    void got(AVFrame frame, double stamp) {
        if (!Double.isNaN(stamp)) {
            first = Double.isNaN(first) ? stamp : first;
            last = stamp;
        }
        if ((frame.flags() & AVFrame.AV_FRAME_FLAG_CORRUPT) != 0 || frame.decode_error_flags() != 0) {
            firstDamage = damagedFrames == 0 ? last : firstDamage;
            damagedFrames++;
        }
        if ((frame.flags() & AVFrame.AV_FRAME_FLAG_INTERLACED) != 0) {
            interlacedFrames++;
        }
    }

    void lostPiece() {
        lostPieces++;
    }

    void brokeOff() {
        brokenOff = true;
    }

    /** One sentence for each kind. */
    List<String> notes() {
        List<String> notes = new ArrayList<>();
        double start = Double.isNaN(first) ? 0 : first;
        if (lostPieces > 0) {
            notes.add(String.format(
                    Locale.ROOT,
                    "%d coded picture%s could not be decoded and %s missing.",
                    lostPieces,
                    lostPieces == 1 ? "" : "s",
                    lostPieces == 1 ? "is" : "are"));
        }
        if (damagedFrames > 0) {
            notes.add(String.format(
                    Locale.ROOT,
                    "%d frame%s damaged and shown as well as they can be, the first at %.2f s; do not trust what is"
                            + " measured there.",
                    damagedFrames,
                    damagedFrames == 1 ? " is" : "s are",
                    firstDamage - start));
        }
        if (interlacedFrames > 0) {
            notes.add("The clip is interlaced: each frame holds two moments, of which only the first is used, at half"
                    + " the height's detail.");
        }
        if (brokenOff) {
            notes.add(String.format(
                    Locale.ROOT, "Reading broke off at %.2f s, where the file is damaged.", last - start));
        }
        return notes;
    }
}
