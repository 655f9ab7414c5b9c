package bendline.book;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Says whether everything that the book names is there, and finds clips again that were moved. */
public final class BookCheck {

    private final PracticeBook book;

    BookCheck(PracticeBook book) {
        this.book = book;
    }

    /** Clips that are not where the book put them, or not at their full size. */
    public List<Clip> missingClips() {
        return book.clips().stream().filter(c -> !book.has(c)).toList();
    }

    /** Analyses whose files are gone. */
    public List<Analysis> missingAnalyses() {
        return book.analyses().stream()
                .filter(a -> !Files.isRegularFile(book.file(a.folder()).resolve("analysis.json")))
                .toList();
    }

    /** What the database says of itself; empty if it is sound. */
    public List<String> damage() {
        return book.read(h -> {
            List<String> says = new ArrayList<>(
                    h.createQuery("PRAGMA integrity_check").mapTo(String.class).list());
            says.remove("ok");
            h.createQuery("PRAGMA foreign_key_check")
                    .mapToMap()
                    .list()
                    .forEach(r -> says.add("a row names another that is gone: " + r));
            return says;
        });
    }

    /** Files that were still being written when a program ended; nothing names them. */
    public List<Path> leftOvers() {
        List<Path> out = new ArrayList<>();
        for (String folder : List.of("", ClipShelf.FOLDER, Backups.FOLDER)) {
            Path in = book.folder().resolve(folder);
            if (Files.isDirectory(in)) {
                try (Stream<Path> files = Files.list(in)) {
                    files.filter(p -> p.getFileName().toString().startsWith(Whole.UNFINISHED))
                            .forEach(out::add);
                } catch (IOException e) {
                    throw Trouble.with(book.folder(), e);
                }
            }
        }
        return out;
    }

    /**
     * Looks for missing clips in a folder and all below it, and takes a copy of those it finds.
     *
     * @return how many were found
     */
    public int lookIn(Path folder) {
        int found = 0;
        List<Clip> missing = missingClips();
        try (Stream<Path> walk = Files.walk(folder)) {
            List<Path> files = walk.filter(Files::isRegularFile).toList();
            for (Clip c : missing) {
                Optional<Path> at = files.stream().filter(f -> same(f, c)).findFirst();
                if (at.isPresent()) {
                    book.keep(at.get());
                    found++;
                }
            }
        } catch (IOException e) {
            throw new BookException("The folder " + folder + " can't be looked through; name another.", e);
        }
        return found;
    }

    private static boolean same(Path file, Clip clip) {
        try {
            return Files.size(file) == clip.bytes() && Whole.sha256(file).equals(clip.sha256());
        } catch (IOException e) {
            return false;
        }
    }
}
