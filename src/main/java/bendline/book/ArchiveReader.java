package bendline.book;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Update;
import org.jspecify.annotations.Nullable;

/** Takes in an archive: files first, then every row that the book has not got yet, in one transaction. */
public final class ArchiveReader {

    private final PracticeBook book;

    ArchiveReader(PracticeBook book) {
        this.book = book;
    }

    /**
     * What came of it.
     *
     * @param rows new rows
     * @param known rows that the book had already
     * @param files new files
     */
    public record Taken(int rows, int known, int files) {}

    Taken read(Path archive) {
        try (ZipFile zip = new ZipFile(archive.toFile())) {
            JsonNode root = rows(zip, archive);
            Set<String> files = named(root);
            int copied = 0;
            for (ZipEntry entry : zip.stream().toList()) {
                if (belongs(entry, files)) {
                    copied += take(zip, entry) ? 1 : 0;
                }
            }
            int[] counts = book.write(h -> insert(h, root.path("tables"), archive));
            return new Taken(counts[0], counts[1], copied);
        } catch (IOException e) {
            throw new BookException(
                    "The archive " + archive + " can't be taken in (" + e.getMessage() + "); nothing was written down.",
                    e);
        }
    }

    private static JsonNode rows(ZipFile zip, Path archive) throws IOException {
        ZipEntry entry = zip.getEntry(ArchiveWriter.ROWS);
        if (entry == null) {
            throw new BookException("The archive " + archive + " holds no " + ArchiveWriter.ROWS
                    + ", so it is not a practice book; give one that book export made.");
        }
        try (InputStream in = zip.getInputStream(entry)) {
            JsonNode root = new ObjectMapper().readTree(in);
            if (!root.path("format").asText().equals(Tables.FORMAT)
                    || root.path("schema").asInt(0) < 1
                    || root.path("schema").asInt() > Schema.NEWEST) {
                throw new BookException("The archive " + archive + " is of format "
                        + root.path("format").asText("none")
                        + ", schema " + root.path("schema").asText("none") + ", and this Bendline reads "
                        + Tables.FORMAT
                        + " up to schema " + Schema.NEWEST + "; use a newer one.");
            }
            return root;
        }
    }

    /** The clips and the folders of analyses that rows name. */
    private static Set<String> named(JsonNode root) {
        Set<String> out = new TreeSet<>();
        root.path("tables").path("clip").forEach(r -> out.add(r.path("file").asText()));
        root.path("tables")
                .path("analysis")
                .forEach(r -> out.add(r.path("folder").asText()));
        return out;
    }

    /** Nothing is written but under a name of the book's own making. */
    private static boolean belongs(ZipEntry entry, Set<String> named) {
        String name = entry.getName();
        boolean ours = name.matches("clips/[0-9a-f]{16}(\\.[a-z0-9]{1,5})?")
                || name.matches("analyses/[0-9a-f-]{36}/([A-Za-z0-9_-]+/)?[A-Za-z0-9_-]+\\.[a-z0-9]{1,5}");
        return !entry.isDirectory()
                && ours
                && (named.contains(name) || named.contains(name.replaceFirst("^(analyses/[^/]+)/.*", "$1")));
    }

    private boolean take(ZipFile zip, ZipEntry entry) throws IOException {
        Path to = book.file(entry.getName());
        if (Files.exists(to)) {
            return false;
        }
        Files.createDirectories(to.getParent());
        try (InputStream in = zip.getInputStream(entry)) {
            String sha = Whole.write(to, in::transferTo);
            if (entry.getName().startsWith(ClipShelf.FOLDER)
                    && !entry.getName().startsWith("clips/" + sha.substring(0, 16))) {
                Files.delete(to);
                throw new IOException("the clip " + entry.getName() + " is damaged in it");
            }
        }
        return true;
    }

    private static int[] insert(Handle h, JsonNode tables, Path archive) {
        int fresh = 0;
        int known = 0;
        for (String table : Tables.IN_ORDER) {
            Set<String> columns = h.createQuery("SELECT name FROM pragma_table_info('" + table + "')")
                    .mapTo(String.class)
                    .set();
            for (JsonNode row : tables.path(table)) {
                Map<String, Object> there = h.createQuery("SELECT * FROM " + table + " WHERE id = ?")
                        .bind(0, row.path("id").asText())
                        .mapToMap()
                        .findOne()
                        .orElse(Map.of());
                if (there.isEmpty()) {
                    insert(h, table, columns, row, archive);
                    fresh++;
                } else {
                    known++;
                }
            }
        }
        return new int[] {fresh, known};
    }

    private static void insert(Handle h, String table, Set<String> columns, JsonNode row, Path archive) {
        List<String> names = new ArrayList<>();
        for (Iterator<String> it = row.fieldNames(); it.hasNext(); ) {
            String name = it.next();
            if (!columns.contains(name)) {
                throw new BookException("The archive " + archive + " has a column " + table + "." + name
                        + " that this Bendline does not know; use a newer one.");
            }
            names.add(name);
        }
        String values = names.stream().map(n -> ":" + n).collect(Collectors.joining(", "));
        try (Update update = h.createUpdate(
                "INSERT INTO " + table + " (" + String.join(", ", names) + ") VALUES (" + values + ")")) {
            names.forEach(n -> update.bind(n, value(Objects.requireNonNull(row.get(n)))));
            update.execute();
        } catch (org.jdbi.v3.core.JdbiException e) {
            throw new BookException(
                    "The archive " + archive + " does not fit into this book at " + table + " \""
                            + row.path("name").asText(row.path("id").asText())
                            + "\", which the book has otherwise; nothing was written down; take it into a book of its own with"
                            + " --book.",
                    e);
        }
    }

    private static @Nullable Object value(JsonNode node) {
        if (node.isNull()) {
            return null;
        }
        return node.isIntegralNumber() ? (Object) node.asLong() : node.isNumber() ? node.asDouble() : node.asText();
    }
}
