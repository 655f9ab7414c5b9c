package bendline.book;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.UUID;

/** The folder of clips. Each lies under a name that its own bytes give, so the same clip is never kept twice. */
final class ClipShelf {

    static final String FOLDER = "clips";

    private final Path book;

    ClipShelf(Path book) {
        this.book = book;
    }

    /**
     * Takes a copy of a clip.
     *
     * @return what to write down of it
     * @throws BookException where it can't be read or kept
     */
    Clip keep(Path clip) {
        try {
            Path folder = Files.createDirectories(book.resolve(FOLDER));
            Path beside = Whole.unfinished(folder);
            try {
                String sha = Whole.write(beside, out -> Files.copy(clip, out));
                String file = FOLDER + "/" + sha.substring(0, 16) + ending(clip);
                Files.move(beside, book.resolve(file), java.nio.file.StandardCopyOption.ATOMIC_MOVE);
                return new Clip(
                        UUID.randomUUID().toString(),
                        sha,
                        clip.getFileName().toString(),
                        file,
                        Files.size(book.resolve(file)));
            } finally {
                Files.deleteIfExists(beside);
            }
        } catch (IOException e) {
            throw new BookException(
                    "The clip " + clip + " could not be taken into the book " + book + " (" + reason(e)
                            + "); nothing was written down; check the file and the room on the disk.",
                    e);
        }
    }

    private static String reason(IOException e) {
        return e instanceof java.nio.file.NoSuchFileException ? "there is no such file" : e.getMessage();
    }

    private static String ending(Path clip) {
        String name = clip.getFileName().toString();
        int dot = name.lastIndexOf('.');
        String ending = dot < 0 ? "" : name.substring(dot + 1).toLowerCase(Locale.ROOT);
        return ending.matches("[a-z0-9]{1,5}") ? "." + ending : "";
    }

    /** Whether a clip is where it was put, at its full size. */
    boolean has(Clip clip) {
        Path file = book.resolve(clip.file());
        try {
            return Files.isRegularFile(file) && Files.size(file) == clip.bytes();
        } catch (IOException e) {
            return false;
        }
    }
}
