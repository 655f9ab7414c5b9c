package bendline.web;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/**
 * The pictures to step through, a folder a clip. They take much room and can be made again, so those that nobody looked at for
 * longest go first when they take more than they may. When a folder was last looked at is its own time, which outlives the
 * program.
 */
final class FrameShelf {

    private final Path shelf;
    private final long mostBytes;

    /** @param mostBytes what all pictures together may take; the newest folder stays even where it takes more alone */
    FrameShelf(Path shelf, long mostBytes) {
        this.shelf = shelf;
        this.mostBytes = mostBytes;
    }

    /** A clip's folder, there or not. */
    Path of(String clipId) {
        return shelf.resolve(clipId);
    }

    /** Somebody looks at a clip's pictures. */
    void looked(String clipId) {
        try {
            Files.setLastModifiedTime(of(clipId), FileTime.from(Instant.now()));
        } catch (IOException e) {
            // Gone meanwhile, or the disk is read-only: nothing is lost but the order in which folders go.
            return;
        }
    }

    /** Takes away what is too much. */
    synchronized void tidy() throws IOException {
        if (!Files.isDirectory(shelf)) {
            return;
        }
        record Folder(Path path, FileTime looked, long bytes) {}
        List<Folder> folders = new ArrayList<>();
        try (Stream<Path> inside = Files.list(shelf)) {
            for (Path p : inside.filter(p -> !p.toString().endsWith(".part")).toList()) {
                folders.add(new Folder(p, Files.getLastModifiedTime(p), bytes(p)));
            }
        }
        folders.sort(Comparator.comparing(Folder::looked).reversed());
        long taken = 0;
        for (int i = 0; i < folders.size(); i++) {
            taken += folders.get(i).bytes();
            if (i > 0 && taken > mostBytes) {
                Workbench.delete(folders.get(i).path());
            }
        }
    }

    private static long bytes(Path folder) throws IOException {
        long sum = 0;
        try (Stream<Path> walk = Files.walk(folder)) {
            for (Path p : walk.toList()) {
                sum += Files.isRegularFile(p) ? Files.size(p) : 0;
            }
        }
        return sum;
    }
}
