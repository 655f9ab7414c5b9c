package bendline.cli;

import bendline.book.Clip;
import bendline.book.Entry;
import bendline.book.PracticeBook;
import bendline.book.Selection;
import java.io.IOException;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Analyses clips of the book that this version has not seen yet. */
@Command(
        name = "analyse",
        description =
                "Analyse the clips that this version of the program has not analysed yet; results of others are kept.",
        mixinStandardHelpOptions = true,
        sortOptions = false)
final class BookAnalyseCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Parameters(arity = "0..1", paramLabel = "SELECTION", description = "Which casts, for example session=2026-05-03.")
    private @Nullable String which;

    @Option(names = "--all", description = "Also those that this version has analysed.")
    private boolean all;

    @Mixin
    private FaceOptions faces;

    @Mixin
    private BookOptions books;

    @Mixin
    private TalkOptions talk;

    @Override
    public Integer call() throws IOException {
        talk.apply();
        PracticeBook book = books.open();
        Selection selection = which == null ? Selection.ALL : Selection.parse(which);
        List<Clip> clips = book.entries(selection).stream()
                .filter(e ->
                        all || e.analysis() == null || !e.analysis().program().equals(BookAnalysis.program()))
                .map(Entry::clip)
                .filter(Objects::nonNull)
                .distinct()
                .toList();
        int failed = new BookAnalysis(book, talk, faces, spec.commandLine().getOut()).analyse(clips);
        if (!talk.quiet() && clips.isEmpty()) {
            spec.commandLine().getOut().println("Nothing new to analyse; --all does everything again.");
        }
        return failed == 0 ? ExitStatus.DONE : ExitStatus.UNUSABLE_INPUT;
    }
}
