package bendline.book;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Programs that really die in the midst of writing, and a disk that really refuses. */
class CrashTest {

    private static final int KILLS = 4;

    @TempDir
    private Path temp;

    /** Adds casts with clips until it is killed; says the name of each only after the book has taken it. */
    static final class Writer {

        private Writer() {}

        public static void main(String[] args) throws IOException {
            PracticeBook book = PracticeBook.openOrBegin(Path.of(args[0]));
            Session s = book.session(BookTest.day("2026-05-03"));
            System.out.println("begun");
            byte[] film = new byte[300_000];
            for (int i = 0; ; i++) {
                new Random(System.nanoTime()).nextBytes(film);
                Path clip = Files.write(Path.of(args[1]), film);
                Throw added = book.add(BookTest.cast(s, book.keep(clip)));
                System.out.println(added.id());
                System.out.flush();
            }
        }
    }

    /** Takes one large clip into a book. */
    static final class Keeper {

        private Keeper() {}

        public static void main(String[] args) {
            try {
                PracticeBook.open(Path.of(args[0])).keep(Path.of(args[1]));
                System.out.println("kept");
            } catch (BookException e) {
                System.out.println(e.getMessage());
            }
        }
    }

    private static List<String> java(Class<?> program, Path... args) {
        List<String> line = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xshare:auto",
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                program.getName()));
        for (Path p : args) {
            line.add(p.toString());
        }
        return line;
    }

    @Test
    void whatTheBookHasTakenIsThereAfterTheProgramWasKilledAtAnyMoment() throws Exception {
        Path folder = temp.resolve("book");
        List<String> taken = new ArrayList<>();
        Random random = new Random(9);
        for (int i = 0; i < KILLS; i++) {
            Process p = new ProcessBuilder(java(Writer.class, folder, temp.resolve("film.mp4")))
                    .redirectError(ProcessBuilder.Redirect.DISCARD)
                    .start();
            int wanted = 2 + random.nextInt(4);
            try (BufferedReader says =
                    new BufferedReader(new InputStreamReader(p.getInputStream(), StandardCharsets.UTF_8))) {
                assertThat(says.readLine()).isEqualTo("begun");
                for (int k = 0; k < wanted; k++) {
                    taken.add(says.readLine());
                }
                Thread.sleep(random.nextInt(20));
                // Through the handle, which leaves what was said before the end to be read.
                p.toHandle().destroyForcibly();
                for (String line = says.readLine(); line != null; line = says.readLine()) {
                    if (line.length() == 36) {
                        taken.add(line);
                    }
                }
            }
            PracticeBook book = PracticeBook.open(folder);
            assertThat(book.check().damage()).isEmpty();
            assertThat(book.check().missingClips()).isEmpty();
            for (Clip clip : book.clips()) {
                assertThat(Whole.sha256(book.file(clip.file()))).isEqualTo(clip.sha256());
            }
            assertThat(book.entries(Selection.ALL))
                    .extracting(e -> e.cast().id())
                    .containsAll(taken);
            assertThat(book.entries(Selection.ALL))
                    .allSatisfy(e -> assertThat(e.clip()).isNotNull());
        }
    }

    @Test
    void aClipThatDoesNotFitOnTheDiskLeavesNothingBehind() throws Exception {
        assumeTrue(Files.isExecutable(Path.of("/bin/bash")), "the limit is set by a Unix shell");
        Path folder = temp.resolve("book");
        PracticeBook book = PracticeBook.openOrBegin(folder);
        book.add(BookTest.cast(book.session(BookTest.day("2026-05-03")), null));
        Path film = Files.write(temp.resolve("long.mp4"), new byte[4_000_000]);
        // The system lets no file grow over 2 MB, in blocks of 1 KiB: writing fails half way, as on a full disk.
        List<String> limited = new ArrayList<>(List.of("/bin/bash", "-c", "ulimit -f 2000; exec \"$@\"", "limited"));
        limited.addAll(java(Keeper.class, folder, film));
        Process p = new ProcessBuilder(limited).redirectErrorStream(true).start();
        String says = new String(p.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        p.waitFor();
        assertThat(says).contains("could not be taken into the book").contains("nothing was written down");
        assertThat(book.clips()).isEmpty();
        assertThat(book.check().leftOvers()).isEmpty();
        assertThat(book.entries(Selection.ALL)).hasSize(1);
    }

    @Test
    void aDatabaseThatMayNotGrowRefusesAndStaysWhole() {
        PracticeBook book = PracticeBook.openOrBegin(temp.resolve("book"));
        Session s = book.session(BookTest.day("2026-05-03"));
        // SQLite's own limit on its size gives the same refusal as a full disk.
        org.assertj.core.api.Assertions.assertThatThrownBy(() -> book.write(h -> {
                    int pages = h.createQuery("PRAGMA page_count")
                            .mapTo(Integer.class)
                            .one();
                    h.createQuery("PRAGMA max_page_count = " + pages)
                            .mapTo(Integer.class)
                            .one();
                    for (int i = 0; i < 400; i++) {
                        Rows.insert(h, "drill", new Drill("d" + i, null, "x".repeat(500), "2026-05-03", null));
                    }
                    return 0;
                }))
                .isInstanceOf(BookException.class)
                .hasMessageContaining("disk is full")
                .hasMessageContaining("nothing of it was changed");
        assertThat(book.drills()).isEmpty();
        assertThat(book.check().damage()).isEmpty();
        assertThat(book.add(BookTest.cast(s, null)).number()).isEqualTo(1);
    }
}
