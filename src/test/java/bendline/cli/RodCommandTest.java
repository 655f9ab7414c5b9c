package bendline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.geometry.Point;
import bendline.rod.Bending;
import bendline.rod.Blank;
import bendline.rod.BlankLibrary;
import bendline.rod.BlankShape;
import bendline.rod.Load;
import bendline.rod.ModelBlank;
import bendline.rod.StillBend;
import bendline.simulate.CameraSpec;
import bendline.simulate.CastScript;
import bendline.simulate.RigSpec;
import bendline.simulate.RodSpec;
import bendline.simulate.Scenario;
import bendline.simulate.SceneSpec;
import bendline.simulate.Simulator;
import bendline.simulate.Truth;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RodCommandTest {

    private static final double FREE_M = 3.26;

    @TempDir
    private Path temp;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(List<String> args) {
        return Main.run(new PrintWriter(out, true), new PrintWriter(err, true), args.toArray(String[]::new));
    }

    /** Points on a picture of 200 pixels a metre of the medium blank under 400 g. */
    private static List<String> points(int count) {
        Blank b = BlankLibrary.named("medium-long").bending();
        BlankShape s = new Bending(b).under(0.4, new Load(new Point(0, -0.4 * 9.80665), StillBend.weight(b)));
        List<String> args = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            Point p = s.at(i * b.lengthM() / (count - 1));
            args.add("--point");
            args.add(String.format(Locale.ROOT, "%.1f,%.1f", 100 + 200 * p.x(), 700 - 200 * p.y()));
        }
        return args;
    }

    private static List<String> calibrate(List<String> points, String... more) {
        List<String> args = new ArrayList<>(List.of("rod", "calibrate", "--free-length", "" + FREE_M));
        args.addAll(points);
        args.addAll(List.of(more));
        return args;
    }

    @Test
    void listsTheBlanks() {
        assertThat(run(List.of("rod"))).isZero();
        assertThat(out.toString()).contains("light-short", "medium-long", "beach-power", "N·m²");
    }

    @Test
    void measuresARodAndWritesItsFile() {
        Path file = temp.resolve("mine.properties");
        assertThat(run(calibrate(points(12), "--weight", "400g", "--save", file.toString())))
                .isZero();
        Blank found = ModelBlank.read(file).bending();
        assertThat(found.stiffnessNm2()).isBetween(130 * 0.85, 130 * 1.15);
        assertThat(Math.abs(found.stiffnessNm2() / 130 - 1)).isLessThan(2 * found.stiffnessRelativeSd());
        assertThat(out.toString()).contains("test curve of about 1.");
        assertThat(run(calibrate(points(12), "--weight", "400g", "--save", file.toString())))
                .isEqualTo(2);
        assertThat(err.toString()).contains("already there");
    }

    @Test
    void refusesWhatCannotTell() {
        assertThat(run(calibrate(points(4), "--weight", "400g"))).isEqualTo(3);
        assertThat(err.toString()).contains("Only 4 points");
        assertThat(run(calibrate(points(12), "--weight", "400"))).isEqualTo(2);
        assertThat(err.toString()).contains("did you mean 400g?");
        assertThat(run(calibrate(List.of(), "--weight", "400g"))).isEqualTo(2);
        assertThat(err.toString()).contains("Give either a clip");
        assertThat(run(calibrate(points(12), "--weight", "90kg"))).isEqualTo(2);
        assertThat(err.toString()).contains("The weight 90 kg is outside", "Did you mean 90 g");
        assertThat(Files.exists(temp.resolve("mine.properties"))).isFalse();
    }

    @Test
    void refusesATestCurveInTheWrongUnit() {
        assertThat(run(List.of("analyse", "no.mp4", "--out", "x", "--test-curve", "1200kg")))
                .isEqualTo(2);
        assertThat(err.toString()).contains("did you mean 1200 g?");
    }

    @Test
    void namesTheUnitsThatATestCurveMayBeIn() {
        assertThat(run(List.of("analyse", "no.mp4", "--out", "x", "--test-curve", "2.75")))
                .isEqualTo(2);
        assertThat(err.toString()).contains("did you mean 2.75lb or 2.75kg?");
        assertThat(run(List.of("analyse", "no.mp4", "--out", "x", "--rod-length", "12.8ft")))
                .isEqualTo(2);
        assertThat(err.toString()).contains("'12.8ft' is no plain number: write it without a unit");
    }

    /** Five points are enough to tell something, and too few to tell it well. */
    @Test
    void widensWhatFivePointsTell() {
        Path file = temp.resolve("five.properties");
        assertThat(run(calibrate(points(5), "--weight", "400g", "--save", file.toString())))
                .isZero();
        Blank found = ModelBlank.read(file).bending();
        assertThat(found.stiffnessRelativeSd()).isGreaterThan(0.1);
        assertThat(Math.abs(found.stiffnessNm2() / 130 - 1)).isLessThan(2 * found.stiffnessRelativeSd());
    }

    /** A soft rod of the simulator held still under 300 g, filmed for half a second; its cast would begin long after. */
    private static Scenario stillRod() {
        CastScript c = CastScript.of(9, 0, 0);
        CastScript held = new CastScript(
                c.startSeconds(),
                22,
                c.layBackDeg(),
                c.backswingSeconds(),
                c.settleSeconds(),
                c.feelSeconds(),
                c.pushSeconds(),
                c.turnDelaySeconds(),
                c.turnSeconds(),
                c.stopAngleDeg(),
                c.releaseDirectionDeg(),
                c.releaseLateSeconds(),
                c.holdSeconds(),
                c.dropDeg(),
                c.dropDelaySeconds(),
                c.dropSeconds(),
                c.putDown(),
                c.rushedFlat(),
                c.tipDrop(),
                null);
        CameraSpec camera =
                new CameraSpec(960, 540, 0, 30, 30, 0.002, 770, 8.5, 1.5, 0, 1.2, 2.4, 0, 0, 1, 0, 3_000_000);
        SceneSpec open = SceneSpec.alone(SceneSpec.Bank.OPEN, SceneSpec.Light.OVERCAST, 0, 0, 0, false, 0);
        return new Scenario(
                "still",
                8,
                0.5,
                true,
                true,
                1.8,
                Scenario.TipColour.PLAIN,
                RodSpec.matched(3.6, 0.62, 45),
                RigSpec.feeder(300, 0.5),
                List.of(held),
                camera,
                open);
    }

    /** From the clip to the file: the stiffness that the simulator's rod has at the hand, within twice what is stated. */
    @Test
    void measuresARodThatIsHeldStillInAClip() throws IOException {
        Path clip = temp.resolve("still.mp4");
        Scenario s = stillRod();
        Truth.Frame f = Simulator.render(s, clip).frames().get(4);
        Path file = temp.resolve("mine.properties");
        List<String> args = new ArrayList<>(List.of(
                "rod", "calibrate", clip.toString(), "--at", "" + f.seconds(), "--weight", "300g", "--free-length"));
        args.add("" + s.rod().freeLengthM());
        assertThat(run(args)).isEqualTo(3);
        assertThat(err.toString()).contains("held still all the time", "--mark-grip");
        args.addAll(List.of(
                "--mark-grip", mark(f.grip()), "--mark-tip", mark(f.tip()), "--save", file.toString(), "--quiet"));
        assertThat(run(args)).as(err.toString()).isZero();
        Blank found = ModelBlank.read(file).bending();
        assertThat(found.stiffnessRelativeSd()).isLessThan(0.5);
        assertThat(Math.abs(found.stiffnessNm2() / s.rod().eiButtNm2() - 1))
                .as(out.toString())
                .isLessThan(2 * found.stiffnessRelativeSd());
    }

    private static String mark(Point p) {
        return Math.round(p.x()) + "," + Math.round(p.y());
    }
}
