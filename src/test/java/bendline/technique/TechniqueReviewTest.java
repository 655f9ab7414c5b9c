package bendline.technique;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.scene.Setup.Side;
import bendline.stroke.AnalyticStroke;
import bendline.stroke.EventKind;
import bendline.stroke.Measure;
import bendline.stroke.Stroke;
import bendline.stroke.Strokes;
import bendline.technique.Finding.State;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TechniqueReviewTest {

    private static final String FLAT = "flat-rushed-backswing";
    private static final String DROPPED = "tip-dropped-early";

    private static final AnalyticStroke RUSHED = Strokes.withLoad(Strokes.withBackswing(0.6, 0.05, 170), 75, 0.3, 0.4);

    private static Review review(AnalyticStroke s) {
        return new TechniqueReview().review(Strokes.timed(s, 60, 1, Side.RIGHT));
    }

    private static Finding finding(Review r, String id) {
        return r.findings().stream().filter(f -> f.id().equals(id)).findFirst().orElseThrow();
    }

    @Test
    void aCleanStrokeHasNoFaultAndSomePraise() {
        Review r = review(AnalyticStroke.GOOD);
        assertThat(r.findings()).noneMatch(f -> f.state() == State.FOUND);
        assertThat(finding(r, FLAT).state()).isEqualTo(State.CLEAR);
        assertThat(finding(r, DROPPED).state()).isEqualTo(State.CLEAR);
        assertThat(r.next()).isNull();
        assertThat(r.good()).hasSizeGreaterThan(3).allMatch(g -> g.matches(".*[0-9].*"));
    }

    /** One sign alone is no fault: a flat but unhurried backswing, and a quick one that settles and loads well. */
    @ParameterizedTest
    @CsvSource({"1.8, 0.7, 168", "0.75, 0.55, 140"})
    void oneSignAloneIsNoRush(double backswing, double settle, double rearmost) {
        assertThat(finding(review(Strokes.withBackswing(backswing, settle, rearmost)), FLAT)
                        .state())
                .isEqualTo(State.CLEAR);
    }

    @ParameterizedTest
    @CsvSource({"60, 1, RIGHT", "60, 1, LEFT", "120, 4, RIGHT", "240, 8, LEFT", "30, 1, RIGHT"})
    void aRushedAndFlatBackswingIsFoundAtAnyRateOnEitherSide(double fps, double factor, Side side) {
        Review r = new TechniqueReview().review(Strokes.timed(RUSHED, fps, factor, side));
        Finding flat = finding(r, FLAT);
        assertThat(flat.state()).isEqualTo(State.FOUND);
        assertThat(flat.severity()).isGreaterThan(0.4);
        assertThat(flat.evidenceFrames()).isNotEmpty();
        assertThat(flat.checks().stream()
                        .filter(c -> c.verdict() == State.FOUND)
                        .count())
                .isGreaterThanOrEqualTo(2);
        assertThat(finding(r, DROPPED).state()).isEqualTo(State.CLEAR);
        assertThat(r.next()).isNotNull();
        assertThat(r.next().id()).isEqualTo(FLAT);
        long all = r.findings().stream().filter(f -> f.state() == State.FOUND).count();
        assertThat(r.why())
                .as("with %d faults found", all)
                .matches(all == 1 ? "It is the only.*" : "(?!It is the only).*");
    }

    /** Stop angle, fall, delay and time of the fall: low but held, and lowered gently after the rig. */
    @ParameterizedTest
    @CsvSource({"30, 0, 0.3, 0.5", "55, 16, 0.45, 0.9", "70, 5, 0.1, 0.4"})
    void aRodThatIsHeldIsNotDropped(double stop, double fall, double delay, double seconds) {
        Review r = review(Strokes.withFinish(AnalyticStroke.GOOD, stop, fall, delay, seconds));
        assertThat(finding(r, DROPPED).state()).isEqualTo(State.CLEAR);
    }

    @ParameterizedTest
    @CsvSource({
        "70, 45, 0.02, 0.25, 60, 1, RIGHT",
        "55, 40, 0.05, 0.3, 30, 1, LEFT",
        "55, 26, 0.06, 0.26, 240, 8, RIGHT"
    })
    void aRodThatIsLetFallIsDropped(
            double stop, double fall, double delay, double seconds, double fps, double factor, Side side) {
        AnalyticStroke s = Strokes.withFinish(AnalyticStroke.GOOD, stop, fall, delay, seconds);
        Review r = new TechniqueReview().review(Strokes.timed(s, fps, factor, side));
        Finding dropped = finding(r, DROPPED);
        assertThat(dropped.state()).isEqualTo(State.FOUND);
        assertThat(dropped.says()).contains("°");
        assertThat(finding(r, FLAT).state()).isEqualTo(State.CLEAR);
        assertThat(r.next()).isNotNull();
        assertThat(r.next().id()).isEqualTo(DROPPED);
    }

    @Test
    void aHardlyLoadedRodIsFound() {
        Review r = review(Strokes.withLoad(AnalyticStroke.GOOD, 32, -0.1, 0));
        assertThat(finding(r, "under-compressed").state()).isEqualTo(State.FOUND);
        assertThat(finding(review(AnalyticStroke.GOOD), "under-compressed").state())
                .isEqualTo(State.CLEAR);
    }

    @Test
    void aLateBendAndASlackStartAreToldApart() {
        Review late = review(Strokes.withLoad(AnalyticStroke.GOOD, 85, 0.42, 0));
        assertThat(finding(late, "late-bend").state()).isEqualTo(State.FOUND);
        Review slack = review(Strokes.withLoad(AnalyticStroke.GOOD, 85, 0.3, 0.45));
        assertThat(finding(slack, "slack-start").state()).isEqualTo(State.FOUND);
    }

    @Test
    void aShortSweepIsFound() {
        Review r = review(Strokes.withFinish(Strokes.withBackswing(1.2, 0.5, 114), 72, 0, 0.3, 0.5));
        assertThat(finding(r, "short-sweep").state()).isEqualTo(State.FOUND);
    }

    @Test
    void whatNeedsMoreThanTheRodIsSaidToNeedIt() {
        Review r = review(AnalyticStroke.GOOD);
        for (String id : List.of(
                "released-early", "released-late", "low-hands", "weak-pull", "out-of-order", "uneven", "soft-clip")) {
            Finding f = finding(r, id);
            assertThat(f.state()).as(id).isEqualTo(State.CANNOT_TELL);
            assertThat(f.says()).as(id).startsWith("Cannot tell");
        }
        assertThat(finding(r, "soft-clip").says()).contains("the clip ends");
        assertThat(r.findings()).extracting(Finding::id).doesNotHaveDuplicates().hasSize(14);
    }

    @Test
    void everyFindingCarriesItsNumbersFramesAndWords() {
        Stroke stroke = Strokes.timed(RUSHED, 60, 1, Side.RIGHT);
        for (Finding f : new TechniqueReview().review(stroke).findings()) {
            assertThat(f.says()).as(f.id()).isNotBlank();
            assertThat(f.cost()).as(f.id()).isNotBlank();
            assertThat(f.drill()).as(f.id()).isNotBlank();
            assertThat(f.severity()).isBetween(0.0, 1.0);
            assertThat(f.severity() > 0).as(f.id()).isEqualTo(f.state() == State.FOUND);
            if (f.state() == State.FOUND) {
                assertThat(f.evidenceFrames())
                        .as(f.id())
                        .isNotEmpty()
                        .allMatch(n -> n >= stroke.firstFrame() && n <= stroke.lastFrame());
                assertThat(f.checks()).as(f.id()).hasSizeGreaterThanOrEqualTo(2);
            }
        }
    }

    @Test
    void wordsSpeakToTheAnglerAndBlameNobody() {
        for (Fault f : Faults.ALL) {
            assertThat((f.cost() + " " + f.drill()).toLowerCase(Locale.ROOT))
                    .as(f.id())
                    .containsPattern("\\byour?\\b|hold|feel|picture|cast|push|build")
                    .doesNotContainPattern("\\b(wrong|bad|poor|fail|mistake|never learn|butt angle|chord)\\b");
            assertThat(f.cost()).as(f.id()).containsPattern("\\b[Yy]our?\\b");
            assertThat(f.cost().length()).as(f.id()).isLessThan(320);
        }
        Stroke stroke = Strokes.timed(RUSHED, 60, 1, Side.RIGHT);
        for (Finding f : new TechniqueReview().review(stroke).findings()) {
            assertThat(f.says())
                    .as(f.id())
                    .doesNotContain("1/s")
                    .doesNotContain("deg")
                    .doesNotContain("NaN");
        }
    }

    @Test
    void drillsThatAddPowerWarn() {
        for (Fault f : Faults.ALL) {
            String drill = f.drill().toLowerCase(Locale.ROOT);
            if (drill.contains("power") && !drill.contains("half power") && !drill.contains("half-power")) {
                assertThat(drill)
                        .as(f.id())
                        .contains("leader")
                        .contains("overhead")
                        .contains("within reach");
            }
        }
        assertThat(Faults.ALL.stream().filter(f -> f.drill().contains("more power")))
                .hasSize(1);
    }

    @Test
    void aValueWithinItsUncertaintyOfTheLimitDecidesNothing() {
        Stroke stroke = Strokes.timed(Strokes.withBackswing(1.8, 0.7, 150), 60, 1, Side.RIGHT);
        double rearmost = stroke.measure("rearmostDeg").value();
        double sd = stroke.measure("rearmostDeg").plusMinus();
        Limit near = new Limit("x", "rearmostDeg", true, rearmost - 0.5 * sd, 200, "deg", "r", "s");
        Limit under = new Limit("x", "rearmostDeg", true, rearmost - 2 * sd, 200, "deg", "r", "s");
        Limit over = new Limit("x", "rearmostDeg", true, rearmost + 2 * sd, 200, "deg", "r", "s");
        assertThat(near.check(stroke.measure("rearmostDeg"), 1).verdict()).isEqualTo(State.CANNOT_TELL);
        assertThat(under.check(stroke.measure("rearmostDeg"), 1).verdict()).isEqualTo(State.FOUND);
        assertThat(over.check(stroke.measure("rearmostDeg"), 1).verdict()).isEqualTo(State.CLEAR);
    }

    /** One cast in six that is held as the limit is measured more than its uncertainty beyond it: that is not enough to accuse. */
    @Test
    void aRodIsCalledDroppedOnlyWhereItsFallIsTwoUncertaintiesBeyondTheLimit() {
        Stroke stroke = Strokes.timed(Strokes.withFinish(AnalyticStroke.GOOD, 55, 45, 0.02, 0.25), 60, 1, Side.RIGHT);
        Limit far = Limits.standard().limit("tip-dropped-early.far-quarter");
        Limit half = Limits.standard().limit("tip-dropped-early.far-half");
        for (double beyond : new double[] {-1.1, 1.6, 2.1}) {
            Finding dropped = finding(
                    new TechniqueReview()
                            .review(stroke.with(beyond(stroke, far, beyond)).with(beyond(stroke, half, beyond))),
                    DROPPED);
            assertThat(dropped.state())
                    .isEqualTo(beyond > 2 ? State.FOUND : beyond > 0 ? State.CANNOT_TELL : State.CLEAR);
            if (dropped.state() == State.CANNOT_TELL) {
                assertThat(dropped.says()).contains("not twice its uncertainty beyond the limit");
            }
        }
    }

    private static Measure beyond(Stroke stroke, Limit limit, double uncertainties) {
        Measure m = stroke.measure(limit.measure());
        return new Measure(m.id(), m.label(), m.unit(), limit.limit() + 3 * uncertainties, 3, m.basis());
    }

    /** Slack and a late bend after an unhurried backswing are a slack start; nothing of it was hurried or laid flat. */
    @Test
    void slackAfterAnUnhurriedBackswingIsNoRush() {
        AnalyticStroke slack = Strokes.withLoad(AnalyticStroke.GOOD, 75, 0.3, 0.4);
        Review r = review(slack);
        Finding flat = finding(r, FLAT);
        assertThat(flat.state()).isEqualTo(State.CLEAR);
        assertThat(flat.says())
                .contains("decides nothing: ")
                .contains("settled behind")
                .contains("bends late");
        assertThat(finding(r, "slack-start").state()).isEqualTo(State.FOUND);
        Finding hurried = finding(review(Strokes.withLoad(Strokes.withBackswing(0.6, 0.5, 140), 75, 0.3, 0.4)), FLAT);
        assertThat(hurried.state()).isEqualTo(State.FOUND);
    }

    @Test
    void worstFaultComesFirstAndOfLikeOnesTheEarlier() {
        AnalyticStroke both = Strokes.withFinish(RUSHED, 55, 45, 0.02, 0.25);
        Review r = review(both);
        Finding next = r.next();
        assertThat(next).isNotNull();
        double worst =
                r.findings().stream().mapToDouble(Finding::severity).max().orElse(0);
        assertThat(next.severity()).isGreaterThanOrEqualTo(worst - 0.16);
        assertThat(r.why()).contains("of 1");
        assertThat(next.evidenceFrames()).isNotEmpty();
        assertThat(finding(r, DROPPED).evidenceFrames())
                .contains(Strokes.timed(both, 60, 1, Side.RIGHT)
                        .event(EventKind.RELEASE)
                        .frame());
    }
}
