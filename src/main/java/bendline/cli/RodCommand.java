package bendline.cli;

import bendline.rod.Blank;
import bendline.rod.BlankLibrary;
import bendline.rod.ModelBlank;
import bendline.rod.NaturalFrequency;
import bendline.rod.Stiffness;
import java.io.PrintWriter;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Lists the generic blanks; its own commands measure a rod. */
@Command(
        name = "rod",
        description = "List the generic blanks, or measure a rod of your own with 'rod calibrate'.",
        subcommands = CalibrateCommand.class,
        mixinStandardHelpOptions = true,
        versionProvider = VersionCommand.Provider.class,
        footer = {
            "",
            "The blanks are invented, none is a product. Take the nearest with analyse --blank NAME; its stiffness counts as"
                    + " ± 25 %."
        })
final class RodCommand implements Callable<Integer> {

    private static final double POUND_KG = 0.45359237;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        out.println("name            length  test curve        stiffness  mass   rings   for");
        for (ModelBlank b : BlankLibrary.all()) {
            Blank bending = b.bending();
            double kg = Stiffness.testCurveKg(bending);
            out.println(String.format(
                    Locale.ROOT,
                    "%-14s  %.2f m  %.2f kg %4.2f lb  %4.0f N·m²  %3.0f g  %.1f Hz  %s",
                    b.id(),
                    b.lengthM(),
                    kg,
                    kg / POUND_KG,
                    bending.stiffnessNm2(),
                    1000 * bending.massKg(),
                    new NaturalFrequency(bending, 0).hz(1),
                    b.use()));
        }
        out.println("Length of the whole rod; stiffness at the upper hand, mass and ring of the part above it.");
        return ExitStatus.DONE;
    }
}
