package bendline.footage;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.DoubleConsumer;
import org.jspecify.annotations.Nullable;

/**
 * A clip on disk. Nothing stays open between calls: every reader opens the file and decodes from the beginning, because
 * jumping about in a clip lands beside the frame asked for. Safe to use from several threads.
 */
public final class Footage {

    private static final int THREADS = 2;

    private final Path file;
    private volatile @Nullable ClipInfo info;

    private Footage(Path file) {
        this.file = file;
    }

    /**
     * Checks that a file is there and has a picture track.
     *
     * @throws FootageException with one sentence for the user where it cannot be used
     */
    public static Footage open(Path file) {
        String name = "\"" + file + "\"";
        if (!Files.exists(file)) {
            throw new FootageException("There is no file " + name + "; check the name and the folder.");
        }
        if (Files.isDirectory(file)) {
            throw new FootageException(name + " is a folder, not a clip; give the clip's own name.");
        }
        if (!Files.isReadable(file)) {
            throw new FootageException(name + " may not be read; check its permissions.");
        }
        try {
            if (Files.size(file) == 0) {
                throw new FootageException(name + " is empty (0 bytes); copy the clip from the phone again.");
            }
        } catch (IOException e) {
            throw new FootageException(name + " cannot be read; copy it to this computer's own disk.", e);
        }
        Footage footage = new Footage(file);
        new Decoder(file, 1).close();
        return footage;
    }

    /** The file as it was given. */
    public Path path() {
        return file;
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
            Decoder decoder = new Decoder(file, THREADS);
            try (TimedFrames frames = new TimedFrames(decoder, this::remember)) {
                double length = decoder.statedSeconds();
                while (frames.advance()) {
                    progress.accept(length > 0 ? Math.min(1, frames.seconds() / length) : 0);
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

    private void remember(ClipInfo found) {
        info = found;
    }

    /** Grey frames, decoded from the beginning; close it. */
    public LumaReader lumas() {
        return new LumaReader(new TimedFrames(new Decoder(file, THREADS), this::remember));
    }

    /** Colour frames, decoded from the beginning; close it. */
    public PictureReader pictures() {
        return new PictureReader(new TimedFrames(new Decoder(file, THREADS), this::remember));
    }
}
