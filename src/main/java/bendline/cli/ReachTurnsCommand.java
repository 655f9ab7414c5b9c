package bendline.cli;

import bendline.flight.ReelTurns;
import bendline.flight.Spool;
import java.io.PrintWriter;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Turns of the reel and metres. */
@Command(
        name = "turns",
        description = "Turn handle turns into metres and back, for a reel counted once over a known distance.",
        mixinStandardHelpOptions = true,
        versionProvider = VersionCommand.Provider.class,
        sortOptions = false)
final class ReachTurnsCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Option(
            names = "--counted",
            paramLabel = "M,TURNS",
            required = true,
            description = "The distance you know and the turns it took to wind it in, for example 100,112.")
    private String counted = "";

    @Option(names = "--turns", paramLabel = "N", description = "Turns to tell in metres.")
    private @Nullable Double turns;

    @Option(
            names = "--metres",
            paramLabel = "M",
            converter = Quantities.Metres.class,
            description = "Metres to tell in turns.")
    private @Nullable Double metres;

    @Option(
            names = "--spool",
            paramLabel = "DxL",
            description =
                    "Full spool, diameter of the winding by its length in millimetres, for example 65x30: then turns near"
                            + " its core count for less.")
    private @Nullable String spool;

    @Option(
            names = "--line",
            paramLabel = "MM",
            converter = Quantities.Millimetres.class,
            description = "Diameter of the line, millimetres; needed with --spool.")
    private @Nullable Double lineMm;

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        try {
            ReelTurns reel = reel();
            out.println(words(
                    "A turn winds %.3f m on the full spool%s.",
                    reel.recoveryM(0),
                    spool == null ? "" : words(", %.3f m with 100 m of line out", reel.recoveryM(100))));
            if (turns != null) {
                out.println(words("%.0f turns are %.1f m.", turns, reel.metresFor(turns)));
            }
            if (metres != null) {
                out.println(words("%.1f m are %.1f turns.", metres, reel.turnsFor(metres)));
            }
            if (turns == null && metres == null) {
                for (int n = 10; n <= 150; n += 10) {
                    out.println(words("%3d turns  %6.1f m", n, reel.metresFor(n)));
                }
            }
        } catch (IllegalArgumentException e) {
            throw wrongUse("The " + e.getMessage() + ".");
        }
        return ExitStatus.DONE;
    }

    private ReelTurns reel() {
        double[] c = two(counted, ",", "--counted 100,112");
        if (spool == null) {
            return ReelTurns.counted(c[0], c[1]);
        }
        if (lineMm == null) {
            throw wrongUse("A spool's emptying needs the line's diameter; add --line, for example --line 0.22.");
        }
        double[] s = two(spool, "x", "--spool 65x30");
        return ReelTurns.counted(
                c[0], c[1], new Spool(s[0] / 1000, s[1] / 1000, Spool.USUAL.underLipM()), lineMm / 1000);
    }

    private double[] two(String text, String between, String example) {
        String[] parts = text.split(between, -1);
        try {
            if (parts.length == 2) {
                return new double[] {Double.parseDouble(parts[0].strip()), Double.parseDouble(parts[1].strip())};
            }
        } catch (NumberFormatException e) {
            throw wrongUse("\"" + text + "\" is not two numbers; write for example " + example + ".", e);
        }
        throw wrongUse("\"" + text + "\" is not two numbers; write for example " + example + ".");
    }

    private static String words(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }

    private ParameterException wrongUse(String sentence) {
        return new ParameterException(spec.commandLine(), sentence);
    }

    private ParameterException wrongUse(String sentence, Throwable cause) {
        return new ParameterException(spec.commandLine(), sentence, cause);
    }
}
