package bendline.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.offset;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.trace.BlankFitter.Fit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

class HiddenTipsTest {

    private static final double FREE = 300;
    private static final Point PIVOT = new Point(500, 500);

    /** A rod that swings slowly, of which some is missing outside in some frames while the handle shows inside. */
    private static List<Look> swing(int from, int past, double missing) {
        List<Look> out = new ArrayList<>();
        for (int t = 0; t < 90; t++) {
            double angle = Math.toRadians(60 + t);
            Point unit = new Point(Math.cos(angle), -Math.sin(angle));
            Point hand = PIVOT.plus(new Point(10 * Math.sin(t / 15.0), 0));
            double outer = t >= from && t < past ? FREE - missing : FREE;
            Polyline line = new Polyline(List.of(hand.plus(unit.times(-20)), hand.plus(unit.times(outer))));
            out.add(new Look(t / 60.0, List.of(), new Fit(line, 0.5, 1, 0.01, 3, 100, 1, 0)));
        }
        return out;
    }

    private static double hidden(List<Look> looks, int t) {
        return Objects.requireNonNull(looks.get(t).chosen()).hiddenPx();
    }

    @Test
    void aTipThatIsCutShortIsTold() {
        List<Look> told = HiddenTips.told(swing(40, 60, 70), PIVOT, new RodLength.Estimate(FREE, 0.03 * FREE, 1));
        for (int t = 42; t < 58; t++) {
            assertThat(hidden(told, t)).isEqualTo(70, offset(8.0));
        }
        for (int t = 0; t < 38; t++) {
            assertThat(hidden(told, t)).isZero();
        }
        assertThat(hidden(told, 80)).isZero();
    }

    @Test
    void aWholeRodIsLeftAlone() {
        List<Look> looks = swing(0, 0, 0);
        assertThat(HiddenTips.told(looks, PIVOT, new RodLength.Estimate(FREE, 0.03 * FREE, 1)))
                .isEqualTo(looks);
    }

    @Test
    void whatRunsDownTheLineForAMomentIsCutOff() {
        List<Look> looks = swing(0, 0, 0);
        List<Point> tips = looks.stream()
                .map(l -> Objects.requireNonNull(l.chosen()).line().last())
                .toList();
        for (int t = 40; t < 52; t++) {
            Fit fit = Objects.requireNonNull(looks.get(t).chosen());
            Point tip = fit.line().last();
            Point on = tip.plus(
                    Point.direction(fit.line().tangentAt(FREE).angle() + 0.6).times(80 + t % 3));
            Polyline longer = new Polyline(List.of(fit.line().first(), tip, on));
            looks.set(t, looks.get(t).with(new Fit(longer, 0.5, 1, 0.01, 3, 100, 1, 0)));
        }
        List<Look> told = HiddenTips.told(looks, PIVOT, new RodLength.Estimate(FREE, 0.03 * FREE, 1));
        for (int t = 0; t < 90; t++) {
            Fit fit = Objects.requireNonNull(told.get(t).chosen());
            assertThat(fit.hiddenPx()).isZero();
            assertThat(fit.line().last().distance(tips.get(t)))
                    .as("frame %d", t)
                    .isLessThan(20);
        }
    }

    /** A slow swing in which line shows straight on from the tip for half of the frames, by so much and so faint, or not. */
    private static List<Look> runningOn(double onPx, FaintEnd end) {
        List<Look> looks = swing(0, 0, 0);
        for (int t = 30; t < 75; t++) {
            Fit fit = Objects.requireNonNull(looks.get(t).chosen());
            double shown = onPx * Math.min(1, Math.min(t - 29, 75 - t) / 8.0);
            Point tip = fit.line().last();
            Polyline longer = new Polyline(List.of(
                    fit.line().first(), tip, tip.plus(fit.line().tangentAt(FREE).times(shown))));
            FaintEnd faint = end.withinPx() > 0 ? new FaintEnd(shown, 0) : end;
            looks.set(t, looks.get(t).with(new Fit(longer, 0.5, 1, 0.01, 3, 100, 1, 0).with(faint)));
        }
        return looks;
    }

    private static Point swingWay(int t) {
        double angle = Math.toRadians(60 + t);
        return new Point(Math.cos(angle), -Math.sin(angle));
    }

    private static double longest(List<Look> looks, int from, int to) {
        return looks.subList(from, to).stream()
                .mapToDouble(l -> Objects.requireNonNull(l.chosen()).line().length())
                .max()
                .orElseThrow();
    }

    /** The hand could slide along the rod with the tip; that the outer end is faint tells that it does not. */
    @Test
    void faintLineIsCutOffWhereItBegins() {
        RodLength.Estimate rod = new RodLength.Estimate(FREE, 0.03 * FREE, 1);
        double whole = FREE + 20;
        assertThat(longest(HiddenTips.told(runningOn(30, FaintEnd.NONE), PIVOT, rod), 40, 65))
                .isEqualTo(whole + 30, offset(1e-6));
        Map<Integer, Point> hands = new TreeMap<>();
        for (int t = 0; t < 90; t++) {
            // As far off as a body's hand may be, and nearer to where it would be were the line the rod's.
            hands.put(
                    t,
                    PIVOT.plus(new Point(10 * Math.sin(t / 15.0), 0))
                            .plus(swingWay(t).times(16)));
        }
        List<Look> told = HiddenTips.told(runningOn(30, new FaintEnd(30, 0)), PIVOT, rod, hands);
        assertThat(longest(told, 40, 65)).isEqualTo(whole, offset(1e-6));
        assertThat(Objects.requireNonNull(told.get(50).chosen()).alongSdPx()).isLessThan(4);
    }

    /** Before a bright cloud the rod's own end may be as faint, for a moment, in which no hand jumps. */
    @Test
    void aFaintEndIsKeptWhereTheHandWouldHaveToJump() {
        List<Look> looks = swing(0, 0, 0);
        for (int t = 40; t < 44; t++) {
            Fit fit = Objects.requireNonNull(looks.get(t).chosen());
            looks.set(t, looks.get(t).with(fit.with(new FaintEnd(30, 0))));
        }
        List<Look> told = HiddenTips.told(looks, PIVOT, new RodLength.Estimate(FREE, 0.03 * FREE, 1));
        assertThat(told.subList(40, 44).stream()
                        .map(l -> Objects.requireNonNull(l.chosen()).line().length()))
                .allSatisfy(l -> assertThat(l).isEqualTo(FREE + 20, offset(1e-6)));
    }

    @Test
    void aTipThatBendsUnderTheHangingRigIsLeftAlone() {
        List<Look> looks = swing(0, 0, 0);
        for (int t = 0; t < 90; t++) {
            Fit fit = Objects.requireNonNull(looks.get(t).chosen());
            Polyline stiff = fit.line().cut(0.85 * FREE);
            Point tip = stiff.last()
                    .plus(Point.direction(stiff.tangentAt(FREE).angle() + 0.3).times(0.15 * FREE + 20));
            Polyline soft = new Polyline(List.of(stiff.first(), stiff.last(), tip));
            looks.set(t, looks.get(t).with(new Fit(soft, 0.5, 1, 0.01, 3, 100, 1, 0)));
        }
        assertThat(HiddenTips.told(looks, PIVOT, new RodLength.Estimate(FREE, 0.03 * FREE, 1)))
                .isEqualTo(looks);
    }

    @Test
    void aTipThatIsMissingPutsTheLinesInnerEndBehindTheHandsWhereItIsCutOff() {
        List<Look> told = HiddenTips.told(swing(40, 60, 70), PIVOT, new RodLength.Estimate(FREE, 0.03 * FREE, 1));
        double before = Objects.requireNonNull(told.get(30).chosen()).line().length();
        double missing = Objects.requireNonNull(told.get(50).chosen()).line().length();
        assertThat(before).isEqualTo(FREE + 20, offset(1e-6));
        assertThat(missing).isEqualTo(0.9 * FREE - 70, offset(8.0));
    }

    @Test
    void framesWithoutALineAreSkipped() {
        List<Look> looks = swing(40, 60, 70);
        looks.set(50, looks.get(50).with(null));
        List<Look> told = HiddenTips.told(looks, PIVOT, new RodLength.Estimate(FREE, 0.03 * FREE, 1));
        assertThat(told.get(50).chosen()).isNull();
        assertThat(hidden(told, 51)).isEqualTo(70, offset(8.0));
    }

    /** Hands of the swing, told by a body that errs by so much, pixels. */
    private static Map<Integer, Point> hands(double sd) {
        Random random = new Random(11);
        Map<Integer, Point> out = new TreeMap<>();
        for (int t = 0; t < 90; t++) {
            Point noise = new Point(sd * random.nextGaussian(), sd * random.nextGaussian());
            out.put(t, PIVOT.plus(new Point(10 * Math.sin(t / 15.0), 0)).plus(noise));
        }
        return out;
    }

    @Test
    void aTipThatIsCutFromTheStartIsToldByTheHand() {
        RodLength.Estimate rod = new RodLength.Estimate(FREE, 0.03 * FREE, 1);
        List<Look> cut = swing(0, 90, 40);
        assertThat(hidden(HiddenTips.told(cut, PIVOT, rod), 50)).isZero();
        List<Look> told = HiddenTips.told(cut, PIVOT, rod, hands(4));
        for (int t = 0; t < 90; t++) {
            assertThat(hidden(told, t)).isEqualTo(40, offset(9.0));
        }
    }

    @Test
    void aHandThatErrsALittleMovesNoTip() {
        List<Look> looks = swing(0, 0, 0);
        RodLength.Estimate rod = new RodLength.Estimate(FREE, 0.03 * FREE, 1);
        assertThat(HiddenTips.told(looks, PIVOT, rod, hands(4))).isEqualTo(looks);
    }

    /** Evidence of something faint that goes on for so many pixels and then ends. */
    private static FaintEnd goingOn(double px, long seed) {
        Random random = new Random(seed);
        double[] on = new double[100];
        double[] beside = new double[100];
        for (int i = 0; i < 100; i++) {
            on[i] = -Math.log(1 - random.nextDouble()) * (i * Strip.STEP_PX < px ? 2.5 : 0.5);
            beside[i] = -Math.log(1 - random.nextDouble()) * 0.5;
        }
        return new FaintEnd(0, 0, GoesOn.of(on, beside), PaintClue.NONE);
    }

    private static List<Look> faintFrom(List<Look> looks, int from, int past, double px) {
        List<Look> out = new ArrayList<>(looks);
        for (int t = from; t < past; t++) {
            out.set(
                    t,
                    looks.get(t)
                            .with(Objects.requireNonNull(looks.get(t).chosen()).with(goingOn(px, t))));
        }
        return out;
    }

    /** A painted tip before a bright sky: cut in some frames, where something much fainter goes on for as much. */
    @Test
    void aTipThatGoesOnFaintlyIsSeenToItsEnd() {
        RodLength.Estimate rod = new RodLength.Estimate(FREE, 0.03 * FREE, 1);
        List<Look> whole = swing(0, 0, 0);
        List<Look> told = HiddenTips.told(faintFrom(swing(30, 60, 36), 30, 60, 36), PIVOT, rod);
        for (int t = 30; t < 60; t++) {
            Fit fit = Objects.requireNonNull(told.get(t).chosen());
            assertThat(fit.hiddenPx()).as("frame %d", t).isZero();
            Point tip = Objects.requireNonNull(whole.get(t).chosen()).line().last();
            assertThat(fit.line().last().distance(tip)).as("frame %d", t).isLessThan(12);
        }
    }

    /** Line that shows for a moment beyond a tip that was seen all along. */
    @Test
    void whatGoesOnForAMomentIsNotTheRods() {
        RodLength.Estimate rod = new RodLength.Estimate(FREE, 0.03 * FREE, 1);
        List<Look> whole = swing(0, 0, 0);
        List<Look> told = HiddenTips.told(faintFrom(whole, 40, 45, 36), PIVOT, rod);
        for (int t = 0; t < 90; t++) {
            Fit fit = Objects.requireNonNull(told.get(t).chosen());
            assertThat(fit.hiddenPx()).isZero();
            Point tip = Objects.requireNonNull(whole.get(t).chosen()).line().last();
            assertThat(fit.line().last().distance(tip)).as("frame %d", t).isLessThan(8);
        }
    }

    /** The innermost part is hidden for a while and what shows there begins with a bend: no reason to take the tip for cut. */
    @Test
    void whatIsHiddenAtTheInnerEndIsNotMissingAtTheTip() {
        List<Look> looks = swing(0, 0, 0);
        for (int t = 30; t < 60; t++) {
            Fit fit = Objects.requireNonNull(looks.get(t).chosen());
            Polyline line = fit.line().resampled(60);
            List<Point> points = new ArrayList<>(line.points().subList(20 + t % 5, 60));
            Point start = points.get(0);
            points.set(0, start.plus(new Point(t % 2 == 0 ? 1 : -1, 0)));
            looks.set(t, looks.get(t).with(new Fit(new Polyline(points), 0.5, 1, 0.01, 3, 100, 1, 0)));
        }
        List<Look> told = HiddenTips.told(looks, PIVOT, new RodLength.Estimate(FREE, 0.03 * FREE, 1));
        for (int t = 0; t < 90; t++) {
            assertThat(hidden(told, t)).as("frame %d", t).isZero();
        }
    }
}
