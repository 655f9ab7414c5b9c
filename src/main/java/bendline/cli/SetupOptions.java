package bendline.cli;

import bendline.geometry.Point;
import bendline.scene.Conditions;
import bendline.scene.Mark;
import bendline.scene.Setup;
import bendline.scene.Setup.Side;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** What the user can tell about rod, rig and clip. */
final class SetupOptions {

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Option(names = "--rod-length", paramLabel = "M", description = "Whole rod, butt cap to tip, metres: 1 to 8.")
    private @Nullable Double rodLengthM;

    @Option(
            names = "--free-length",
            paramLabel = "M",
            description = "Upper hand to tip along the rod, metres: 0.5 to 8. Gives speeds their scale.")
    private @Nullable Double freeLengthM;

    @Option(names = "--drop", paramLabel = "M", description = "Tip to rig before the cast, metres: 0.05 to 8.")
    private @Nullable Double dropM;

    @Option(
            names = "--rig-mass",
            paramLabel = "G",
            converter = Quantities.Grams.class,
            description = "Rig as cast, bait included, grams: 1 to 1000.")
    private @Nullable Double rigMassG;

    @Option(
            names = "--casts-to",
            paramLabel = "left|right",
            converter = SideConverter.class,
            description = "Which way the cast goes in the picture, where the clip doesn't show it.")
    private @Nullable Side castsTo;

    @Option(
            names = "--slow-motion",
            paramLabel = "F",
            description = "How many times slower than life the clip plays, for example 8 for 240 frames a second"
                    + " stored to play at 30. Read from the clip where it is stored there.")
    private @Nullable Double slowMotionFactor;

    @Option(
            names = "--mark-grip",
            paramLabel = "X,Y",
            converter = PointConverter.class,
            description = "Where the upper hand holds the rod, pixels from the top left of the upright picture.")
    private @Nullable Point markGrip;

    @Option(
            names = "--mark-tip",
            paramLabel = "X,Y",
            converter = PointConverter.class,
            description = "Where the rod tip is on the same frame.")
    private @Nullable Point markTip;

    @Option(names = "--at", paramLabel = "SECONDS", description = "Clip time of the frame that was marked.")
    private @Nullable Double at;

    @Option(
            names = "--marks",
            paramLabel = "FILE",
            description = "Points on many frames, a line each: seconds,part,x,y with the part grip, tip or rig; x and y"
                    + " empty where it can't be seen. They are obeyed there and put right what lies around them. The part may also be"
                    + " the id of a moment in analysis.json, for example release, that is on that frame.")
    private @Nullable Path marksFile;

    /** What was given, checked as far as it can be without the clip. */
    Setup toSetup(Conditions conditions) {
        String complaint = Quantities.complaint("The rig mass", rigMassG, 1, 1000, "g");
        if (complaint != null) {
            throw wrongUse(complaint);
        }
        try {
            return new Setup(
                    rodLengthM,
                    freeLengthM,
                    dropM,
                    rigMassG == null ? null : rigMassG / 1000,
                    castsTo,
                    slowMotionFactor,
                    marks(),
                    conditions);
        } catch (IllegalArgumentException e) {
            throw wrongUse("The " + e.getMessage() + ".");
        }
    }

    private List<Mark> marks() {
        List<Mark> all = new ArrayList<>(one());
        if (marksFile != null) {
            try {
                all.addAll(MarksFile.read(marksFile));
            } catch (IllegalArgumentException e) {
                throw wrongUse(String.valueOf(e.getMessage()));
            }
        }
        return all;
    }

    private List<Mark> one() {
        boolean marked = markGrip != null || markTip != null;
        if (at == null && !marked) {
            return List.of();
        }
        if (at == null) {
            throw wrongUse("A mark needs the time of its frame; add --at SECONDS.");
        }
        if (!marked) {
            throw wrongUse("--at needs a mark; add --mark-grip X,Y, --mark-tip X,Y or both.");
        }
        return List.of(new Mark(at, markGrip, markTip));
    }

    private ParameterException wrongUse(String sentence) {
        return new ParameterException(spec.commandLine(), sentence);
    }
}
