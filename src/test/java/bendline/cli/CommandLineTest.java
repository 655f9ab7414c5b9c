package bendline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CommandLineTest {

    @TempDir
    private Path temp;

    private record Ended(int status, String out, String err) {}

    private static Ended run(String... args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int status = Main.run(new PrintWriter(out, true), new PrintWriter(err, true), args);
        return new Ended(status, out.toString(), err.toString());
    }

    private Ended analyse(Path clip, String... more) {
        String[] first = {
            "analyse", clip.toString(), "--out", temp.resolve("out").toString()
        };
        return run(Stream.concat(Stream.of(first), Stream.of(more)).toArray(String[]::new));
    }

    private void refused(Ended ended, int status, String says) throws IOException {
        assertThat(ended.err()).startsWith("bendline: ").contains(says).endsWith(".\n");
        assertThat(ended.err().lines()).as("one line, one sentence").hasSize(1);
        assertThat(ended.err()).doesNotContain("Exception", "\tat ");
        assertThat(ended.out()).isEmpty();
        assertThat(ended.status()).isEqualTo(status);
        assertThat(temp.resolve("out")).doesNotExist();
        assertThat(hidden(temp)).as("left-overs").isEmpty();
    }

    private static List<Path> hidden(Path folder) throws IOException {
        try (Stream<Path> entries = Files.list(folder)) {
            return entries.filter(p -> p.getFileName().toString().startsWith("."))
                    .toList();
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"--help", "analyse --help", "version --help", "version", "--version"})
    void answersQuestionsAboutItself(String line) {
        Ended ended = run(line.split(" "));
        assertThat(ended.status()).isZero();
        assertThat(ended.out()).contains("bendline");
        assertThat(ended.err()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "'' | No command",
                "frobnicate | frobnicate",
                "analyse | --out",
                "analyse a.mp4 --out x --rod-length | --rod-length",
                "analyse a.mp4 --out x --nonsense 3 | --nonsense"
            })
    void refusesACommandLineItCannotRead(String line, String says) throws IOException {
        refused(run(line.isEmpty() ? new String[0] : line.split(" ")), 2, says);
    }

    @ParameterizedTest
    @CsvSource({
        "--rod-length, 0, 'rod length 0.0 m is outside'",
        "--rod-length, 40, 'rod length 40.0 m is outside'",
        "--rod-length, NaN, rod length NaN m is outside",
        "--rod-length, long, '''long'''",
        "--free-length, -1, free length",
        "--drop, 0, drop",
        "--rig-mass, 0, rig mass",
        "--slow-motion, 0, slow-motion factor",
        "--casts-to, up, left or right",
        "--mark-tip, 12, for example 812",
        "--mark-tip, '12,30', --at",
        "--at, 1, --mark-grip"
    })
    void refusesASetupThatCannotBe(String option, String value, String says) throws IOException {
        refused(analyse(temp.resolve("clip.mp4"), option, value), 2, says);
    }

    @Test
    void refusesAFreeLengthLongerThanTheRod() throws IOException {
        refused(analyse(temp.resolve("clip.mp4"), "--rod-length", "3", "--free-length", "4"), 2, "longer than the rod");
    }

    @Test
    void refusesAMissingAnEmptyAndATextFile() throws IOException {
        Path empty = Files.createFile(temp.resolve("empty.mp4"));
        Path text = Files.writeString(temp.resolve("text.mp4"), "No film, only words.\n".repeat(50));
        refused(analyse(temp.resolve("none.mp4")), 3, "none.mp4");
        refused(analyse(empty), 3, "empty");
        refused(analyse(text), 3, "text.mp4");
        refused(analyse(temp), 3, "folder");
    }

    @Test
    void refusesAClipWithSoundOnly() throws IOException {
        refused(analyse(ClipFiles.soundOnly(temp.resolve("sound.mp4"))), 3, "no picture track");
    }

    @Test
    void refusesASingleFrame() throws IOException {
        refused(analyse(ClipFiles.moving(temp.resolve("one.mp4"), 1)), 3, "one.mp4");
    }

    @ParameterizedTest
    @CsvSource({
        "'400,100', 0.5, outside the picture",
        "'100,-3', 0.5, outside the picture",
        "'100,100', 9, the clip runs from 0 to"
    })
    void refusesAMarkThatIsNotInTheClip(String tip, String at, String says) throws IOException {
        Path clip = ClipFiles.moving(temp.resolve("clip.mp4"), 30);
        refused(analyse(clip, "--mark-tip", tip, "--at", at), 2, says);
    }

    @Test
    void refusesAnOutputFolderThatHoldsSomethingOrCannotBeMade() throws IOException {
        Path clip = temp.resolve("clip.mp4");
        Path full = Files.createDirectory(temp.resolve("full"));
        Path mine = Files.writeString(full.resolve("mine"), "mine");
        refused(run("analyse", clip.toString(), "--out", full.toString()), 2, "not empty");
        refused(run("analyse", clip.toString(), "--out", mine.toString()), 2, "not a folder");
        refused(run("analyse", clip.toString(), "--out", mine.resolve("x").toString()), 2, "not a folder");
        assertThat(mine).hasContent("mine");
    }

    @Test
    void refusesAnOutputFolderInAPlaceThatIsNotWritable() throws IOException {
        Path locked = Files.createDirectory(temp.resolve("locked"));
        org.junit.jupiter.api.Assumptions.assumeTrue(
                locked.toFile().setWritable(false) && !Files.isWritable(locked),
                "this user may write everywhere, so nothing can be locked");
        refused(run("analyse", "clip.mp4", "--out", locked.resolve("out").toString()), 2, "can't be written to");
    }

    @Test
    void aClipInWhichNobodyCastsGivesAReportThatSaysSo() throws IOException {
        Ended ended = analyse(ClipFiles.moving(temp.resolve("clip.mp4"), 40));
        assertThat(ended.err()).isEmpty();
        assertThat(ended.status()).isZero();
        Path out = temp.resolve("out");
        assertThat(ended.out())
                .startsWith("What this clip is good for:")
                .contains("No cast")
                .contains(out.resolve("report.html").toString());
        assertThat(out.resolve("analysis.json")).content().contains("\"casts\" : [ ]");
        assertThat(out.resolve("report.html")).content().contains("No cast found in this clip");
        assertThat(hidden(temp)).isEmpty();
    }

    @Test
    void quietPrintsNothing() throws IOException {
        Ended ended = analyse(ClipFiles.moving(temp.resolve("clip.mp4"), 40), "--quiet");
        assertThat(ended).isEqualTo(new Ended(0, "", ""));
    }
}
