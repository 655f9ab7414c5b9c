package bendline.book;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.flywaydb.core.api.MigrationVersion;

/** Brings a database to the newest schema, one numbered step after another, each whole or not at all. */
final class Schema {

    /** The newest step. */
    static final int NEWEST = 4;

    private static final String PLACE = "classpath:bendline/book/migration";

    private Schema() {}

    /**
     * Upgrades. A copy of an older book is kept in its folder {@code backups} first; a second program that opens the same book
     * waits.
     */
    static void upgrade(DataSource data, Path book) {
        upgrade(data, book, NEWEST);
    }

    /**
     * The same up to a step, which lets tests make old books. The lock on the file keeps other programs out, the monitor other
     * threads of this one, to which a file's lock is an error instead of a reason to wait.
     */
    static synchronized void upgrade(DataSource data, Path book, int step) {
        try (FileChannel channel =
                        FileChannel.open(book.resolve(".lock"), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
                FileLock lock = channel.lock()) {
            int now = step(data);
            if (now > NEWEST) {
                throw new BookException("The book " + book + " was written by a newer Bendline (schema " + now
                        + ", this one knows " + NEWEST + "); open it with that one.");
            }
            if (now > 0 && now < step) {
                Backups.copy(data, book, "before-schema-" + step);
            }
            if (now < step) {
                migrate(data, step);
            }
        } catch (IOException e) {
            throw new BookException(
                    "The book " + book + " can't be written to (" + e.getMessage() + "); check its folder.", e);
        } catch (FlywayException | SQLException e) {
            throw Trouble.with(book, e);
        }
    }

    private static void migrate(DataSource data, int step) {
        Flyway.configure()
                .dataSource(data)
                .locations(PLACE)
                .target(MigrationVersion.fromVersion(Integer.toString(step)))
                .load()
                .migrate();
    }

    /** The newest step that was taken; 0 for an empty database. */
    private static int step(DataSource data) throws SQLException {
        try (Connection c = data.getConnection();
                Statement s = c.createStatement()) {
            try (ResultSet tables = s.executeQuery(
                    "SELECT count(*) FROM sqlite_master WHERE type = 'table' AND name = 'flyway_schema_history'")) {
                if (tables.getInt(1) == 0) {
                    return 0;
                }
            }
            try (ResultSet steps = s.executeQuery(
                    "SELECT coalesce(max(CAST(version AS INTEGER)), 0) FROM flyway_schema_history WHERE success = 1")) {
                return steps.getInt(1);
            }
        }
    }

    /** Whether a folder holds a book. */
    static boolean isBook(Path folder) {
        return Files.isRegularFile(folder.resolve(PracticeBook.DATABASE));
    }
}
