package bendline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BookCommandTest {

    @TempDir
    private Path temp;

    private record Ended(int status, String out, String err) {}

    private Ended book(String... args) {
        List<String> line = new ArrayList<>(List.of("book"));
        line.addAll(List.of(args));
        line.addAll(List.of("--book", temp.resolve("book").toString()));
        return run(line.toArray(String[]::new));
    }

    private static Ended run(String... args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int status = Main.run(new PrintWriter(out, true), new PrintWriter(err, true), args);
        return new Ended(status, out.toString(), err.toString());
    }

    private static void refused(Ended ended, int status, String says) {
        assertThat(ended.err()).startsWith("bendline: ").contains(says).endsWith(".\n");
        assertThat(ended.err().lines()).as("one line, one sentence").hasSize(1);
        assertThat(ended.status()).isEqualTo(status);
    }

    @Test
    void aCastIsAddedInOneLineAndMeasuredLater() throws IOException {
        assertThat(book("kit", "hollin", "--rod", "Heron 390", "--rig-loaded", "85", "--turn-length", "0.82")
                        .out())
                .contains("loaded g 85.0");
        Path clip = ClipFiles.moving(temp.resolve("cast.mp4"), 20);
        Ended added = book(
                "add",
                clip.toString(),
                "--day",
                "2026-05-03",
                "--kit",
                "hollin",
                "--wraps",
                "17",
                "--hit-clip",
                "yes",
                "--wind",
                "2",
                "--wind-from",
                "180",
                "--person",
                "Oda Bregmoor",
                "--technique",
                "slow back");
        assertThat(added.err()).isEmpty();
        assertThat(added.out()).contains("Added 2026-05-03/1 from cast.mp4: 62.2 ± 0.8 m");
        assertThat(clip).exists();
        assertThat(book("measure", "2026-05-03/1", "--turns", "80", "--bait-on", "no")
                        .out())
                .contains("65.6 ± 6.6 m (80 turns of 0.8200 m)")
                .contains("hit the clip")
                .contains("bait lost");
        assertThat(book("list", "technique=slow back").out())
                .contains("2026-05-03/1")
                .contains("not analysed");
        assertThat(book("sessions").out()).contains("2026-05-03; Oda Bregmoor; wind 2.0 m/s from 180°; 1 cast");
        assertThat(book("add", clip.toString(), "--day", "2026-05-03").out()).contains("In the book already");
    }

    @Test
    void aFolderOfClipsBecomesOneCastEach() throws IOException {
        Path folder = Files.createDirectory(temp.resolve("clips"));
        ClipFiles.moving(folder.resolve("b.mp4"), 20);
        ClipFiles.moving(folder.resolve("a.mp4"), 21);
        Files.writeString(folder.resolve("notes.txt"), "wind from behind");
        assertThat(book("add", folder.toString(), "--session", "2026-05-03 evening")
                        .out())
                .contains("Added 2026-05-03 evening/1 from a.mp4")
                .contains("Added 2026-05-03 evening/2 from b.mp4");
        assertThat(book("check").out()).startsWith("Everything is there.");
        refused(book("add", folder.toString(), "--metres", "60"), 2, "belongs to one cast");
    }

    @Test
    void clipsAreAnalysedOnceAndAgainWithTheOldResultsKept() throws IOException {
        Path clip = ClipFiles.moving(temp.resolve("cast.mp4"), 40);
        assertThat(book("add", clip.toString(), "--day", "2026-05-03", "--analyse")
                        .out())
                .contains("Analysed cast.mp4: 0 casts");
        assertThat(book("analyse").out()).contains("Nothing new to analyse");
        assertThat(book("analyse", "--all", "day=2026-05-03").out()).contains("Analysed cast.mp4");
        try (var folders = Files.list(temp.resolve("book/analyses"))) {
            assertThat(folders).hasSize(2).allMatch(f -> Files.isRegularFile(f.resolve("report.html")));
        }
        try (var clips = Files.list(temp.resolve("book/clips"))) {
            Files.delete(clips.findFirst().orElseThrow());
        }
        Ended missing = book("analyse", "--all");
        assertThat(missing.out()).contains("Missing: cast.mp4").contains("--look-in");
        assertThat(missing.status()).isEqualTo(3);
        assertThat(book("list").out()).contains("MISSING");
        assertThat(book("check", "--look-in", temp.toString()).out())
                .contains("Found again: 1")
                .contains("Everything is there");
    }

    @Test
    void aCastThatWasNotFilmedIsWrittenDownToo() {
        assertThat(book("add", "--metres", "61.5", "--give-or-take", "0.5", "--day", "2026-05-03")
                        .out())
                .contains("61.5 ± 0.5 m");
        assertThat(book("trend", "distance").out())
                .contains("Farthest measured: 61.5")
                .contains("Too few sessions");
    }

    @Test
    void goesOutAndInAgainAndIsBackedUp() {
        book("add", "--metres", "61.5", "--day", "2026-05-03");
        book("drills", "hold the rod until the rig lands");
        assertThat(book("export", temp.resolve("all.zip").toString()).status()).isZero();
        String other = temp.resolve("other").toString();
        assertThat(run("book", "import", temp.resolve("all.zip").toString(), "--book", other)
                        .out())
                .contains("3 entries and 0 files");
        assertThat(run("book", "list", "--book", other).out()).contains("61.5 ± 1.0 m");
        assertThat(run("book", "drills", "--book", other).out()).contains("hold the rod");
        assertThat(book("backup").out()).contains("Copied to");
    }

    @Test
    void saysPlainlyWhatIsWrong() throws IOException {
        refused(run("book"), 2, "needs a word more");
        refused(book("list"), 3, "no practice book");
        refused(book("add", temp.resolve("none.mp4").toString()), 3, "none.mp4");
        assertThat(temp.resolve("book"))
                .as("nothing is begun for a clip that isn't there")
                .doesNotExist();
        refused(book("add", "--kit", "unknown"), 3, "no kit named unknown");
        refused(book("add", "--metres", "-3"), 2, "distance -3.0 m");
        refused(book("add", "--wraps", "3", "--metres", "9"), 2, "given once");
        refused(book("add", "--turns", "3"), 2, "--turn-length");
        refused(book("add", "--day", "3 May"), 2, "2026-05-03");
        refused(book("add", "--hit-clip", "maybe"), 2, "yes or no");
        refused(book("measure", "2026-05-03/9", "--metres", "60"), 3, "no cast 2026-05-03/9");
        refused(book("list", "colour=red"), 3, "colour=red");
        refused(book("trend", "elegance"), 3, "elegance");
        Files.writeString(Files.createDirectories(temp.resolve("text")).resolve("readme.txt"), "words");
        refused(book("add", temp.resolve("text").toString()), 2, "holds no clip");
    }

    @Test
    void aComparisonOfCastsInTheBookNeedsNoFilm() {
        for (int i = 0; i < 6; i++) {
            book(
                    "add",
                    "--metres",
                    "6" + i,
                    "--day",
                    "2026-05-03",
                    "--technique",
                    "old",
                    "--wind",
                    "1",
                    "--wind-from",
                    "0");
            book("add", "--metres", "7" + i, "--day", "2026-05-03", "--technique", "new");
        }
        Path out = temp.resolve("out");
        Ended ended = run(
                "compare",
                "book:technique=old",
                "book:technique=new",
                "--out",
                out.toString(),
                "--book",
                temp.resolve("book").toString());
        assertThat(ended.err()).isEmpty();
        assertThat(ended.out()).contains("More in B: distance +10");
        assertThat(out.resolve("comparison.html"))
                .content()
                .contains("The casts alternate")
                .contains("in the same wind");
        assertThat(out.resolve("side-by-side.mp4")).doesNotExist();
    }

    @Test
    void comparisonsThatMakeNoSenseAreRefused() throws IOException {
        book("add", "--metres", "60", "--day", "2026-05-03");
        book("add", "--metres", "60", "--day", "2026-06-03");
        book("add", "--metres", "60", "--day", "2026-06-03");
        String b = temp.resolve("book").toString();
        String out = temp.resolve("out").toString();
        refused(run("compare", "book:day=2026-05-03", "book:day=2026-06-03", "--book", b, "--out", out), 3, "one cast");
        refused(
                run("compare", "book:day=2026-06-03", "book:day=2026-06-03", "--book", b, "--out", out),
                3,
                "both sets");
        refused(run("compare", "book:day=1999-01-01", "book:day=2026-06-03", "--book", b, "--out", out), 3, "no cast");
        refused(run("compare", "nowhere", "book:day=2026-06-03", "--book", b, "--out", out), 2, "nowhere");
        Path empty = Files.createDirectory(temp.resolve("empty"));
        refused(
                run("compare", empty.toString(), empty.toString(), "--book", b, "--out", out),
                3,
                "neither analyses nor clips");
        refused(run("compare", "a", "b", "--paired", "maybe", "--out", out), 2, "auto, yes or no");
        refused(run("compare", "a"), 2, "--out");
        assertThat(temp.resolve("out")).doesNotExist();
    }
}
