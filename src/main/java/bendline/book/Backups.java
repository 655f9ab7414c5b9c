package bendline.book;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.Instant;
import java.util.UUID;
import javax.sql.DataSource;

/** Copies of the database, each taken in one piece even while another program writes. */
final class Backups {

    static final String FOLDER = "backups";

    private Backups() {}

    /**
     * Copies the database into the folder of backups.
     *
     * @param why part of the copy's name
     * @return the copy
     */
    static Path copy(DataSource data, Path book, String why) throws IOException, SQLException {
        Path folder = Files.createDirectories(book.resolve(FOLDER));
        String stamp = Instant.now().toString().replaceAll("[:.]", "-");
        return copyTo(data, folder.resolve("book-" + stamp + "-" + why + ".sqlite"));
    }

    /** Copies the database to a file that isn't there yet. */
    static Path copyTo(DataSource data, Path file) throws IOException, SQLException {
        Path beside = file.resolveSibling("." + file.getFileName() + "-" + UUID.randomUUID());
        try (Connection c = data.getConnection();
                PreparedStatement s = c.prepareStatement("VACUUM INTO ?")) {
            s.setString(1, beside.toString());
            s.executeUpdate();
            Whole.sync(beside);
            Files.move(beside, file, java.nio.file.StandardCopyOption.ATOMIC_MOVE);
            return file;
        } finally {
            Files.deleteIfExists(beside);
        }
    }
}
