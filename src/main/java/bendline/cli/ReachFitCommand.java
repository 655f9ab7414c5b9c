package bendline.cli;

import bendline.analysis.Launched;
import bendline.analysis.Reach;
import bendline.flight.DoubtfulShot;
import bendline.flight.LossFit;
import bendline.flight.LossFit.Fitted;
import bendline.flight.LossFit.Known;
import bendline.flight.Wind;
import bendline.scene.Conditions;
import bendline.scene.Setup;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The loss of a kit from casts of known distance. */
@Command(
        name = "fit",
        description =
                "Find the loss of your kit at spool, lip and rings from casts of which you know launch and distance. Do it once"
                        + " for a rod, reel and line, and give --line-loss from then on.",
        mixinStandardHelpOptions = true,
        versionProvider = VersionCommand.Provider.class,
        sortOptions = false)
final class ReachFitCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Option(
            names = "--cast",
            paramLabel = "M/S,DEG,M[,WIND]",
            required = true,
            description =
                    "One cast: launch speed, launch angle, distance in metres, and the wind in your face in m/s if it was"
                            + " not as --wind says; behind you it is negative. Give the option once for every cast.")
    private List<String> casts = List.of();

    @Option(
            names = "--rig-mass",
            paramLabel = "G",
            converter = Quantities.Grams.class,
            description = "Rig as cast, bait included, grams: 1 to 1000.")
    private @Nullable Double rigMassG;

    @Mixin
    private ConditionOptions conditions;

    @Override
    public Integer call() {
        check("The rig mass", rigMassG, 1, 1000, "g");
        Conditions told = conditions.toConditions();
        Setup setup = setup(told);
        if (setup.castMassKg() == null) {
            throw wrongUse("A flight needs the rig's weight; give --rig-mass, or --empty-mass and --bait.");
        }
        List<Known> known = new ArrayList<>();
        for (String cast : casts) {
            known.add(known(cast, setup));
        }
        Fitted fitted;
        try {
            fitted = LossFit.fit(known);
        } catch (IllegalArgumentException e) {
            throw wrongUse("The loss can't be fitted: " + e.getMessage() + ".");
        }
        spec.commandLine()
                .getOut()
                .println(String.format(
                        Locale.ROOT,
                        "The loss of this kit, %s. From now on give --line-loss %.2f,%.2f",
                        fitted.says(),
                        fitted.loss(),
                        fitted.plusMinus()));
        return ExitStatus.DONE;
    }

    private Known known(String cast, Setup setup) {
        double[] n = numbers(cast);
        check("The launch speed", n[0], 5, 75, "m/s");
        check("The launch angle", n[1], 0, 75, "degrees");
        check("The distance", n[2], 3, 300, "m");
        DoubtfulShot shot = Reach.throwing(setup, Launched.told(n[0], n[0] / 20, n[1], 3));
        if (n.length > 3) {
            check("The wind", Math.abs(n[3]), 0, 25, "m/s");
            Wind wind = shot.shot().wind();
            shot = shot.with(shot.shot().with(new Wind(-n[3], 0, wind.profile())));
        }
        return new Known(shot, LossFit.Kind.DISTANCE, n[2], 0.02 * n[2]);
    }

    private double[] numbers(String cast) {
        String[] parts = cast.split(",", -1);
        double[] out = new double[parts.length];
        try {
            for (int i = 0; i < parts.length; i++) {
                out[i] = Double.parseDouble(parts[i].strip());
            }
        } catch (NumberFormatException e) {
            out = new double[0];
        }
        if (out.length < 3 || out.length > 4) {
            throw wrongUse(
                    "The cast \"" + cast
                            + "\" is not launch speed, angle and distance; write for example --cast 48,38,96 or --cast 48,38,96,4.");
        }
        return out;
    }

    private Setup setup(Conditions told) {
        try {
            return new Setup(null, null, null, rigMassG == null ? null : rigMassG / 1000, null, null, List.of(), told);
        } catch (IllegalArgumentException e) {
            throw wrongUse("The " + e.getMessage() + ".");
        }
    }

    private void check(String what, @Nullable Double value, double min, double max, String unit) {
        String complaint = Quantities.complaint(what, value, min, max, unit);
        if (complaint != null) {
            throw wrongUse(complaint);
        }
    }

    private ParameterException wrongUse(String sentence) {
        return new ParameterException(spec.commandLine(), sentence);
    }
}
