package bendline.book;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/** Turns what the database complains of into one sentence for the user. */
final class Trouble {

    private Trouble() {}

    static BookException with(Path book, Exception problem) {
        SQLiteException sqlite = sqlite(problem);
        if (sqlite == null) {
            return new BookException(
                    "The book " + book + " can't be used (" + oneLine(problem.getMessage())
                            + "); check its folder, or bring back a backup.",
                    problem);
        }
        return new BookException(sentence(book, sqlite), problem);
    }

    private static String sentence(Path book, SQLiteException e) {
        SQLiteErrorCode code = SQLiteErrorCode.getErrorCode(e.getResultCode().code & 0xff);
        return switch (code) {
            case SQLITE_FULL, SQLITE_IOERR ->
                "The book " + book + " could not be written to, most likely because the disk is full; nothing of it was"
                        + " changed; make room and try again.";
            case SQLITE_BUSY, SQLITE_LOCKED ->
                "Another program has been writing to the book " + book + " for long; wait until it has finished and try"
                        + " again.";
            case SQLITE_CORRUPT, SQLITE_NOTADB ->
                "The book " + book + " is damaged; put a copy from its folder backups in the place of "
                        + PracticeBook.DATABASE + ".";
            case SQLITE_READONLY, SQLITE_CANTOPEN, SQLITE_PERM ->
                "The book " + book + " can't be written to; check who owns its folder, or name another with --book.";
            default -> "The book " + book + " refused that (" + oneLine(e.getMessage()) + "); nothing was changed.";
        };
    }

    private static @Nullable SQLiteException sqlite(@Nullable Throwable problem) {
        Throwable t = problem;
        while (t != null && !(t instanceof SQLiteException)) {
            t = t.getCause();
        }
        return (SQLiteException) t;
    }

    private static String oneLine(@Nullable String text) {
        return text == null ? "no reason given" : text.strip().replaceAll("\\s*\\R\\s*", " ");
    }
}
