package bendline.report;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A folder that appears under its name all at once or not at all. Files are written into a hidden folder beside it, which
 * {@link #publish} moves into place and {@link #close} removes if that has not happened. A folder that is already there is
 * only replaced if it is empty.
 */
final class OutputFolder implements AutoCloseable {

    private final Path target;
    private final Path staging;
    private final Thread sweeper;

    private OutputFolder(Path target, Path staging) {
        this.target = target;
        this.staging = staging;
        this.sweeper = new Thread(() -> removeQuietly(staging.getParent()), "remove half-written output");
    }

    /**
     * Checks that a folder could be written under this name, leaving nothing behind.
     *
     * @throws OutputFolderException if it could not
     */
    static void check(Path target) {
        Path folder = target.toAbsolutePath().normalize();
        if (Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
            checkReplaceable(folder);
        }
        Path parent = nearestExisting(folder);
        if (!Files.isDirectory(parent)) {
            throw new OutputFolderException("The output folder " + target + " can't be made because " + parent
                    + " is not a folder; name another place with --out.");
        }
        tryToWrite(target, parent);
    }

    /** Permissions alone don't tell: a disk may be full or mounted read-only. */
    private static void tryToWrite(Path target, Path parent) {
        try {
            Files.delete(Files.createTempDirectory(parent, ".bendline-"));
        } catch (IOException e) {
            throw new OutputFolderException(
                    "The output folder " + target + " can't be made because " + parent
                            + " can't be written to; name another place with --out.",
                    e);
        }
    }

    private static void checkReplaceable(Path folder) {
        if (!Files.isDirectory(folder)) {
            throw new OutputFolderException("The output " + folder
                    + " is already there and is not a folder; name another with --out or remove it.");
        }
        if (!isEmpty(folder)) {
            throw new OutputFolderException("The output folder " + folder
                    + " is already there and not empty; name another with --out or remove it.");
        }
    }

    private static boolean isEmpty(Path folder) {
        try (Stream<Path> entries = Files.list(folder)) {
            return entries.findAny().isEmpty();
        } catch (IOException e) {
            throw new OutputFolderException(
                    "The output folder " + folder + " can't be read; name another with --out.", e);
        }
    }

    private static Path nearestExisting(Path folder) {
        @Nullable Path p = folder.getParent();
        while (p != null && !Files.exists(p)) {
            p = p.getParent();
        }
        return p == null ? folder.getRoot() : p;
    }

    /**
     * Makes the hidden folder beside the target.
     *
     * @throws OutputFolderException if the target can't be used
     */
    static OutputFolder beside(Path target) {
        check(target);
        Path folder = target.toAbsolutePath().normalize();
        try {
            Path parent = Files.createDirectories(folder.getParent());
            Path staging = Files.createTempDirectory(parent, "." + folder.getFileName() + "-");
            // Temporary folders are private; the report is to be read by whoever may read its parent.
            Path open = Files.createDirectory(staging.resolve("report"));
            OutputFolder out = new OutputFolder(folder, open);
            Runtime.getRuntime().addShutdownHook(out.sweeper);
            return out;
        } catch (AccessDeniedException e) {
            throw new OutputFolderException(
                    "The output folder " + target + " can't be made: permission denied; name another place with --out.",
                    e);
        } catch (IOException e) {
            throw new OutputFolderException(
                    "The output folder " + target + " can't be made (" + e.getMessage()
                            + "); name another place with --out.",
                    e);
        }
    }

    /** Where to write. */
    Path staging() {
        return staging;
    }

    /** Moves what was written into place. */
    void publish() throws IOException {
        if (Files.isDirectory(target)) {
            Files.delete(target);
        }
        try {
            Files.move(staging, target, StandardCopyOption.ATOMIC_MOVE);
        } catch (AtomicMoveNotSupportedException e) {
            Files.move(staging, target);
        }
    }

    @Override
    public void close() {
        removeQuietly(staging.getParent());
        try {
            Runtime.getRuntime().removeShutdownHook(sweeper);
        } catch (IllegalStateException e) {
            // The machine is shutting down and the hook has run or will run; there is nothing left for it to do.
        }
    }

    private static void removeQuietly(Path folder) {
        try {
            Files.walkFileTree(folder, new SimpleFileVisitor<>() {
                @Override
                public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
                    Files.delete(file);
                    return FileVisitResult.CONTINUE;
                }

                @Override
                public FileVisitResult postVisitDirectory(Path dir, @Nullable IOException e) throws IOException {
                    Files.delete(dir);
                    return FileVisitResult.CONTINUE;
                }
            });
        } catch (IOException e) {
            // A hidden left-over must not hide the error that led here.
        }
    }
}
