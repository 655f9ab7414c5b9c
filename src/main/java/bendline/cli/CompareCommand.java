package bendline.cli;

import bendline.compare.Comparer;
import bendline.compare.Comparison;
import bendline.compare.Difference;
import bendline.compare.Family;
import bendline.compare.StillAir;
import bendline.report.CastFolder;
import bendline.report.ComparisonFolder;
import bendline.report.ComparisonText;
import bendline.report.Reader;
import bendline.scene.Conditions;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Two sets of casts in, what changed out. */
@Command(
        name = "compare",
        description = "Hold casts before a change against casts after it.",
        mixinStandardHelpOptions = true,
        versionProvider = VersionCommand.Provider.class,
        sortOptions = false,
        footer = {
            "",
            "A set is a folder that analyse wrote, a folder of such folders, a clip, a folder of clips, several of these"
                    + " with commas between them, or a selection of the practice book: book:session=2026-05-03,technique=slow"
                    + " back (also kit, person, day, from, to).",
            "Writes comparison.html, comparison.json, side-by-side.mp4, frames/ and charts/ into DIR, which must not exist yet"
                    + " or be empty.",
            "Exit status: 0 done (also where nothing could be told), 2 wrong use, 3 a set can't be used, 4 the program failed."
        })
final class CompareCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Parameters(index = "0", paramLabel = "A", description = "Casts before.")
    private String a;

    @Parameters(index = "1", paramLabel = "B", description = "Casts after.")
    private String b;

    @Option(names = "--out", paramLabel = "DIR", required = true, description = "Folder to write.")
    private Path out;

    @Option(
            names = "--measures",
            split = ",",
            paramLabel = "ID",
            description =
                    "The measures to give a verdict on, chosen before looking; the fewer, the sooner a change shows. Usual: "
                            + "distance, tempo, settleSeconds, compression, halfLoad, buttAngleAtReleaseDeg, fallAt250msDeg, launchSpeed.")
    private @Nullable List<String> measures;

    @Option(
            names = "--paired",
            paramLabel = "auto|yes|no",
            description =
                    "Hold each cast against its neighbour: where casts alternate in the book (auto, the default), first"
                            + " with first and so on (yes), never (no).")
    private String paired = "auto";

    @Option(
            names = "--analyses",
            paramLabel = "DIR",
            description =
                    "Where analyses of clips are left, and found again by the next comparison; else DIR-analyses.")
    private @Nullable Path analyses;

    @Mixin
    private FaceOptions faces;

    @Mixin
    private SetupOptions setup;

    @Mixin
    private ReaderOptions whom;

    @Mixin
    private BookOptions books;

    @Mixin
    private TalkOptions talk;

    @Override
    public Integer call() throws IOException {
        Comparer comparer = comparer();
        Reader forWhom = whom.toReader();
        CastFolder.check(out);
        talk.apply();
        Path beside = out.resolveSibling(out.getFileName() + "-analyses");
        SetReader reader = new SetReader(
                        spec, books, analyses == null ? beside : analyses, setup.toSetup(Conditions.NONE), talk)
                .veiling(faces);
        GivenSet before = reader.read(a);
        GivenSet after = reader.read(b);
        Comparison comparison = comparer.compare(before.set(), after.set());
        try (Bars bars = talk.bars()) {
            ComparisonFolder.Films films = new ComparisonFolder.Films(before.read(), after.read());
            new ComparisonFolder(film -> faces.of(film, bars)).write(comparison, films, out, forWhom, bars);
        }
        if (!talk.quiet()) {
            print(comparison, spec.commandLine().getOut());
        }
        return ExitStatus.DONE;
    }

    private Comparer comparer() {
        Comparer.Pairing pairing = switch (paired) {
            case "auto" -> Comparer.Pairing.WHERE_THEY_ALTERNATE;
            case "yes" -> Comparer.Pairing.IN_ORDER;
            case "no" -> Comparer.Pairing.NEVER;
            default ->
                throw new ParameterException(
                        spec.commandLine(), "--paired is auto, yes or no, not \"" + paired + "\".");
        };
        return new Comparer(measures == null ? Family.USUAL : measures, pairing, StillAir.FLOWN);
    }

    private void print(Comparison c, PrintWriter to) {
        ComparisonText.besides(c).forEach(to::println);
        for (Difference d : c.family()) {
            to.println(ComparisonText.line(d));
        }
        to.println("Comparison: " + out.resolve("comparison.html"));
    }
}
