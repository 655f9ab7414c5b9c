package bendline.cli;

import bendline.footage.ClipInfo;
import bendline.footage.Footage;
import bendline.footage.FootageException;
import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.rod.BendException;
import bendline.rod.Blank;
import bendline.rod.BlankLibrary;
import bendline.rod.ModelBlank;
import bendline.rod.Stiffness;
import bendline.rod.StillBend;
import bendline.rod.TracedArc;
import bendline.scene.Mark;
import bendline.scene.Setup;
import bendline.trace.FrameTrace;
import bendline.trace.RodTracker;
import bendline.trace.Trace;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Stiffness of a rod from a picture of it under a known weight. */
@Command(
        name = "calibrate",
        description = {
            "Measure how stiff a rod is: hold it still, hang a known weight on the tip, take one picture square from the side.",
            "Give the points you read off the picture, hand to tip, or a clip in which the rod is found by itself.",
            ""
        },
        mixinStandardHelpOptions = true,
        versionProvider = VersionCommand.Provider.class,
        sortOptions = false,
        footer = {
            "",
            "Hang water in a bottle rather than lead, with nobody under the tip, and stop well before the rod complains; a weight"
                    + " a third of the test curve is plenty. What is measured is the part above the upper hand.",
            "Exit status: 0 done, 2 wrong use, 3 the picture can't tell, 4 the program failed."
        })
final class CalibrateCommand implements Callable<Integer> {

    /** How well people point at a rod on a screen, and how well it is followed, pixels. */
    private static final double CLICK_SD_PX = 1.5;

    private static final double TRACED_SD_PX = 0.8;
    private static final int TRACED_POINTS = 17;

    /** A test curve alone is as good. */
    private static final double GOOD_SD = 0.3;

    /** What is hung on a rod to bend it, kilograms. */
    private static final double LEAST_KG = 0.02;

    private static final double MOST_KG = 5;

    @Spec
    private CommandSpec spec;

    @Parameters(
            paramLabel = "CLIP",
            arity = "0..1",
            description =
                    "A clip in which the rod comes up under the weight, or is marked in the frame to read; left out where"
                            + " points are given.")
    private @Nullable Path clip;

    @Option(
            names = "--weight",
            paramLabel = "WEIGHT",
            required = true,
            converter = Weight.Converter.class,
            description = "What hangs on the tip, with its unit: 400g, 1lb.")
    private Weight weight;

    @Option(
            names = "--free-length",
            paramLabel = "M",
            required = true,
            description = "Upper hand to tip along the rod, metres: 1 to 8.")
    private double freeLengthM;

    @Option(
            names = "--handle",
            paramLabel = "M",
            defaultValue = "0.65",
            description = "Butt cap to upper hand, metres; only for the file. Default: ${DEFAULT-VALUE}.")
    private double handleM;

    @Option(
            names = "--point",
            paramLabel = "X,Y",
            converter = PointConverter.class,
            description =
                    "A point of the rod, pixels of the picture from its top left; at least five, from the upper hand to the"
                            + " tip in order.")
    private List<Point> points = List.of();

    @Option(names = "--at", paramLabel = "SECONDS", description = "Clip time of the frame to read.")
    private @Nullable Double at;

    @Option(
            names = "--mark-grip",
            paramLabel = "X,Y",
            converter = PointConverter.class,
            description = "The upper hand in that frame, where the rod isn't found by itself.")
    private @Nullable Point markGrip;

    @Option(
            names = "--mark-tip",
            paramLabel = "X,Y",
            converter = PointConverter.class,
            description = "The tip in that frame.")
    private @Nullable Point markTip;

    @Option(names = "--name", paramLabel = "TEXT", defaultValue = "my rod", description = "What to call it.")
    private String name;

    @Option(
            names = "--save",
            paramLabel = "FILE",
            description = "File to write, for analyse --blank; must not exist yet.")
    private @Nullable Path save;

    @Mixin
    private TalkOptions talk;

    @Override
    public Integer call() throws IOException {
        if (!(freeLengthM >= 1 && freeLengthM <= 8) || !(handleM >= 0 && handleM <= 1.5)) {
            throw wrongUse("The free length must be 1 to 8 m and the handle 0 to 1.5 m.");
        }
        String heavy = Quantities.complaint("The weight", weight.kg(), LEAST_KG, MOST_KG, "kg");
        if (heavy != null) {
            throw wrongUse(heavy);
        }
        if (save != null && Files.exists(save)) {
            throw wrongUse("The file " + save + " is already there; name another with --save or remove it.");
        }
        boolean clicked = !points.isEmpty();
        if (clicked == (clip != null)) {
            throw wrongUse("Give either a clip with --at SECONDS, or points with --point X,Y.");
        }
        List<Point> px = clicked ? points : traced();
        try {
            StillBend.Calibrated found = read(px, clicked ? CLICK_SD_PX : TRACED_SD_PX);
            print(found, px.size());
            if (save != null) {
                write(found.blank(), save);
            }
        } catch (BendException e) {
            throw new FootageException(sentence(e.getMessage()));
        } catch (IllegalArgumentException e) {
            throw wrongUse(sentence(e.getMessage()));
        }
        return ExitStatus.DONE;
    }

    private static String sentence(String text) {
        return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1) + ".";
    }

    /** The rod is as long along its points as it is told to be: that gives the scale. */
    private StillBend.Calibrated read(List<Point> px, double sdPx) {
        if (px.size() < TracedArc.FEWEST) {
            throw new BendException("only " + px.size() + " points were given; give at least " + TracedArc.FEWEST
                    + ", from the hand to the tip, in order");
        }
        double lengthPx = new Polyline(px).length();
        if (!(lengthPx > 40 * sdPx)) {
            throw new BendException("the points span only " + Math.round(lengthPx) + " pixels; take a larger picture");
        }
        double metres = freeLengthM / lengthPx;
        List<Point> plane =
                px.stream().map(p -> new Point(p.x() * metres, -p.y() * metres)).toList();
        Blank like = BlankLibrary.like(freeLengthM, Double.NaN).bending().stretchedTo(freeLengthM);
        Point pull = new Point(0, -weight.kg() * Stiffness.GRAVITY);
        return new StillBend(like, pull).read(TracedArc.through(plane, sdPx * metres));
    }

    private List<Point> traced() {
        if (at == null) {
            throw wrongUse("A clip needs the time of the frame to read; add --at SECONDS.");
        }
        Footage footage = Footage.open(clip);
        ClipInfo info = footage.survey(f -> {});
        List<Mark> marks = markGrip == null && markTip == null ? List.of() : List.of(new Mark(at, markGrip, markTip));
        Setup setup = new Setup(null, freeLengthM, null, null, null, null, marks);
        Trace trace = RodTracker.follow(footage, info, setup, f -> {});
        FrameTrace frame = trace.frames().stream()
                .min(Comparator.comparingDouble(f -> Math.abs(f.seconds() - at)))
                .orElseThrow(() -> new FootageException("The clip " + clip + " holds no frame."));
        if (frame.blank() == null || !frame.tip().seen()) {
            throw new FootageException("The rod was not found in the frame at " + at
                    + " s: one that is held still all the time is not told from what stands behind it; mark hand and tip with"
                    + " --mark-grip X,Y and --mark-tip X,Y, or give points with --point.");
        }
        return frame.blank().resampled(TRACED_POINTS).points();
    }

    /** What a picture of a rod that is hardly bent is worth: said, with what to do. */
    private static String advice(double relativeSd) {
        return relativeSd > GOOD_SD
                ? String.format(
                        Locale.ROOT,
                        "%nThe rod is bent too little for more than ± %.0f %%: hold it level and hang more on it, if it may bear that.",
                        100 * relativeSd)
                : "";
    }

    private void print(StillBend.Calibrated found, int count) {
        Blank b = found.blank();
        double kg = Stiffness.testCurveKg(b);
        double sd = b.stiffnessRelativeSd();
        spec.commandLine()
                .getOut()
                .println(String.format(
                                Locale.ROOT,
                                "Stiffness at the hand %.0f ± %.0f N·m², at the tip %.1f %% of that, from %d points under %.3f kg, which turned the"
                                        + " tip by %.0f°.%nThat is a test curve of about %.2f ± %.2f kg (%.2f lb).%nThe points lie within %.1f of"
                                        + " their expected error of that blank.",
                                b.stiffnessNm2(),
                                sd * b.stiffnessNm2(),
                                100 * b.taper().stiffnessAt(1),
                                count,
                                weight.kg(),
                                found.tipTurnDeg(),
                                kg,
                                sd * kg,
                                kg / 0.45359237,
                                found.misfitSd())
                        + advice(sd));
    }

    private void write(Blank b, Path file) throws IOException {
        ModelBlank model =
                new ModelBlank("mine", name, freeLengthM + handleM, handleM, b, "measured under a known weight");
        Path beside = file.resolveSibling("." + file.getFileName() + ".part");
        Files.writeString(beside, model.text("Measured by: rod calibrate, weight " + weight.kg() + " kg"));
        Files.move(beside, file, StandardCopyOption.ATOMIC_MOVE);
        spec.commandLine().getOut().println("Written to " + file + "; use it with analyse --blank " + file + ".");
    }

    private ParameterException wrongUse(String sentence) {
        return new ParameterException(spec.commandLine(), sentence);
    }
}
