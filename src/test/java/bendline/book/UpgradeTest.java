package bendline.book;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Books of every earlier schema, frozen when they were new, open with all that was in them. */
class UpgradeTest {

    @TempDir
    private Path temp;

    private Path frozen(int version) throws IOException {
        Path book = Files.createDirectory(temp.resolve("book"));
        try (InputStream in = UpgradeTest.class.getResourceAsStream("book-v" + version + ".sqlite")) {
            Files.copy(in, book.resolve("book.sqlite"));
        }
        return book;
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3})
    void everyEarlierBookOpensWithAllThatWasInIt(int version) throws IOException {
        Path folder = frozen(version);
        PracticeBook book = PracticeBook.open(folder);
        List<Entry> entries = book.entries(Selection.ALL);
        assertThat(entries).extracting(Entry::name).containsExactly("2026-05-03/1", "2026-05-03/2");
        Throw first = entries.get(0).cast();
        assertThat(first.distanceM()).isEqualTo(62.5);
        assertThat(first.distanceHow()).isEqualTo("17 wraps of 3.658 m");
        assertThat(first.distanceSdM()).as("nobody said, so nobody knows").isNull();
        assertThat(first.hitClip()).isTrue();
        assertThat(first.baitOn()).isFalse();
        assertThat(entries.get(0).kit().line()).isEqualTo("0.10 braid");
        assertThat(entries.get(0).session().windMps()).isEqualTo(2.5);
        assertThat(entries.get(0).analysis().folder()).isEqualTo("analyses/a1");
        assertThat(book.drills()).extracting(Drill::what).containsExactly("hold the rod until the rig lands");
        assertThat(book.target(new Target("g", null, "distance", 70, null, "2026-06-01")))
                .isIn(book.targets());
        assertThat(book.check().damage()).isEmpty();
        assertThat(PracticeBook.open(folder).entries(Selection.ALL)).isEqualTo(entries);
    }

    @Test
    void correctionsAndNotesOfAnEarlierBookAreKept() throws IOException {
        Reviews reviews = new Reviews(PracticeBook.open(frozen(3)));
        assertThat(reviews.corrections("c1"))
                .containsExactly(
                        new Correction("c1", "c1", 0.5, "tip", 100.5, 40.25, null, "2026-06-02T08:00:00Z", null),
                        new Correction(
                                "c2",
                                "c1",
                                0.75,
                                "rig",
                                null,
                                null,
                                null,
                                "2026-06-02T08:01:00Z",
                                "2026-06-02T08:02:00Z"));
        assertThat(reviews.notes("c1")).extracting(Note::words).containsExactly("hold it here");
        Correction moved = new Correction("c3", "c1", 1, "release", null, null, null, "2026-06-03T08:00:00Z", null);
        reviews.add(moved);
        assertThat(reviews.corrections("c1")).contains(moved);
    }

    @Test
    void everyVersionButTheNewestIsFrozen() {
        for (int version = 1; version < Schema.NEWEST; version++) {
            assertThat(UpgradeTest.class.getResource("book-v" + version + ".sqlite"))
                    .as("version " + version)
                    .isNotNull();
        }
    }

    @Test
    void theBookAsItWasIsKeptBeforeItIsChanged() throws IOException {
        Path folder = frozen(1);
        PracticeBook.open(folder);
        try (Stream<Path> copies = Files.list(folder.resolve("backups"))) {
            assertThat(copies.toList()).singleElement().asString().contains("before-schema-" + Schema.NEWEST);
        }
    }

    @Test
    void aBookFromTheFutureIsLeftAlone() throws IOException, SQLException {
        Path folder = temp.resolve("book");
        PracticeBook.openOrBegin(folder);
        try (Connection c = PracticeBook.source(folder.resolve("book.sqlite")).getConnection();
                Statement s = c.createStatement()) {
            s.execute("UPDATE flyway_schema_history SET version = '7' WHERE version = '" + Schema.NEWEST + "'");
        }
        byte[] before = Files.readAllBytes(folder.resolve("book.sqlite"));
        assertThatThrownBy(() -> PracticeBook.open(folder)).hasMessageContaining("newer Bendline (schema 7");
        assertThat(Files.readAllBytes(folder.resolve("book.sqlite"))).isEqualTo(before);
    }
}
