package bendline.book;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.jspecify.annotations.Nullable;

/**
 * Writes everything as one zip file that other programs can read: {@code book.json} with every row, its schema,
 * {@code casts.csv} for a spreadsheet, the clips and the files of every analysis.
 */
final class ArchiveWriter {

    static final String ROWS = "book.json";
    static final String SCHEMA = "book.schema.json";
    static final String CASTS = "casts.csv";

    private final PracticeBook book;

    ArchiveWriter(PracticeBook book) {
        this.book = book;
    }

    void write(Path archive) {
        if (Files.exists(archive)) {
            throw new BookException("The archive " + archive + " is already there; name another file.");
        }
        Snapshot all = book.read(h -> {
            h.begin();
            try {
                Map<String, Object> tables = new LinkedHashMap<>();
                for (String table : Tables.IN_ORDER) {
                    tables.put(
                            table,
                            h.createQuery("SELECT * FROM " + table + " ORDER BY id")
                                    .mapToMap()
                                    .list());
                }
                return new Snapshot(tables, Rows.entries(h, Selection.ALL));
            } finally {
                h.rollback();
            }
        });
        try {
            Whole.write(archive.toAbsolutePath(), out -> write(all, out));
        } catch (IOException e) {
            throw new BookException(
                    "The archive " + archive + " could not be written (" + e.getMessage()
                            + "); check the place and the room on the disk.",
                    e);
        }
    }

    /** Everything at one moment. */
    private record Snapshot(Map<String, Object> tables, List<Entry> entries) {}

    private void write(Snapshot all, OutputStream out) throws IOException {
        try (ZipOutputStream zip = new ZipOutputStream(out, StandardCharsets.UTF_8)) {
            Map<String, Object> root = new LinkedHashMap<>();
            root.put("format", Tables.FORMAT);
            root.put("schema", Schema.NEWEST);
            root.put("tables", all.tables());
            text(
                    zip,
                    ROWS,
                    new ObjectMapper()
                                    .enable(SerializationFeature.INDENT_OUTPUT)
                                    .writeValueAsString(root) + "\n");
            try (InputStream schema = ArchiveWriter.class.getResourceAsStream(SCHEMA)) {
                text(zip, SCHEMA, new String(schema.readAllBytes(), StandardCharsets.UTF_8));
            }
            text(zip, CASTS, csv(all.entries()));
            for (String folder : List.of(ClipShelf.FOLDER, "analyses")) {
                folder(zip, folder);
            }
        }
    }

    private void folder(ZipOutputStream zip, String folder) throws IOException {
        Path in = book.folder().resolve(folder);
        if (!Files.isDirectory(in)) {
            return;
        }
        try (Stream<Path> walk = Files.walk(in)) {
            for (Path file : walk.filter(Files::isRegularFile).sorted().toList()) {
                String name = book.folder().relativize(file).toString().replace('\\', '/');
                if (!name.contains("/.")) {
                    zip.putNextEntry(new ZipEntry(name));
                    Files.copy(file, zip);
                    zip.closeEntry();
                }
            }
        }
    }

    private static void text(ZipOutputStream zip, String name, String text) throws IOException {
        zip.putNextEntry(new ZipEntry(name));
        zip.write(text.getBytes(StandardCharsets.UTF_8));
        zip.closeEntry();
    }

    private static String csv(List<Entry> entries) throws IOException {
        StringWriter out = new StringWriter();
        CSVFormat format = CSVFormat.DEFAULT
                .builder()
                .setRecordSeparator('\n')
                .setHeader(
                        "cast",
                        "day",
                        "person",
                        "place",
                        "water",
                        "wind_mps",
                        "wind_from_deg",
                        "kit",
                        "rod",
                        "line",
                        "rig_loaded_g",
                        "technique",
                        "distance_m",
                        "distance_sd_m",
                        "distance_how",
                        "hit_clip",
                        "bait_on",
                        "clip",
                        "notes")
                .get();
        CSVPrinter printer = new CSVPrinter(out, format);
        for (Entry e : entries) {
            printer.printRecord(row(e));
        }
        printer.flush();
        return out.toString();
    }

    private static Object[] row(Entry e) {
        Session s = e.session();
        Kit k = e.kit();
        Throw t = e.cast();
        return new Object[] {
            e.name(),
            s.day(),
            e.person() == null ? null : e.person().name(),
            s.place(),
            s.water(),
            s.windMps(),
            s.windFromDeg(),
            k == null ? null : k.name(),
            k == null ? null : k.rod(),
            k == null ? null : k.line(),
            k == null ? null : k.rigLoadedG(),
            e.technique() == null ? null : e.technique().name(),
            t.distanceM(),
            t.distanceSdM(),
            t.distanceHow(),
            yesNo(t.hitClip()),
            yesNo(t.baitOn()),
            e.clip() == null ? null : e.clip().file(),
            t.notes()
        };
    }

    private static @Nullable String yesNo(@Nullable Boolean b) {
        return b == null ? null : b ? "yes" : "no";
    }
}
