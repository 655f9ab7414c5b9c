package bendline.cli;

import bendline.book.ArchiveReader;
import bendline.book.BookCheck;
import bendline.book.PracticeBook;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The commands that look after the book. */
final class BookCare {

    private BookCare() {}

    /** Everything out. */
    @Command(
            name = "export",
            description = "Write everything, clips and analyses too, into one zip file that other programs can read.",
            mixinStandardHelpOptions = true)
    static final class Export implements Callable<Integer> {

        @Spec
        private CommandSpec spec;

        @Parameters(paramLabel = "FILE", description = "The archive to write.")
        private Path file;

        @Mixin
        private BookOptions books;

        @Override
        public Integer call() {
            books.open().export(file);
            spec.commandLine().getOut().println("Exported to " + file);
            return ExitStatus.DONE;
        }
    }

    /** Everything in. */
    @Command(
            name = "import",
            description = "Take in everything of an archive that the book has not got yet.",
            mixinStandardHelpOptions = true)
    static final class Import implements Callable<Integer> {

        @Spec
        private CommandSpec spec;

        @Parameters(paramLabel = "FILE", description = "An archive that book export wrote.")
        private Path file;

        @Mixin
        private BookOptions books;

        @Override
        public Integer call() {
            ArchiveReader.Taken taken = books.openOrBegin().importing(file);
            spec.commandLine()
                    .getOut()
                    .println("Taken in: " + taken.rows() + " entries and " + taken.files() + " files; " + taken.known()
                            + " entries were there already.");
            return ExitStatus.DONE;
        }
    }

    /** A copy. */
    @Command(
            name = "backup",
            description = "Copy everything written down, without clips, into the book's folder backups or into FILE.",
            mixinStandardHelpOptions = true)
    static final class Backup implements Callable<Integer> {

        @Spec
        private CommandSpec spec;

        @Parameters(arity = "0..1", paramLabel = "FILE", description = "Another place, on another disk for preference.")
        private @Nullable Path file;

        @Mixin
        private BookOptions books;

        @Override
        public Integer call() {
            spec.commandLine().getOut().println("Copied to " + books.open().backup(file));
            return ExitStatus.DONE;
        }
    }

    /** What is amiss. */
    @Command(
            name = "check",
            description = "Say whether everything that the book names is there.",
            mixinStandardHelpOptions = true)
    static final class Check implements Callable<Integer> {

        @Spec
        private CommandSpec spec;

        @Option(names = "--look-in", paramLabel = "FOLDER", description = "Look there for clips that are missing.")
        private @Nullable Path lookIn;

        @Mixin
        private BookOptions books;

        @Override
        public Integer call() {
            PracticeBook book = books.open();
            BookCheck check = book.check();
            PrintWriter out = spec.commandLine().getOut();
            if (lookIn != null) {
                out.println("Found again: " + check.lookIn(lookIn));
            }
            List<String> damage = check.damage();
            damage.forEach(d -> out.println("Damaged: " + d));
            check.missingClips().forEach(c -> out.println("Missing clip: " + c.name() + " (" + c.file() + ")"));
            check.missingAnalyses().forEach(a -> out.println("Missing analysis: " + a.folder()));
            check.leftOvers()
                    .forEach(p -> out.println("Left over from a program that was stopped, can be deleted: " + p));
            boolean sound = damage.isEmpty()
                    && check.missingClips().isEmpty()
                    && check.missingAnalyses().isEmpty();
            out.println(sound ? "Everything is there." : "Not everything is there.");
            return sound ? ExitStatus.DONE : ExitStatus.UNUSABLE_INPUT;
        }
    }
}
