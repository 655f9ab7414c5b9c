package bendline.web;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/** How much room there is where the book lies. */
@FunctionalInterface
interface Room {

    /** Kept free for the book itself: notes and corrections must find room when clips don't. */
    long RESERVE_BYTES = 300_000_000;

    /** Below this people are told before they send anything. */
    long LITTLE_BYTES = 2_000_000_000;

    /** What is free now. */
    long freeBytes();

    /** The room of the disk on which a folder lies. */
    static Room of(Path folder) {
        return () -> {
            try {
                return Files.getFileStore(folder).getUsableSpace();
            } catch (IOException e) {
                throw new UncheckedIOException("the disk of the book does not say how full it is", e);
            }
        };
    }

    /** Whether so much more can be written and the reserve stays. */
    default boolean holds(long bytes) {
        return freeBytes() >= bytes + RESERVE_BYTES;
    }

    /** Bytes as phones and computers count them: 1 GB is 1000 MB. */
    static String words(long bytes) {
        if (bytes >= 100_000_000_000L) {
            return String.format(Locale.ROOT, "%d GB", bytes / 1_000_000_000);
        }
        return bytes >= 1_000_000_000
                ? String.format(Locale.ROOT, "%.1f GB", bytes / 1e9)
                : String.format(Locale.ROOT, "%d MB", (bytes + 999_999) / 1_000_000);
    }
}
