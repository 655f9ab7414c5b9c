package bendline.stroke;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import bendline.body.BodyTrace;
import bendline.footage.SlowMotion;
import bendline.geometry.Point;
import bendline.rod.Blank;
import bendline.rod.SimulatedRodTest;
import bendline.scene.BlankFacts;
import bendline.scene.Setup;
import bendline.simulate.Scenario;
import bendline.simulate.ScenarioFiles;
import bendline.simulate.Severity;
import bendline.simulate.Truth;
import bendline.trace.FrameTrace;
import bendline.trace.Trace;
import bendline.trace.Tracked;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Casts of the simulator, whose rod shares nothing with ours, as a tracker with errors of 0.4 px would see them, read with a
 * rod that was measured under a weight: pull, energy, compression and the phone's angle against the truth.
 */
class LoadReaderTest {

    private static final double SD_PX = 0.4;
    private static final double DROPPED = 0.03;

    private static List<SimulatedCasts.Read> casts;

    private static BlankFacts measured(Scenario s) {
        Blank b = SimulatedRodTest.calibrated(s.rod(), s.rig().massG() / 85, 1);
        return new BlankFacts(
                null,
                null,
                null,
                new BlankFacts.Measured(
                        b.stiffnessNm2(), b.stiffnessRelativeSd(), b.taper().stiffnessAt(1)));
    }

    @BeforeAll
    static void read() {
        casts = Stream.of("good-cast", "tip-dropped-early", "flat-and-rushed")
                .map(LoadReaderTest::scenario)
                .map(s -> SimulatedCasts.read(s, measured(s), SD_PX, DROPPED))
                .toList();
        assertThat(casts).allSatisfy(c -> assertThat(c.strokes()).hasSize(1));
    }

    /** The phone stands 14° round towards the water: none of the samples is so far from square. */
    private static Scenario scenario(String name) {
        try {
            Scenario s = ScenarioFiles.readScenario(Path.of("samples", name + ".scenario.json"));
            return name.equals("tip-dropped-early") ? Askew.from(s, 14) : s;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static boolean jerked(SimulatedCasts.Read c) {
        return c.truth().casts().get(0).faults().get("flat-rushed-backswing") != Severity.NONE;
    }

    private static double value(SimulatedCasts.Read c, String id) {
        return c.told(id).value();
    }

    private static List<SimulatedCasts.Read> smooth() {
        return casts.stream().filter(c -> !jerked(c)).toList();
    }

    /** Target in the fast part: ± 20 %; with the rig weighed and seen it is a tenth, but for a slack line that comes tight with a jerk. */
    @Test
    void readsTheLargestMeanPullWithinATenthAndThroughAJerkWithinAFifth() {
        assertThat(casts).filteredOn(LoadReaderTest::jerked).isNotEmpty();
        for (SimulatedCasts.Read c : casts) {
            double truth = c.truth("peakMeanLinePull40msN");
            Measure pull = c.told("peakTipForce");
            assertThat(pull.basis()).as(c.scenario().name()).contains("mean over 40 ms");
            assertThat(pull.value()).as(c.scenario().name()).isEqualTo(truth, within((jerked(c) ? 0.2 : 0.1) * truth));
            // Through a jerk it is too small by more than it says: its ends are smeared.
            assertThat(pull.value()).isEqualTo(truth, within((jerked(c) ? 3 : 2) * pull.plusMinus()));
        }
    }

    /** The bend of a line that comes tight is over before a frame shows it: by the bend alone no number, but what was seen at least. */
    @Test
    void doesNotTellByTheBendAloneAPullThatAJerkHides() {
        assertThat(casts).filteredOn(LoadReaderTest::jerked).isNotEmpty().allSatisfy(c -> {
            Measure pull = SimulatedCasts.unweighed(c.truth(), measured(c.scenario()), SD_PX, DROPPED)
                    .told("peakTipForce");
            assertThat(pull.value()).isNull();
            assertThat(pull.basis()).contains("came tight with a jerk", "at least");
        });
    }

    /** The bend alone: its target is ± 20 %, and a blank taken to have no mass is misread by more, which is the reason. */
    @Test
    void readsTheBendAloneWithinAFifthAndWorseWithoutTheBlanksInertia() {
        SimulatedCasts.Read c = smooth().get(0);
        SimulatedCasts.Read alone = SimulatedCasts.unweighed(c.truth(), measured(c.scenario()), SD_PX, DROPPED);
        assertThat(value(alone, "peakTipForce") / c.truth("peakMeanLinePull40msN"))
                .isEqualTo(1, within(0.2));
        LoadCurve load = alone.strokes().get(0).bend().load();
        List<Truth.Frame> frames = c.truth().frames();
        double with = 0;
        double without = 0;
        for (int i = 0; i < load.size(); i++) {
            Truth.Frame f =
                    frames.get(alone.strokes().get(0).bend().arcs().get(i).frame());
            if (f.rigHeld() && load.newtonsSd()[i] < 10) {
                with += Math.abs(load.newtons()[i] - f.linePullN());
                without += Math.abs(load.withoutInertiaN()[i] - f.linePullN());
            }
        }
        assertThat(without).isGreaterThan(1.3 * with);
    }

    @Test
    void readsTheEnergyWithinAFifth() {
        assertThat(casts)
                .allSatisfy(c -> assertThat(value(c, "storedEnergy") / c.truth("peakElasticJ"))
                        .as(c.scenario().name())
                        .isEqualTo(1, within(0.2)));
    }

    @Test
    void saysHowMuchWasLeftAtTheRelease() {
        // One of them drops the frames at the release: there it is not told.
        List<SimulatedCasts.Read> told = smooth().stream()
                .filter(c -> c.told("energyLeftShare").value() != null)
                .toList();
        assertThat(told.size()).isPositive();
        for (SimulatedCasts.Read c : told) {
            assertThat(value(c, "energyLeftShare"))
                    .isEqualTo(c.truth("elasticAtReleaseJ") / c.truth("peakElasticJ"), within(0.12));
        }
    }

    /** Target: compression ± 0.015 in the plane of the cast, the phone up to 18° from square. */
    @Test
    void undoesThePhonesAngle() {
        assertThat(casts).allSatisfy(c -> {
            List<Truth.Frame> frames = c.truth().frames();
            double[] off = c.strokes().get(0).bend().arcs().stream()
                    .filter(BendArc::whole)
                    .mapToDouble(
                            a -> Math.abs(a.line().first().distance(a.line().last())
                                            / a.line().length()
                                    - frames.get(a.frame()).chordRatio()))
                    .sorted()
                    .toArray();
            assertThat(off[off.length / 2]).isLessThan(0.004);
            assertThat(off[(int) (0.95 * (off.length - 1))])
                    .as(c.scenario().name())
                    .isLessThan(0.015);
        });
    }

    /** The same rod in the same clip, told wrongly: no energy, and of the pull only between what and what it lies. */
    @Test
    void isNotSureWhereTheRodWasToldWrongly() {
        SimulatedCasts.Read c = smooth().get(0);
        BlankFacts.Measured m = measured(c.scenario()).measured();
        BlankFacts sixTimes =
                new BlankFacts(null, null, null, new BlankFacts.Measured(6 * m.stiffnessNm2(), 0.05, m.tipShare()));
        SimulatedCasts.Read wrong = SimulatedCasts.read(c.truth(), sixTimes, SD_PX, DROPPED);
        Measure energy = wrong.told("storedEnergy");
        assertThat(energy.basis()).contains("ring", "check its length");
        assertThat(energy.value()).isNull();
        Measure pull = wrong.told("peakTipForce");
        assertThat(pull.value()).isNull();
        Matcher range = Pattern.compile("anything from (\\d+) to (\\d+) N").matcher(pull.basis());
        assertThat(range.find()).as(pull.basis()).isTrue();
        assertThat(c.truth("peakMeanLinePull40msN"))
                .isBetween(Double.valueOf(range.group(1)), Double.valueOf(range.group(2)));
    }

    /** Other lengths and stiffnesses than the rod's own: what is told is wide enough to hold the truth, or is not told. */
    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "2.4 m told for 3.9 m, 0.62,,",
        "6 m told for 3.9 m, 1.54,,",
        "grams of the test curve a tenth, 1, 0.25,",
        "a test curve in another unit, 1, 1,",
        "the casting weight of a light rod, 1,, 0.01"
    })
    void isNotSureOfWhatWasToldWrongly(
            String what, double length, @Nullable Double testCurveKg, @Nullable Double castingKg) {
        SimulatedCasts.Read c = smooth().get(0);
        boolean stiffnessTold = testCurveKg != null || castingKg != null;
        BlankFacts facts = stiffnessTold ? new BlankFacts(testCurveKg, castingKg, null, null) : measured(c.scenario());
        SimulatedCasts.Read wrong = SimulatedCasts.misled(c.truth(), facts, SD_PX, DROPPED, length);
        Measure energy = wrong.told("storedEnergy");
        assertThat(energy.value()).as(what).isNull();
        assertThat(energy.basis()).contains("check ");
        assertHolds(wrong.told("loadedShare"), value(c, "loadedShare"));
        assertHolds(wrong.told("peakTipForce"), c.truth("peakMeanLinePull40msN"));
    }

    /**
     * Five points of the blank in every frame and a rig that was not weighed: pull and energy hold the truth, or are not told. (Its
     * compression is then too small by a tenth, as chords are shorter than an arc; the tracker always gives a whole curve.)
     */
    @Test
    void isNotSureOfABlankSeenInFivePlaces() {
        SimulatedCasts.Read c = smooth().get(0);
        Trace whole =
                SimulatedCasts.trace(c.truth(), SD_PX, DROPPED, c.scenario().seed());
        List<FrameTrace> five = whole.frames().stream()
                .map(f -> f.blank() == null
                        ? f
                        : new FrameTrace(
                                f.frame(),
                                f.seconds(),
                                f.grip(),
                                f.tip(),
                                f.rig(),
                                f.blank().resampled(5),
                                f.buttAngleSd()))
                .toList();
        Trace trace = withFrames(whole, five);
        Setup setup = new Setup(null, c.scenario().rod().freeLengthM(), null, null, null, null, List.of())
                .withBlank(measured(c.scenario()));
        Stroke stroke =
                new StrokeTimer().time(trace, setup, new SlowMotion(1, "given")).get(0);
        assertHolds(stroke.measure("storedEnergy"), c.truth("peakElasticJ"));
        assertHolds(stroke.measure("peakTipForce"), c.truth("peakMeanLinePull40msN"));
        assertThat(stroke.measure("peakTipForce").plusMinus())
                .isGreaterThan(c.told("peakTipForce").plusMinus());
    }

    /** Another thing taken for the rig, to and fro within a tenth of a second, seems to be pulled harder; the bend says that nothing was. */
    @Test
    void isNotSureOfAPullThatTheBendSpeaksAgainst() {
        SimulatedCasts.Read c = smooth().get(0);
        Trace whole =
                SimulatedCasts.trace(c.truth(), SD_PX, DROPPED, c.scenario().seed());
        double release = c.strokes().get(0).event(EventKind.RELEASE).seconds();
        List<FrameTrace> swayed = whole.frames().stream()
                .map(f -> {
                    double early = release - f.seconds();
                    Point rig = f.rig().position();
                    if (rig == null || !f.rig().seen() || early < 0.05 || early > 0.15) {
                        return f;
                    }
                    Point at = rig.plus(new Point(20 * Math.sin(2 * Math.PI * early / 0.1), 0));
                    return new FrameTrace(
                            f.frame(),
                            f.seconds(),
                            f.grip(),
                            f.tip(),
                            Tracked.seen(at, f.rig().sdPx()),
                            f.blank(),
                            f.buttAngleSd());
                })
                .toList();
        BodyTrace unknown = BodyTrace.nobody(0, "not asked");
        Stroke stroke = stroke(c, withFrames(whole, swayed), c.scenario().rod().freeLengthM(), unknown);
        assertHolds(stroke.measure("peakTipForce"), c.truth("peakMeanLinePull40msN"));
    }

    private static Trace withFrames(Trace whole, List<FrameTrace> frames) {
        return new Trace(
                whole.width(),
                whole.height(),
                frames,
                whole.motion(),
                whole.freeLengthPx(),
                whole.freeLengthSdPx(),
                null);
    }

    /** Twice what holds two cases in three holds nineteen in twenty. */
    private static void assertHolds(Measure m, double truth) {
        if (m.value() != null) {
            assertThat(m.value()).as(m.id()).isEqualTo(truth, within(2 * m.plusMinus()));
        }
    }

    /** A body tells of a wrong length even where neither ring nor rig can: a caster of 1.1 m is no caster. */
    @Test
    void holdsTheLengthAgainstTheCastersHeight() {
        SimulatedCasts.Read c = smooth().get(0);
        Trace trace = SimulatedCasts.trace(c.truth(), SD_PX, DROPPED, 1);
        double metresPerPixel = c.scenario().rod().freeLengthM() / trace.freeLengthPx();
        double height = c.scenario().statureM() / metresPerPixel;
        BodyTrace body = new BodyTrace(
                List.of(),
                0,
                height,
                0.03 * height,
                BodyTrace.nobody(0, "not asked").hands(),
                "not asked");
        double freeM = c.scenario().rod().freeLengthM();
        Measure right = stroke(c, trace, freeM, body).measure("peakTipSpeed");
        Stroke misled = stroke(c, trace, 0.62 * freeM, body);
        Measure wrong = misled.measure("peakTipSpeed");
        assertThat(right.plusMinus()).isLessThan(0.1 * right.value());
        assertThat(wrong.basis()).contains("1.1 m tall", "check the rod's length");
        assertThat(wrong.value()).isEqualTo(right.value(), within(2 * wrong.plusMinus()));
        for (String id : List.of("storedEnergy", "energyLeftShare", "loadedShare")) {
            assertThat(misled.measure(id).value()).as(id).isNull();
            assertThat(misled.measure(id).basis()).as(id).contains("check the rod's length");
        }
    }

    private static Stroke stroke(SimulatedCasts.Read c, Trace trace, double freeM, BodyTrace body) {
        Setup setup = new Setup(null, freeM, null, c.scenario().rig().massG() / 1000, null, null, List.of())
                .withBlank(measured(c.scenario()));
        return new StrokeTimer()
                .time(trace, setup, new SlowMotion(1, "given"), body)
                .get(0);
    }

    @Test
    void tellsThePullAloneWhereTheRodIsUnknown() {
        SimulatedCasts.Read c = smooth().get(0);
        SimulatedCasts.Read bare =
                SimulatedCasts.read(c.truth(), new BlankFacts(null, null, "nothing-like-it", null), SD_PX, DROPPED);
        assertThat(value(bare, "peakTipForce") / c.truth("peakMeanLinePull40msN"))
                .isEqualTo(1, within(0.1));
        assertThat(bare.told("storedEnergy").value()).isNull();
        assertThat(bare.told("storedEnergy").basis()).contains("nothing-like-it", "did you mean");
        assertThat(bare.told("loadedShare").value()).isNull();
        assertThat(bare.told("bendCentre").value())
                .isEqualTo(c.told("bendCentre").value(), within(0.1));
    }
}
