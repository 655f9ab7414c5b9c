package bendline.book;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BookTest {

    @TempDir
    private Path temp;

    private PracticeBook book() {
        return PracticeBook.openOrBegin(temp.resolve("book"));
    }

    private Path clip(String name, String content) throws IOException {
        return Files.writeString(temp.resolve(name), content);
    }

    static Session day(String day) {
        return new Session("s" + day, day, day, null, "east bank", "Hollin Mere", 2.5, 180.0, "right", "");
    }

    static Throw cast(Session session, Clip clip) {
        return new Throw(
                "",
                session.id(),
                0,
                clip == null ? null : clip.id(),
                1,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                "",
                "");
    }

    private static final Kit KIT = new Kit(
            "k",
            "hollin 390",
            "Heron 390",
            3.9,
            3.28,
            null,
            "Teal 6000",
            "0.10 braid",
            null,
            "cage",
            60.0,
            85.0,
            null,
            0.82,
            "");

    /** A book with one of everything. */
    static PracticeBook filled(Path folder, Path clip) throws IOException {
        PracticeBook book = PracticeBook.openOrBegin(folder);
        Person oda = book.person(new Person("p", "Oda Bregmoor", "right", ""));
        Kit kit = book.kit(KIT);
        Technique slow = book.technique(new Technique("t", "slow back", "count two"));
        Session s =
                book.session(new Session("s", "2026-05-03", "2026-05-03", oda.id(), null, null, 2.5, 180.0, null, ""));
        Clip kept = book.keep(clip);
        book.add(new Throw(
                "",
                s.id(),
                0,
                kept.id(),
                1,
                kit.id(),
                slow.id(),
                62.5,
                "17 wraps",
                0.7,
                true,
                false,
                "“gut”, 50 %",
                ""));
        book.add(cast(s, null));
        String place = book.placeForAnalysis();
        Files.createDirectories(book.file(place).resolve("frames"));
        Files.writeString(book.file(place).resolve("analysis.json"), "{}");
        Files.writeString(book.file(place).resolve("frames/00001.png"), "png");
        book.analysed(kept, "0.1.0", place, 1);
        book.drill(new Drill("d", oda.id(), "hold the rod", "2026-05-03", null));
        book.target(new Target("g", oda.id(), "distance", 70, "2026-08-01", "2026-05-03"));
        return book;
    }

    @Test
    void keepsEverythingThatIsWrittenDown() throws IOException {
        filled(temp.resolve("book"), clip("a.mp4", "film"));
        List<Entry> entries = PracticeBook.open(temp.resolve("book")).entries(Selection.ALL);
        assertThat(entries).extracting(Entry::name).containsExactly("2026-05-03/1", "2026-05-03/2");
        Entry first = entries.get(0);
        assertThat(first.kit()).isEqualTo(KIT);
        assertThat(first.person().handed()).isEqualTo("right");
        assertThat(first.cast().hitClip()).isTrue();
        assertThat(first.cast().baitOn()).isFalse();
        assertThat(first.cast().distanceSdM()).isEqualTo(0.7);
        assertThat(first.cast().notes()).isEqualTo("“gut”, 50 %");
        assertThat(first.session().windFromDeg()).isEqualTo(180);
        assertThat(first.analysis().program()).isEqualTo("0.1.0");
        assertThat(entries.get(1).cast().hitClip()).isNull();
        assertThat(entries.get(1).cast().distanceM()).isNull();
        assertThat(book().file(first.clip().file())).hasContent("film");
        assertThat(book().check().damage()).isEmpty();
    }

    @Test
    void aClipIsKeptOnceAndACastShownOnce() throws IOException {
        PracticeBook book = book();
        Session s = book.session(day("2026-05-03"));
        Clip a = book.keep(clip("a.mp4", "film"));
        assertThat(book.keep(clip("b.mp4", "film")).id()).isEqualTo(a.id());
        book.add(cast(s, a));
        assertThatThrownBy(() -> book.add(cast(s, a)))
                .isInstanceOf(BookException.class)
                .hasMessageContaining("refused");
        assertThat(book.entries(Selection.ALL)).hasSize(1);
    }

    @Test
    void kitThatCastsWereMadeWithCannotChangeUnderThem() {
        PracticeBook book = book();
        book.kit(KIT);
        assertThat(book.kit(KIT)).isEqualTo(KIT);
        Kit other = new Kit(
                "x", KIT.name(), "other rod", null, null, null, null, null, null, null, null, null, null, null, "");
        assertThatThrownBy(() -> book.kit(other))
                .isInstanceOf(BookException.class)
                .hasMessageContaining("name of its own");
    }

    @Test
    void aSessionIsFilledInLittleByLittle() {
        PracticeBook book = book();
        book.session(day("2026-05-03"));
        Session s =
                book.session(new Session("x", "2026-05-03", "2026-05-03", null, null, null, 4.0, null, null, "gusts"));
        assertThat(s.windMps()).isEqualTo(4.0);
        assertThat(s.place()).isEqualTo("east bank");
        assertThat(s.notes()).isEqualTo("gusts");
    }

    @Test
    void anOldAnalysisStaysBesideTheNew() throws IOException {
        PracticeBook book = filled(temp.resolve("book"), clip("a.mp4", "film"));
        String place = book.placeForAnalysis();
        Files.createDirectories(book.file(place));
        Files.writeString(book.file(place).resolve("analysis.json"), "{\"new\":1}");
        book.analysed(book.clips().get(0), "0.2.0", place, 1);
        assertThat(book.analyses()).extracting(Analysis::program).containsExactly("0.1.0", "0.2.0");
        assertThat(book.entries(Selection.ALL).get(0).analysis().program()).isEqualTo("0.2.0");
        assertThat(book.check().missingAnalyses()).isEmpty();
    }

    @Test
    void aClipThatWasMovedIsMissedAndFoundAgainByItsBytes() throws IOException {
        PracticeBook book = filled(temp.resolve("book"), clip("a.mp4", "film"));
        Path elsewhere = Files.createDirectories(temp.resolve("else/where")).resolve("renamed.mov");
        Files.move(book.file(book.clips().get(0).file()), elsewhere);
        assertThat(book.check().missingClips()).hasSize(1);
        assertThat(book.check().lookIn(temp.resolve("else"))).isEqualTo(1);
        assertThat(book.check().missingClips()).isEmpty();
        assertThat(book.entries(Selection.ALL).get(0).clip().name()).isEqualTo("a.mp4");
        Files.delete(book.file(book.clips().get(0).file()));
        Files.delete(elsewhere);
        assertThat(book.check().lookIn(temp.resolve("else"))).isZero();
        assertThat(book.entries(Selection.ALL)).as("the cast itself stays").hasSize(2);
    }

    @Test
    void castsAreChosenByWhatIsWrittenDownOfThem() throws IOException {
        PracticeBook book = filled(temp.resolve("book"), clip("a.mp4", "film"));
        book.add(cast(book.session(day("2026-06-01")), null));
        assertThat(book.entries(Selection.parse("session=2026-05-03"))).hasSize(2);
        assertThat(book.entries(Selection.parse("technique=slow back"))).hasSize(1);
        assertThat(book.entries(Selection.parse("from=2026-05-04"))).hasSize(1);
        assertThat(book.entries(Selection.parse("day=2026-06-01"))).hasSize(1);
        assertThat(book.entries(Selection.parse("person=Oda Bregmoor, kit=hollin 390")))
                .hasSize(1);
        assertThatThrownBy(() -> Selection.parse("colour=red")).hasMessageContaining("colour=red");
    }

    @Test
    void everythingGoesIntoOneArchiveAndComesOutTheSame() throws IOException {
        PracticeBook book = filled(temp.resolve("book"), clip("a.mp4", "film"));
        Path archive = temp.resolve("all.zip");
        book.export(archive);
        PracticeBook other = PracticeBook.openOrBegin(temp.resolve("other"));
        ArchiveReader.Taken taken = other.importing(archive);
        assertThat(taken.known()).isZero();
        assertThat(taken.files()).isEqualTo(3);
        assertThat(other.entries(Selection.ALL)).isEqualTo(book.entries(Selection.ALL));
        assertThat(other.drills()).isEqualTo(book.drills());
        assertThat(other.targets()).isEqualTo(book.targets());
        assertThat(other.check().missingClips()).isEmpty();
        assertThat(other.check().missingAnalyses()).isEmpty();
        assertThat(other.importing(archive).rows()).as("once is enough").isZero();
        Path again = temp.resolve("again.zip");
        other.export(again);
        assertThat(rows(again)).isEqualTo(rows(archive));
        assertThatThrownBy(() -> book.export(archive)).hasMessageContaining("already there");
    }

    private static String rows(Path archive) throws IOException {
        return entry(archive, "book.json");
    }

    private static String entry(Path archive, String name) throws IOException {
        try (ZipFile zip = new ZipFile(archive.toFile());
                InputStream in = zip.getInputStream(zip.getEntry(name))) {
            return new String(in.readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
        }
    }

    @Test
    void theArchiveFitsTheSchemaThatLiesInIt() throws IOException {
        filled(temp.resolve("book"), clip("a.mp4", "film")).export(temp.resolve("all.zip"));
        var schema = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
                .getSchema(entry(temp.resolve("all.zip"), "book.schema.json"));
        var tree = new ObjectMapper().readTree(rows(temp.resolve("all.zip")));
        assertThat(schema.validate(tree)).isEmpty();
        ((com.fasterxml.jackson.databind.node.ObjectNode) tree.at("/tables/session/0")).put("day", "3 May");
        assertThat(schema.validate(tree)).isNotEmpty();
        assertThat(entry(temp.resolve("all.zip"), "casts.csv"))
                .contains("2026-05-03/1,2026-05-03,Oda Bregmoor,,,2.5,180.0,hollin 390,Heron 390");
    }

    @ParameterizedTest
    @ValueSource(strings = {"../outside.txt", "clips/../../outside.txt", "/outside.txt"})
    void anArchiveWritesNothingOutsideTheBook(String name) throws IOException {
        filled(temp.resolve("book"), clip("a.mp4", "film")).export(temp.resolve("all.zip"));
        String json = rows(temp.resolve("all.zip")).replaceAll("\"clips/[^\"]*\"", "\"" + name + "\"");
        Path bad = temp.resolve("bad.zip");
        try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(bad))) {
            zip.putNextEntry(new ZipEntry("book.json"));
            zip.write(json.getBytes(java.nio.charset.StandardCharsets.UTF_8));
            zip.putNextEntry(new ZipEntry(name));
            zip.write(1);
        }
        PracticeBook other = PracticeBook.openOrBegin(temp.resolve("deep/other"));
        other.importing(bad);
        assertThat(temp.resolve("outside.txt")).doesNotExist();
        assertThat(temp.resolve("deep/outside.txt")).doesNotExist();
        assertThat(other.check().missingClips()).hasSize(1);
    }

    @Test
    void refusesArchivesItCannotRead() throws IOException {
        PracticeBook book = filled(temp.resolve("book"), clip("a.mp4", "film"));
        assertThatThrownBy(() -> book.importing(clip("text.zip", "no zip")))
                .isInstanceOf(BookException.class)
                .hasMessageContaining("text.zip");
        Path newer = temp.resolve("newer.zip");
        try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(newer))) {
            zip.putNextEntry(new ZipEntry("book.json"));
            zip.write("{\"format\":\"bendline-book/1\",\"schema\":99,\"tables\":{}}"
                    .getBytes(java.nio.charset.StandardCharsets.UTF_8));
        }
        assertThatThrownBy(() -> book.importing(newer)).hasMessageContaining("newer one");
    }

    @Test
    void twoProgramsThatWriteAtOnceLoseNothing() throws Exception {
        book().session(day("2026-05-03"));
        ExecutorService programs = Executors.newFixedThreadPool(4);
        List<Future<?>> all = IntStream.range(0, 4)
                .<Future<?>>mapToObj(p -> programs.submit(() -> {
                    PracticeBook mine = PracticeBook.open(temp.resolve("book"));
                    for (int i = 0; i < 10; i++) {
                        mine.add(cast(mine.sessions().get(0), null));
                    }
                }))
                .toList();
        for (Future<?> f : all) {
            f.get();
        }
        programs.shutdown();
        assertThat(book().entries(Selection.ALL))
                .extracting(e -> e.cast().number())
                .containsExactlyElementsOf(IntStream.rangeClosed(1, 40).boxed().toList());
    }

    @Test
    void aBackupIsABookOfItsOwn() throws IOException {
        PracticeBook book = filled(temp.resolve("book"), clip("a.mp4", "film"));
        Path copy = book.backup(null);
        assertThat(copy.getParent().getFileName()).hasToString("backups");
        Path restored = Files.createDirectory(temp.resolve("restored"));
        Files.copy(copy, restored.resolve("book.sqlite"));
        assertThat(PracticeBook.open(restored).entries(Selection.ALL)).isEqualTo(book.entries(Selection.ALL));
    }

    @Test
    void saysPlainlyWhatIsWrongWithABook() throws IOException {
        assertThatThrownBy(() -> PracticeBook.open(temp.resolve("nowhere"))).hasMessageContaining("no practice book");
        Path broken = Files.createDirectory(temp.resolve("broken"));
        Files.writeString(broken.resolve("book.sqlite"), "This is not a database. ".repeat(50));
        assertThatThrownBy(() -> PracticeBook.open(broken))
                .isInstanceOf(BookException.class)
                .hasMessageContaining("damaged")
                .hasMessageContaining("backups");
    }

    @Test
    void aTornDatabaseIsNotTakenForAWholeOne() throws IOException {
        filled(temp.resolve("book"), clip("a.mp4", "film"));
        Path file = temp.resolve("book/book.sqlite");
        byte[] all = Files.readAllBytes(file);
        Files.write(file, java.util.Arrays.copyOf(all, all.length / 2), StandardOpenOption.TRUNCATE_EXISTING);
        assertThatThrownBy(() -> {
                    PracticeBook book = PracticeBook.open(temp.resolve("book"));
                    book.entries(Selection.ALL);
                    assertThat(book.check().damage()).isEmpty();
                })
                .isInstanceOfAny(BookException.class, AssertionError.class);
    }

    @Test
    void wrapsTurnsAndMetres() {
        // Distance sticks: 12 ft (3.6576 m) a wrap, so 25 wraps are 100 yards, 91.44 m. Common practice; a yard is
        // 0.9144 m.
        assertThat(Distance.wraps(25, Distance.USUAL_WRAP_M).metres()).isCloseTo(91.44, within(1e-9));
        assertThat(Distance.wraps(10, Distance.USUAL_WRAP_M).metres()).isCloseTo(36.576, within(1e-9));
        // Line a turn brings in is π · wound diameter · gear ratio: 50 mm and 5.2 give 0.8168 m (arithmetic).
        assertThat(Distance.turns(80, Math.PI * 0.05 * 5.2).metres()).isCloseTo(65.35, within(0.01));
        assertThat(Distance.turns(80, 0.8168).plusMinus()).isGreaterThan(6);
        assertThat(Distance.wraps(17, 3.6576).how()).isEqualTo("17 wraps of 3.658 m");
        assertThatThrownBy(() -> Distance.metres(0, 1)).hasMessageContaining("distance 0.0 m");
    }
}
