package bendline.cli;

import bendline.analysis.Launched;
import bendline.analysis.Reach;
import bendline.flight.Outlook;
import bendline.scene.Conditions;
import bendline.scene.Setup;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** How far a throw goes and where more metres are, without a clip. */
@Command(
        name = "reach",
        description =
                "Work out how far a throw goes, what it would be in still air, and what would take it farther; no clip is"
                        + " needed.",
        mixinStandardHelpOptions = true,
        versionProvider = VersionCommand.Provider.class,
        sortOptions = false,
        subcommands = {
            ReachFitCommand.class,
            ReachTurnsCommand.class,
            ReachWrapsCommand.class,
            ReachWeightCommand.class,
            ReachCheckCommand.class
        },
        footer = {
            "",
            "Give the launch speed and angle (from a report of yours, or a guess), or the distance with --measured, and what you"
                    + " know of rig, line and wind. What you leave out is assumed, said to be, and widens the answer.",
            "Exit status: 0 done, 2 wrong use."
        })
final class ReachCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Option(
            names = "--speed",
            paramLabel = "M/S",
            converter = Quantities.Speed.class,
            description = "Launch speed, metres a second: 5 to 75; 180km/h may be written.")
    private @Nullable Double speedMps;

    @Option(
            names = "--speed-plus-minus",
            paramLabel = "M/S",
            description = "How well that is known, 68 %%; a twentieth of it where it isn't told.")
    private @Nullable Double speedPlusMinus;

    @Option(names = "--angle", paramLabel = "DEG", description = "Launch angle above level, degrees: 0 to 75.")
    private @Nullable Double angleDeg;

    @Option(
            names = "--angle-plus-minus",
            paramLabel = "DEG",
            description = "How well that is known, 68 %%; 3 where it isn't told.")
    private @Nullable Double anglePlusMinus;

    @Option(names = "--rod-length", paramLabel = "M", description = "Whole rod, butt cap to tip, metres: 1 to 8.")
    private @Nullable Double rodLengthM;

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
        check("The launch speed", speedMps, 5, 75, "m/s");
        check("The launch speed's uncertainty", speedPlusMinus, 0, 20, "m/s");
        check("The launch angle", angleDeg, 0, 75, "degrees");
        check("The launch angle's uncertainty", anglePlusMinus, 0, 30, "degrees");
        check("The rig mass", rigMassG, 1, 1000, "g");
        Setup setup = setup(conditions.toConditions());
        if (setup.castMassKg() == null) {
            throw wrongUse("A flight needs the rig's weight; give --rig-mass, or --empty-mass and --bait.");
        }
        if (speedMps == null && setup.conditions().outcome().measuredM() == null) {
            throw wrongUse("A flight needs the launch speed or the distance; give --speed or --measured.");
        }
        Outlook outlook = Reach.of(setup, launched());
        new ReachText(spec.commandLine().getOut()).print(outlook);
        return ExitStatus.DONE;
    }

    private Launched launched() {
        double speedSd = speedPlusMinus != null ? speedPlusMinus : speedMps == null ? Double.NaN : speedMps / 20;
        double angleSd = anglePlusMinus != null ? anglePlusMinus : 3;
        return Launched.told(speedMps, speedSd, angleDeg, angleDeg == null ? Double.NaN : angleSd);
    }

    private Setup setup(Conditions told) {
        try {
            return new Setup(
                    rodLengthM, null, null, rigMassG == null ? null : rigMassG / 1000, null, null, List.of(), told);
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
