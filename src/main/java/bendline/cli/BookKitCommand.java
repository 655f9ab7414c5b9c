package bendline.cli;

import bendline.book.Kit;
import bendline.book.PracticeBook;
import java.io.PrintWriter;
import java.util.UUID;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Kit: listed, or written down under a name. */
@Command(
        name = "kit",
        description = "List the kit, or write some down under NAME.",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        footer = {"", "Kit is never changed afterwards, so that old casts stay true: another rig is other kit."})
final class BookKitCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Parameters(arity = "0..1", paramLabel = "NAME", description = "What to call it.")
    private @Nullable String name;

    @Option(names = "--rod", paramLabel = "TEXT")
    private @Nullable String rod;

    @Option(names = "--rod-length", paramLabel = "M", description = "Butt cap to tip, metres.")
    private @Nullable Double rodLengthM;

    @Option(names = "--free-length", paramLabel = "M", description = "Upper hand to tip, metres.")
    private @Nullable Double freeLengthM;

    @Option(names = "--drop", paramLabel = "M", description = "Tip to rig before the cast, metres.")
    private @Nullable Double dropM;

    @Option(names = "--reel", paramLabel = "TEXT")
    private @Nullable String reel;

    @Option(
            names = "--turn-length",
            paramLabel = "M",
            description = "Line that a turn of the handle brings in, metres.")
    private @Nullable Double turnM;

    @Option(names = "--line", paramLabel = "TEXT")
    private @Nullable String line;

    @Option(names = "--leader", paramLabel = "TEXT")
    private @Nullable String leader;

    @Option(names = "--rig", paramLabel = "TEXT")
    private @Nullable String rig;

    @Option(names = "--rig-empty", paramLabel = "G", description = "Weight without bait, grams.")
    private @Nullable Double rigEmptyG;

    @Option(names = "--rig-loaded", paramLabel = "G", description = "Weight as cast, grams.")
    private @Nullable Double rigLoadedG;

    @Option(names = "--stem", paramLabel = "TEXT")
    private @Nullable String stem;

    @Option(names = "--note", paramLabel = "TEXT")
    private String note = "";

    @Mixin
    private BookOptions books;

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        if (name == null) {
            books.open().kit().forEach(k -> out.println(words(k)));
            return ExitStatus.DONE;
        }
        try {
            // The same limits as an analysis has, told now rather than when the first clip is analysed.
            new bendline.scene.Setup(
                    rodLengthM,
                    freeLengthM,
                    dropM,
                    rigLoadedG == null ? null : rigLoadedG / 1000,
                    null,
                    null,
                    java.util.List.of());
        } catch (IllegalArgumentException e) {
            throw new picocli.CommandLine.ParameterException(spec.commandLine(), "The " + e.getMessage() + ".");
        }
        PracticeBook book = books.openOrBegin();
        Kit kit = book.kit(new Kit(
                UUID.randomUUID().toString(),
                name,
                rod,
                rodLengthM,
                freeLengthM,
                dropM,
                reel,
                line,
                leader,
                rig,
                rigEmptyG,
                rigLoadedG,
                stem,
                turnM,
                note));
        out.println(words(kit));
        return ExitStatus.DONE;
    }

    private static String words(Kit k) {
        StringBuilder out = new StringBuilder(k.name());
        add(out, "rod", k.rod());
        add(out, "rod length m", k.rodLengthM());
        add(out, "free length m", k.freeLengthM());
        add(out, "drop m", k.dropM());
        add(out, "reel", k.reel());
        add(out, "turn m", k.turnM());
        add(out, "line", k.line());
        add(out, "leader", k.leader());
        add(out, "rig", k.rig());
        add(out, "empty g", k.rigEmptyG());
        add(out, "loaded g", k.rigLoadedG());
        add(out, "stem", k.stem());
        return out.toString();
    }

    private static void add(StringBuilder out, String what, @Nullable Object value) {
        if (value != null) {
            out.append("; ").append(what).append(' ').append(value);
        }
    }
}
