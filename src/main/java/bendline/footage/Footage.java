package bendline.footage;

import bendline.image.Turn;
import java.nio.file.Path;
import java.util.function.DoubleConsumer;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;

/**
 * A clip on disk. Nothing stays open between calls: every reader opens the file and decodes from the beginning, because
 * jumping about in a clip lands beside the frame asked for. Safe to use from several threads.
 */
public final class Footage {

    private static final int THREADS = 2;

    private final Path file;
    private final UnaryOperator<Turn> turning;
    private final int expectedFrames;
    private volatile @Nullable ClipInfo info;

    /**
     * @param turning from the turn that the clip states to the one applied
     * @throws FootageException with one sentence for the user where the file cannot be used
     */
    private Footage(Path file, UnaryOperator<Turn> turning) {
        this.file = file;
        this.turning = turning;
        try (Decoder decoder = new Decoder(file, 1)) {
            expectedFrames = decoder.container().expectedFrames();
        }
    }

    /**
     * Checks that a file is there, is a film and has a picture track.
     *
     * @throws FootageException with one sentence for the user where it cannot be used
     */
    public static Footage open(Path file) {
        return open(file, 0);
    }

    /**
     * The same for a clip that lies on its side although it says nothing of a turn.
     *
     * @param extraClockwiseDegrees 0, 90, 180 or 270, on top of the turn that the clip itself states
     * @throws FootageException with one sentence for the user where it cannot be used
     */
    public static Footage open(Path file, int extraClockwiseDegrees) {
        Turn extra = new Turn(extraClockwiseDegrees, false);
        return new Footage(file, stated -> stated.then(extra));
    }

    /**
     * A clip that has been surveyed before: it comes out turned as it was then, and is not surveyed again.
     *
     * @throws FootageException with one sentence for the user where it cannot be used any more
     */
    public static Footage open(Path file, ClipInfo known) {
        Turn same = new Turn(known.rotationDegrees(), known.mirrored());
        Footage footage = new Footage(file, stated -> same);
        footage.info = known;
        return footage;
    }

    /** The file as it was given. */
    public Path path() {
        return file;
    }

    /** How many frames the clip holds where that is known, else how many its header speaks of, which may be wrong; 0 where neither tells. */
    public int expectedFrames() {
        ClipInfo known = info;
        return known == null ? expectedFrames : known.frames();
    }

    /**
     * Decodes the clip once from end to end and says what it is; later calls, and calls after a reader has come to the end,
     * answer from memory.
     *
     * @param progress told 0 to 1 by the container's stated length, which may be wrong
     * @throws FootageException where nothing usable can be decoded
     */
    public ClipInfo survey(DoubleConsumer progress) {
        ClipInfo known = info;
        if (known == null) {
            try (TimedFrames frames = frames()) {
                while (frames.advance()) {
                    progress.accept(frames.progress());
                }
            }
            known = info;
        }
        if (known == null) {
            throw new IllegalStateException("the clip ended without a survey");
        }
        progress.accept(1);
        return known;
    }

    /** Grey frames, decoded from the beginning; close it. */
    public LumaReader lumas() {
        return new LumaReader(frames(), false);
    }

    /** Grey frames with their colour planes, where the clip holds such; close it. */
    public LumaReader tinted() {
        return new LumaReader(frames(), true);
    }

    /** Colour frames, decoded from the beginning; close it. */
    public PictureReader pictures() {
        return new PictureReader(frames());
    }

    /**
     * The picture that a player shows at a moment: the last frame that starts at or before it. Decodes from the beginning
     * up to it.
     *
     * @param seconds clip time; before the first frame the first is meant, after the last the last
     */
    public Picture pictureAt(double seconds) {
        int wanted = survey(done -> {}).frameAt(seconds);
        try (PictureReader reader = pictures()) {
            return reader.skipTo(wanted);
        }
    }

    private TimedFrames frames() {
        return new TimedFrames(new Decoder(file, THREADS), turning, this::remember);
    }

    private void remember(ClipInfo found) {
        if (info == null) {
            info = found;
        }
    }
}
