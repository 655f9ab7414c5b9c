package bendline.cli;

import bendline.rod.BendException;
import bendline.rod.Blank;
import bendline.rod.BlankLibrary;
import bendline.rod.ModelBlank;
import bendline.scene.BlankFacts;
import bendline.scene.Setup;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** What the user can tell about how stiff the rod is. */
final class BlankOptions {

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Option(
            names = "--test-curve",
            paramLabel = "WEIGHT",
            converter = Weight.Converter.class,
            description =
                    "Weight that pulls the tip square to the butt, with its unit: 2.75lb, 1.25kg. With the rod's length"
                            + " it turns the bend into force and energy.")
    private @Nullable Weight testCurve;

    @Option(
            names = "--blank",
            paramLabel = "NAME|FILE",
            description = "A generic blank like yours (the command rod lists them), or the file of your own that 'rod"
                    + " calibrate' wrote.")
    private @Nullable String blank;

    /** The setup with what was told of the blank; the casting weight, which is a limit too, is told among the conditions. */
    Setup addedTo(Setup setup) {
        Double castingKg = setup.conditions().tackle().castingKg();
        if (testCurve == null && castingKg == null && blank == null) {
            return setup;
        }
        try {
            boolean file = blank != null && (blank.endsWith(".properties") || blank.contains("/"));
            return setup.withBlank(new BlankFacts(
                    testCurve == null ? null : testCurve.kg(),
                    castingKg,
                    blank == null || file ? null : BlankLibrary.named(blank).id(),
                    file ? measured(ModelBlank.read(Path.of(blank))) : null));
        } catch (BendException e) {
            throw new ParameterException(spec.commandLine(), e.getMessage());
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), "The " + e.getMessage() + ".");
        }
    }

    private static BlankFacts.Measured measured(ModelBlank model) {
        Blank b = model.bending();
        return new BlankFacts.Measured(
                b.stiffnessNm2(), b.stiffnessRelativeSd(), b.taper().stiffnessAt(1));
    }
}
