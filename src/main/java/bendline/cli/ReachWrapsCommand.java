package bendline.cli;

import bendline.flight.Wraps;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Wraps round two sticks and metres. */
@Command(
        name = "wraps",
        description = "Set the line clip by wraps round two sticks: metres to wraps and back.",
        mixinStandardHelpOptions = true,
        versionProvider = VersionCommand.Provider.class,
        sortOptions = false)
final class ReachWrapsCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Option(
            names = "--spacing",
            paramLabel = "M",
            required = true,
            converter = Quantities.Metres.class,
            description =
                    "Between the sticks, metres: 0.5 to 10; 12ft may be written. A wrap is one way, stick to stick.")
    private double spacingM;

    @Option(
            names = "--metres",
            paramLabel = "M",
            converter = Quantities.Metres.class,
            description = "Metres to tell in wraps.")
    private @Nullable Double metres;

    @Option(names = "--wraps", paramLabel = "N", description = "Wraps to tell in metres.")
    private @Nullable Double wraps;

    @Override
    public Integer call() {
        if (metres == null && wraps == null) {
            throw wrongUse("There is nothing to tell; give --metres or --wraps.");
        }
        try {
            Wraps sticks = new Wraps(spacingM);
            if (metres != null) {
                Wraps.Count c = sticks.of(metres);
                say("%.1f m are %d wraps and %.2f m.", metres, c.whole(), c.restM());
            }
            if (wraps != null) {
                say("%s wraps are %.2f m.", Quantities.plain(wraps), sticks.metres(wraps));
            }
        } catch (IllegalArgumentException e) {
            throw wrongUse("The " + e.getMessage() + ".");
        }
        return ExitStatus.DONE;
    }

    private void say(String format, Object... values) {
        spec.commandLine().getOut().println(String.format(Locale.ROOT, format, values));
    }

    private ParameterException wrongUse(String sentence) {
        return new ParameterException(spec.commandLine(), sentence);
    }
}
