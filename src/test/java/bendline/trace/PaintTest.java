package bendline.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.image.Plane;
import bendline.trace.BlankFitter.Fit;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;

/** Tips painted in another colour, and line, which is none. */
class PaintTest {

    private static final Point HAND = new Point(300, 500);

    private static final RodLength.Estimate ROD = new RodLength.Estimate(360, 8, 1);

    private static final RodLength.Estimate WHOLE = new RodLength.Estimate(400, 8, 1);

    private static Fit fit(double angleDeg, double lengthPx, double faintPx) {
        double a = Math.toRadians(angleDeg);
        Point tip = HAND.plus(new Point(Math.cos(a), -Math.sin(a)).times(lengthPx));
        return new Fit(new Polyline(List.of(HAND, tip)), 0.5, 1, 0.01, 3, 100, 1, 0, new FaintEnd(0, faintPx));
    }

    /** A swing from 60° to 120° in 60 frames, something faint beyond the tip of each third of them. */
    private static List<Look> swing(double degrees, IntToDoubleFunction faintPx) {
        List<Look> out = new ArrayList<>();
        for (int t = 0; t < 60; t++) {
            double on = t % 3 == 0 ? faintPx.applyAsDouble(t) : 0;
            Fit fit = fit(60 + degrees * t / 60, on > 0 ? 360 : 400, on);
            out.add(new Look(t / 60.0, List.of(fit), fit));
        }
        return out;
    }

    @Test
    void whatGoesOnForOneLengthInManyDirectionsIsPaint() {
        List<Look> looks = swing(60, t -> 40 + t % 4);
        Paint paint = Paint.of(looks, WHOLE);
        assertThat(paint.length().freePx()).isBetween(40.0, 43.0);
        List<Look> shown = paint.shown(looks);
        for (int t = 0; t < 60; t++) {
            Fit fit = shown.get(t).chosen();
            assertThat(fit.line().length()).isCloseTo(t % 3 == 0 ? 400 + t % 4 : 400, within(1e-6));
            assertThat(shown.get(t).choices()).containsExactly(fit);
        }
        assertThat(shown.get(0).chosen().alongSdPx())
                .isGreaterThan(looks.get(0).chosen().alongSdPx());
    }

    @Test
    void lineGoesOnAsFarAsTheBackgroundLetsIt() {
        List<Look> looks = swing(60, t -> 15 + 1.4 * t);
        assertThat(Paint.of(looks, WHOLE)).isEqualTo(Paint.UNKNOWN);
        assertThat(Paint.UNKNOWN.shown(looks)).isSameAs(looks);
    }

    /** In every frame of a swing there are some of any one length; paint is what most are of. */
    @Test
    void oneLengthAmongManyIsNoPaint() {
        List<Look> looks = new ArrayList<>();
        for (int t = 0; t < 60; t++) {
            Fit fit = fit(60 + t, 380, 26 + 0.7 * t);
            looks.add(new Look(t / 60.0, List.of(fit), fit));
        }
        assertThat(Paint.of(looks, WHOLE)).isEqualTo(Paint.UNKNOWN);
    }

    @Test
    void aRodThatIsHeldStillDoesNotTellPaintFromLine() {
        assertThat(Paint.of(swing(4, t -> 40), WHOLE)).isEqualTo(Paint.UNKNOWN);
    }

    @Test
    void aLengthFromCurvesThatEndBeforeThePaintIsTooShort() {
        List<Look> few = swing(60, t -> 40);
        assertThat(Paint.of(few, ROD).with(ROD, few.subList(1, 3))).isSameAs(ROD);
        List<Look> all =
                few.stream().filter(l -> l.chosen().faint().beyondPx() > 0).toList();
        RodLength.Estimate told = Paint.of(few, ROD).with(ROD, all);
        assertThat(told.freePx()).isCloseTo(400, within(1e-6));
        assertThat(told.freeSdPx()).isGreaterThan(ROD.freeSdPx());
    }

    /** What is as faint for as long within a curve is the same paint, before another background; any other length is line. */
    @Test
    void aFaintEndOfThePaintsLengthIsTheRodsAnyOtherIsNot() {
        Paint paint = Paint.of(new RodLength.Estimate(40, 0, 1));
        Fit painted = fit(70, 400, 0).with(new FaintEnd(41, 0));
        Fit line = fit(70, 420, 0).with(new FaintEnd(20, 0));
        assertThat(paint.shown(painted).faint()).isEqualTo(FaintEnd.NONE);
        assertThat(paint.shown(painted).line()).isEqualTo(painted.line());
        assertThat(paint.shown(line)).isSameAs(line);
        assertThat(Paint.UNKNOWN.shown(painted)).isSameAs(painted);
    }

    /** A swing whose curves end so much beyond the tip, and turn where a paint begins that looks longer pointing right. */
    private static List<Look> turning(IntToDoubleFunction paintPx, IntToDoubleFunction beyondPx) {
        List<Look> out = new ArrayList<>();
        for (int t = 0; t < 60; t++) {
            double angle = 40 + 100 * t / 60.0;
            double paint = paintPx.applyAsDouble(t) * Math.exp(0.2 * Math.cos(Math.toRadians(angle)));
            double beyond = beyondPx.applyAsDouble(t);
            Fit fit = fit(angle, 400 + beyond, 0).with(FaintEnd.turned(paint + beyond));
            out.add(new Look(t / 60.0, List.of(fit), fit));
        }
        return out;
    }

    @Test
    void tipsAreAPaintsLengthBeyondWhereItBegins() {
        List<Look> looks = turning(t -> 40, t -> t % 4 == 1 ? -30 : t % 4 == 2 ? 10 + t : 0);
        Paint paint = Paint.of(looks, WHOLE);
        List<Look> told = HiddenTips.told(paint.shown(looks), HAND, WHOLE);
        for (int t = 0; t < 60; t++) {
            Fit fit = told.get(t).chosen();
            assertThat(fit.line().length()).isCloseTo(400, within(2.5));
            assertThat(fit.faint()).isEqualTo(FaintEnd.TOLD);
        }
    }

    /** The line of a dark rod, which shows for any length: where it begins is the tip, farther out than a curve may else run on too. */
    @Test
    void lineTurnsAtAnyLengthFromItsEndAndTheTurnIsTheTip() {
        List<Look> looks = turning(t -> 0, t -> 5 + 2.4 * (t * 37 % 60));
        Paint paint = Paint.of(looks, WHOLE);
        assertThat(paint).isEqualTo(Paint.BARE);
        List<Look> told = HiddenTips.told(paint.shown(looks), HAND, WHOLE);
        for (int t = 0; t < 60; t++) {
            Fit fit = told.get(t).chosen();
            assertThat(fit.line().length()).isCloseTo(400, within(2.5));
            assertThat(fit.faint()).isEqualTo(FaintEnd.TOLD);
        }
        assertThat(paint.with(WHOLE, looks)).isSameAs(WHOLE);
    }

    /** Where few curves turn it is the background that does. */
    @Test
    void aFewTurnsAreByChance() {
        List<Look> all = turning(t -> 0, t -> 5 + 2.4 * (t * 37 % 60));
        List<Look> few = new ArrayList<>();
        for (int t = 0; t < 600; t++) {
            Look look = all.get(t % 60);
            few.add(t % 60 < 5 ? look : look.with(look.chosen().with(FaintEnd.NONE)));
        }
        assertThat(Paint.of(few, WHOLE)).isEqualTo(Paint.UNKNOWN);
    }

    /** The blank that ends where its paint begins may lack it; hand and length tell. */
    @Test
    void aCurveThatDoesNotTurnMayLackThePaint() {
        Paint paint = Paint.of(new RodLength.Estimate(40, 0, 1));
        Fit cut = fit(70, 360, 0);
        assertThat(paint.shown(cut).line()).isEqualTo(cut.line());
        assertThat(paint.shown(cut).faint().paint().lackPx()).isCloseTo(40, within(1e-9));
        double step = HiddenTips.STEP * 400;
        EndPrice known = EndPrice.of(paint.shown(cut), null, 400, EndPrice.Hand.KNOWN);
        EndPrice unknown = EndPrice.of(cut, null, 400, EndPrice.Hand.KNOWN);
        int lacking = (int) Math.round(40 / step);
        assertThat(known.of(lacking)).isLessThan(unknown.of(lacking));
        assertThat(known.of(lacking + 5)).isEqualTo(unknown.of(lacking + 5));
        assertThat(known.of(0)).isZero();
    }

    @Test
    void anEndThatThePaintTellsIsHardlyElsewhere() {
        Fit told = fit(70, 400, 0).with(FaintEnd.TOLD);
        EndPrice price = EndPrice.of(told, null, 400, EndPrice.Hand.KNOWN);
        EndPrice other = EndPrice.of(fit(70, 400, 0), null, 400, EndPrice.Hand.KNOWN);
        for (int steps : new int[] {-8, 8}) {
            assertThat(price.of(steps)).isGreaterThan(1.9 * other.of(steps));
        }
    }

    /** A dark blank whose last 40 pixels are light, before an even background, in noise of one unit. */
    @Test
    void aFitTellsWhereALightTipBegins() {
        Random noise = new Random(6);
        int w = 640;
        int h = 560;
        float[] values = new float[w * h];
        Point along = new Point(Math.cos(1), -Math.sin(1));
        for (int i = 0; i < values.length; i++) {
            Point p = new Point(i % w + 0.5, i / w + 0.5).minus(HAND);
            double s = p.dot(along);
            boolean on = Math.abs(p.cross(along)) < 1.5 && s > 0 && s < 400;
            values[i] = (float) (noise.nextGaussian() + (!on ? 0 : s < 360 ? -25 : 20));
        }
        Polyline seed = fit(Math.toDegrees(1), 400, 0).line();
        BlankFitter fitter = new BlankFitter(560, HAND, 400);
        Fit fit = fitter.fit(new Plane(w, h, values), seed, 8, 6);
        assertThat(fit.faint().paint().turnedPx()).isCloseTo(40, within(2.5));
        Paint paint = Paint.of(new RodLength.Estimate(40, 0, 1));
        Fit painted = fitter.painted(paint).fit(new Plane(w, h, values), seed, 8, 6);
        assertThat(painted.faint()).isEqualTo(FaintEnd.TOLD);
        assertThat(painted.line().last().distance(seed.last())).isLessThan(2.5);
    }

    @Test
    void aFaintPartIsToldFromMottledOnes() {
        Random noise = new Random(3);
        double[] even = new double[200];
        double[] mottled = new double[200];
        double[] fainter = new double[200];
        for (int i = 0; i < 200; i++) {
            even[i] = 20 + 3 * noise.nextGaussian();
            mottled[i] = 14 + 8 * Math.sin(i / 6.0) + noise.nextGaussian();
            fainter[i] = i < 178 ? even[i] : 4 + noise.nextGaussian();
        }
        assertThat(FaintEnd.within(even)).isZero();
        assertThat(FaintEnd.within(mottled)).isZero();
        assertThat(FaintEnd.within(fainter)).isCloseTo(22, within(1));
        assertThat(FaintEnd.within(new double[12])).isZero();
    }

    /** A dark blank from the hand on and more beyond it, of another strength, in noise of one unit. */
    private static Plane picture(double onPx, double strength) {
        int w = 640;
        int h = 560;
        float[] values = new float[w * h];
        Random noise = new Random(4);
        Point along = new Point(Math.cos(1), -Math.sin(1));
        for (int i = 0; i < values.length; i++) {
            Point p = new Point(i % w + 0.5, i / w + 0.5).minus(HAND);
            double s = p.dot(along);
            boolean beside = Math.abs(p.cross(along)) < 1.5;
            double line = s < 360 ? -30 : s < 360 + onPx ? strength : 0;
            values[i] = (float) (noise.nextGaussian() + (beside && s > 0 ? line : 0));
        }
        return new Plane(w, h, values);
    }

    @Test
    void whatGoesOnFaintlyIsFollowedToItsEnd() {
        Polyline seen = fit(Math.toDegrees(1), 360, 0).line();
        for (double strength : new double[] {5, -5}) {
            assertThat(FaintEnd.of(new double[100], picture(42, strength), seen, 2, Double.NaN)
                            .beyondPx())
                    .isCloseTo(42, within(4.0));
        }
        assertThat(FaintEnd.of(new double[100], picture(0, 0), seen, 2, Double.NaN)
                        .beyondPx())
                .isLessThan(6);
        assertThat(FaintEnd.of(new double[100], picture(42, 0.7), seen, 2, Double.NaN)
                        .beyondPx())
                .isLessThan(6);
    }

    /** Where the rest of the blank is much stronger, that is where it seems to end. */
    @Test
    void aFitTellsWhatGoesOnBeyondItsEnd() {
        Polyline seed = fit(Math.toDegrees(1) + 0.3, 340, 0).line();
        Fit fit = new BlankFitter(560, HAND, 400).fit(picture(42, 5), seed, 8, 6);
        assertThat(fit).isNotNull();
        assertThat(fit.line().last().distance(HAND)).isCloseTo(360, within(4.0));
        assertThat(fit.faint().beyondPx()).isCloseTo(42, within(6.0));
    }
}
