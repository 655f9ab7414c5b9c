package bendline.flight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import bendline.flight.LossFit.Fitted;
import bendline.flight.LossFit.Kind;
import bendline.flight.LossFit.Known;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Best angles, fitted losses, still air, gains and intervals. */
class OutlookTest {

    private static final Doubt USUAL = new Doubt(1.5, Math.toRadians(2), 0.3, 0.01, 0.15, 0.04, 0.25, 0.3, 1);

    private static Shot feeder() {
        return Shots.strong()
                .with(Rig.feeder(0.074, 0.022, 0.035, false))
                .with(new Wind(-4, 1, Wind.Profile.OVER_WATER));
    }

    /** Quadratic drag on level ground, lengths over v²/g; the same table as for the flights, worked out by another program. */
    @ParameterizedTest
    @CsvSource({
        "0, 45.000, 1.000000",
        "0.25, 43.672, 0.842049",
        "1, 40.978, 0.593607",
        "2, 38.780, 0.441384",
        "5, 35.325, 0.265414"
    })
    void theBestAngleIsThatOfTheTable(double eps, double angleDeg, double range) {
        double v = 30;
        double length = v * v / Shots.G;
        BestAngle best = BestAngle.of(Shots.bare(v, 30, 0, eps / length));
        assertThat(Math.toDegrees(best.angleRad())).isCloseTo(angleDeg, within(0.15));
        assertThat(best.distanceM() / length).isCloseTo(range, within(2e-4));
    }

    /** In a vacuum from a height: {@code sin² = 1 / (2 + 2 g h / v²)}, 42.2712° for 14 m/s and 2.1 m (shot put, textbook). */
    @Test
    void fromAHeightTheBestAngleIsFlatter() {
        BestAngle best = BestAngle.of(Shots.bare(14, 30, 2.1, 0));
        assertThat(Math.toDegrees(best.angleRad())).isCloseTo(42.2712, within(0.15));
    }

    /** In a vacuum on level ground the range goes as sin 2a, so that 3 % are given up half of acos(0.97) either side. */
    @Test
    void goodAnglesGiveUpThreePercent() {
        Shot s = Shots.bare(30, 45, 0, 0);
        double[] good = BestAngle.of(s).range(s, 0.03);
        double half = Math.toDegrees(Math.acos(0.97)) / 2;
        assertThat(Math.toDegrees(good[0])).isCloseTo(45 - half, within(0.1));
        assertThat(Math.toDegrees(good[1])).isCloseTo(45 + half, within(0.1));
    }

    @Test
    void headwindWantsFlatterAndTailWindSteeper() {
        Shot s = Shots.strong();
        double still = BestAngle.of(s).angleRad();
        assertThat(BestAngle.of(s.with(new Wind(-6, 0, Wind.Profile.OVER_WATER)))
                        .angleRad())
                .isLessThan(still);
        assertThat(BestAngle.of(s.with(new Wind(6, 0, Wind.Profile.OVER_WATER))).angleRad())
                .isGreaterThan(still);
    }

    @Test
    void aLossThatWasThereIsFoundAgainFromDistances() {
        Shot s = feeder();
        double true1 = 3.2;
        double far = Shots.distance(s.with(s.tackle().withLoss(true1)));
        Shot other = s.with(s.start().atSpeed(48));
        double far2 = Shots.distance(other.with(other.tackle().withLoss(true1)));
        Fitted f = LossFit.fit(List.of(
                new Known(new DoubtfulShot(s, Doubt.NONE), Kind.DISTANCE, far, 1),
                new Known(new DoubtfulShot(other, Doubt.NONE), Kind.DISTANCE, far2, 1)));
        assertThat(f.loss()).isCloseTo(true1, within(0.1));
        assertThat(f.plusMinus()).isBetween(0.05, 1.0);
        assertThat(f.casts()).isEqualTo(2);
    }

    @Test
    void aLossIsFoundFromTheTimeToTheClip() {
        Shot s = feeder();
        Shot clipped = s.with(s.tackle().withLoss(3.2).clippedAt(80));
        double tight = new Flyer().fly(clipped).tightSeconds();
        Fitted f = LossFit.fit(
                List.of(new Known(new DoubtfulShot(clipped, Doubt.NONE), Kind.SECONDS_TO_CLIP, tight, 0.01)));
        assertThat(f.loss()).isCloseTo(3.2, within(0.25));
    }

    @Test
    void aDistanceThatCantBeIsRefusedWithWhatToCheck() {
        Known tooFar = new Known(new DoubtfulShot(feeder(), Doubt.NONE), Kind.DISTANCE, 220, 1);
        assertThatThrownBy(() -> LossFit.fit(List.of(tooFar)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("without any loss")
                .hasMessageContaining("check");
    }

    /** The fit with the wrong drag still gives the right distance: the loss takes up what is wrong. */
    @Test
    void aFittedLossPredictsThoughTheDragIsWrong() {
        Shot real = feeder();
        Shot believed = real.with(real.rig().withDrag(0.85));
        double far = Shots.distance(real);
        Fitted f = LossFit.fit(List.of(new Known(new DoubtfulShot(believed, Doubt.NONE), Kind.DISTANCE, far, 1)));
        Shot slower = believed.with(believed.start().atSpeed(48))
                .with(believed.tackle().withLoss(f.loss()));
        assertThat(Shots.distance(slower))
                .isCloseTo(Shots.distance(real.with(real.start().atSpeed(48))), within(1.0));
    }

    /** What was thrown into the wind and measured comes back as the same throw without it. */
    @Test
    void stillAirUndoesTheWind() {
        Shot s = feeder();
        double measured = Shots.distance(s);
        double still = Shots.distance(s.with(Wind.NONE));
        Answer a = StillAir.of(new DoubtfulShot(s.with(s.start().atSpeed(20)), USUAL), measured, 1);
        assertThat(a.value()).isCloseTo(still, within(2.0));
        assertThat(a.low()).isLessThan(still);
        assertThat(a.high()).isGreaterThan(still);
        Answer exact = StillAir.of(new DoubtfulShot(s, Doubt.NONE), measured, 1e-6);
        assertThat(exact.value()).isCloseTo(still, within(0.1));
    }

    /** The stated 68 % must hold the truth in about 68 of 100 drawn truths: other draws than those the interval is made of. */
    @Test
    void intervalsHoldTheTruthAsOftenAsTheySay() {
        DoubtfulShot s = new DoubtfulShot(feeder(), USUAL);
        double[] far = s.each(Draws.normal(96), x -> Shots.distance(x));
        Answer a = Answer.of(far, "m", "");
        java.util.Random random = new java.util.Random(8);
        int inside = 0;
        for (int i = 0; i < 400; i++) {
            double[] z = random.doubles(Draws.PARTS, 0, 1).map(u -> 0).toArray();
            for (int k = 0; k < z.length; k++) {
                z[k] = random.nextGaussian();
            }
            double truth = Shots.distance(s.drawn(z));
            inside += truth >= a.low() && truth <= a.high() ? 1 : 0;
        }
        assertThat(inside / 400.0).isBetween(0.60, 0.76);
    }

    @Test
    void gainsHaveTheRightSignsAndAreRankedByEffort() {
        Shot s = feeder().with(feeder().start().atAngle(Math.toRadians(50)));
        List<Gain> gains = Gain.ranked(new DoubtfulShot(s, USUAL), Change.all(s, 3.9, BestAngle.of(s), noLimits()));
        assertThat(gains).hasSize(9).allSatisfy(g -> {
            assertThat(g.metres().value()).as(g.change().id()).isPositive();
            assertThat(g.metres().low()).isLessThanOrEqualTo(g.metres().value());
            assertThat(g.metres().high()).isGreaterThanOrEqualTo(g.metres().value());
        });
        assertThat(gains).isSortedAccordingTo((a, b) -> Double.compare(b.perEffort(), a.perEffort()));
        Gain.Together ten = Gain.towards(new DoubtfulShot(s, USUAL), gains, 10);
        assertThat(ten.metres().value()).isGreaterThanOrEqualTo(10);
    }

    /** One metre a second more, by a difference of two flights, is half of what the step of two says. */
    @Test
    void aGainIsTheDifferenceOfTwoFlights() {
        Shot s = feeder();
        Gain g = Gain.ranked(new DoubtfulShot(s, Doubt.NONE), Change.all(s, null, BestAngle.of(s), noLimits())).stream()
                .filter(x -> x.change().id().equals("faster"))
                .findFirst()
                .orElseThrow();
        double two = Shots.distance(s.with(s.start().atSpeed(s.start().speedMps() + 2))) - Shots.distance(s);
        assertThat(g.metres().value()).isCloseTo(two, within(0.05));
    }

    /** Nothing past a limit is offered. */
    @Test
    void aHeavierRigIsNotOfferedToARodThatCantCarryIt() {
        Shot s = feeder();
        KitLimits.Kit weak = new KitLimits.Kit(0.074, null, null, null, 0.08, null);
        assertThat(Change.all(s, null, BestAngle.of(s), weak)).noneMatch(c -> c.id().equals("heavier-strip"));
        assertThat(Change.all(s, null, BestAngle.of(s), noLimits())).anyMatch(c -> c.id().equals("heavier-strip"));
        KitLimits.Kit thinLeader = new KitLimits.Kit(0.074, 60.0, null, null, null, null);
        assertThat(Change.all(s, null, BestAngle.of(s), thinLeader))
                .noneMatch(c -> c.id().equals("thinner-line") || c.id().equals("heavier-strip"));
    }

    /** Tournament rules of the UK Surfcasting Federation: 0.25 mm at least for 50 to 100 g. */
    @Test
    void aThinnerLineIsOfferedOnlyDownToTheLimit() {
        Shot thick = feeder();
        thick = thick.with(thick.tackle().withLine(thick.tackle().line().withDiameter(0.28e-3)));
        KitLimits.Kit allowed = new KitLimits.Kit(0.074, null, null, 0.28e-3, null, null);
        assertThat(Change.all(thick, null, BestAngle.of(thick), allowed)).anyMatch(c -> c.id().equals("thinner-line"));
        Shot thin = thick.with(thick.tackle().withLine(thick.tackle().line().withDiameter(0.26e-3)));
        KitLimits.Kit atLimit = new KitLimits.Kit(0.074, null, null, 0.26e-3, null, null);
        assertThat(Change.all(thin, null, BestAngle.of(thin), atLimit)).noneMatch(c -> c.id().equals("thinner-line"));
    }

    private static KitLimits.Kit noLimits() {
        return new KitLimits.Kit(null, null, null, null, null, null);
    }
}
