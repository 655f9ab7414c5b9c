package bendline.cli;

import bendline.flight.KitLimits;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Loaded weight. */
@Command(
        name = "weight",
        description = "Loaded weight, which is empty plus bait, and the leader that is usual for it.",
        mixinStandardHelpOptions = true,
        versionProvider = VersionCommand.Provider.class,
        sortOptions = false)
final class ReachWeightCommand implements Callable<Integer> {

    private static final double OUNCE_G = 28.349523;
    private static final double POUND_N = 4.4482216;
    private static final double NEWTON_PER_KG = 9.80665;

    @Spec
    private CommandSpec spec;

    @Option(
            names = "--empty-mass",
            paramLabel = "G",
            required = true,
            converter = Quantities.Grams.class,
            description = "Feeder without bait, grams: 5 to 500.")
    private double emptyG;

    @Option(
            names = "--bait",
            paramLabel = "G",
            defaultValue = "0",
            converter = Quantities.Grams.class,
            description = "Bait put into it, grams: 0 to 300.")
    private double baitG;

    @Override
    public Integer call() {
        check("The empty weight", emptyG, 5, 500);
        check("The bait", baitG, 0, 300);
        double loaded = emptyG + baitG;
        double leader = KitLimits.leaderFor(loaded / 1000);
        spec.commandLine()
                .getOut()
                .println(String.format(
                        Locale.ROOT,
                        "Loaded weight %.0f g (%.1f oz). A leader that is usual for it holds %.0f kg (%.0f lb): ten pounds to the ounce,"
                                + " common practice, no source.",
                        loaded,
                        loaded / OUNCE_G,
                        leader / NEWTON_PER_KG,
                        leader / POUND_N));
        return ExitStatus.DONE;
    }

    private void check(String what, double value, double min, double max) {
        @Nullable String complaint = Quantities.complaint(what, value, min, max, "g");
        if (complaint != null) {
            throw new ParameterException(spec.commandLine(), complaint);
        }
    }
}
