package bendline.flight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import bendline.flight.KitLimits.Caution;
import bendline.flight.KitLimits.Kit;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Practice numbers, limits of the kit, and what anglers say of each other's casts. */
class PracticeTest {

    /** All the sayings together, with plain numbers and one loss fitted to the first; common practice, no source. */
    @Test
    void whatAnglersSayHoldsTogetherWithOneFittedLoss() {
        List<CommonPractice.Row> rows = CommonPractice.rows();
        assertThat(rows.stream().filter(CommonPractice.Row::fitted)).hasSize(1);
        assertThat(rows)
                .hasSize(7)
                .allSatisfy(r -> assertThat(r.model()).as(r.what()).isBetween(r.from(), r.to()));
        assertThat(CommonPractice.fitted().loss()).isBetween(0.5, 8.0);
    }

    /** The plain numbers are not what makes it hold: with others, and the loss fitted anew, feeder and stem come out alike. */
    @ParameterizedTest
    @CsvSource({"52, 4, 0.20", "54, 6, 0.25", "58, 4, 0.25", "58, 6, 0.20", "50, 4, 0.22"})
    void theSayingsDontHangOnTheNumbersGiven(double speed, double headwind, double lineMm) {
        Shot lead = new Shot(
                new Shot.Start(speed, Math.toRadians(36), 5),
                Rig.bomb(0.09),
                new Shot.Tackle(Line.nylon(lineMm / 1000), Spool.USUAL, 0, Shots.NO_CLIP),
                new Wind(-headwind, 0, Wind.Profile.OVER_WATER),
                Air.STANDARD);
        double loss = LossFit.fit(
                        List.of(new LossFit.Known(new DoubtfulShot(lead, Doubt.NONE), LossFit.Kind.DISTANCE, 135, 1)))
                .loss();
        Shot feeder = lead.with(lead.tackle().withLoss(loss))
                .with(Rig.feeder(0.074, 0.022, 0.035, false))
                .with(lead.start().atSpeed(Change.speedWith(speed, 0.09, 0.074, 0)));
        double tumbling = Shots.distance(feeder);
        assertThat(tumbling).isBetween(104.0, 111.0);
        assertThat(Shots.distance(feeder.with(feeder.rig().withStem())) - tumbling)
                .isBetween(12.0, 17.0);
    }

    /** Sticks 12 ft apart, three published guides: 10 wraps are 40 yd, 36.58 m; 25 are 100 yd, 91.44 m. */
    @Test
    void wrapsAreThoseOfTheGuides() {
        Wraps sticks = new Wraps(12 * 0.3048);
        assertThat(sticks.metres(1)).isCloseTo(3.6576, within(1e-12));
        assertThat(sticks.metres(10)).isCloseTo(36.576, within(1e-9));
        assertThat(sticks.metres(25)).isCloseTo(91.44, within(1e-9));
        assertThat(sticks.of(91.44)).isEqualTo(new Wraps.Count(25, 0));
        assertThat(new Wraps(2).of(101.5).whole()).isEqualTo(50);
        assertThat(new Wraps(2).of(101.5).restM()).isCloseTo(1.5, within(1e-9));
        assertThatThrownBy(() -> new Wraps(30)).hasMessageContaining("sticks");
    }

    /** 112 turns of one reel and 124 of another for 100 m, so 100 turns are 80 to 90 m; common practice, no source. */
    @Test
    void turnsAndMetresAreThoseOfTheReel() {
        assertThat(ReelTurns.counted(100, 112).metresFor(100)).isBetween(80.0, 90.0);
        assertThat(ReelTurns.counted(100, 124).metresFor(100)).isBetween(80.0, 90.0);
        assertThat(ReelTurns.counted(100, 112).turnsFor(100)).isCloseTo(112, within(1e-9));
        assertThatThrownBy(() -> ReelTurns.counted(100, 12)).hasMessageContaining("in a turn");
    }

    /** A turn winds pi times the winding's diameter times the gearing: 60 mm and 4.9 give 0.9236 m (arithmetic). */
    @ParameterizedTest
    @CsvSource({"0.050, 5.2, 0.8168", "0.060, 4.9, 0.9236", "0.075, 4.3, 1.0132"})
    void aTurnOfTheFullSpoolWindsItsCircumferenceTimesTheGearing(double diameter, double gear, double metres) {
        Spool spool = new Spool(diameter, 0.03, 0.0015);
        double tenMetres = 10 / metres;
        // Over ten metres the spool empties by a few tenths of a millimetre at most.
        assertThat(ReelTurns.counted(10, tenMetres, spool, 0.2e-3).recoveryM(0)).isCloseTo(metres, within(0.005));
        assertThat(Math.PI * diameter * gear).isCloseTo(metres, within(1e-4));
    }

    @Test
    void anEmptySpoolWindsLessAndTurnsAddUp() {
        ReelTurns reel = ReelTurns.counted(100, 112, Spool.USUAL, 0.25e-3);
        assertThat(reel.recoveryM(0)).isGreaterThan(reel.recoveryM(50)).isGreaterThan(reel.recoveryM(100));
        assertThat(reel.turnsFor(100)).isCloseTo(112, within(1e-6));
        assertThat(reel.metresFor(112)).isCloseTo(100, within(1e-3));
        assertThat(reel.metresFor(reel.turnsFor(63))).isCloseTo(63, within(1e-3));
        // Line is conserved: what the winding lost is the line's volume over the packing.
        double d = Spool.USUAL.diameterM(150, 0.25e-3);
        double lost = Math.PI / 4 * (0.065 * 0.065 - d * d) * 0.03;
        assertThat(lost * 0.80).isCloseTo(150 * Math.PI / 4 * 0.25e-3 * 0.25e-3, within(1e-12));
    }

    /** Ten pounds to the ounce (published glossaries): 4 oz 40 lb, 6 oz 60 lb. */
    @ParameterizedTest
    @CsvSource({"4, 40", "6, 60"})
    void theLeaderRuleIsTenPoundsToTheOunce(double ounces, double pounds) {
        assertThat(KitLimits.leaderFor(ounces * 0.028349523) / 4.4482216).isCloseTo(pounds, within(1e-9));
    }

    @Test
    void aKitPastItsLimitsIsTold() {
        Kit weak = new Kit(0.09, 60.0, 70.0, 0.20e-3, 0.08, 40.0);
        assertThat(KitLimits.of(weak).stream().filter(Caution::passed).map(Caution::id))
                .containsExactlyInAnyOrder(
                        "leader-strength", "casting-weight", "line-diameter", "leader-weaker", "clip-pull");
        assertThat(KitLimits.of(weak)).allSatisfy(c -> assertThat(c.source()).isNotBlank());
        Kit sound = new Kit(0.09, 170.0, 70.0, 0.26e-3, 0.12, 10.0);
        assertThat(KitLimits.of(sound)).isNotEmpty().noneMatch(Caution::passed);
        assertThat(KitLimits.of(new Kit(null, null, null, null, null, null))).isEmpty();
    }

    /** UK Surfcasting Federation tournament rules: 0.25 mm to 100 g, 0.28 to 125, 0.31 to 150, 0.35 above. */
    @ParameterizedTest
    @CsvSource({"90, 0.25", "113, 0.28", "150, 0.31", "175, 0.35"})
    void theTournamentsLineIsThatOfTheRules(double grams, double leastMm) {
        assertThat(passedDiameter(grams, leastMm)).isFalse();
        assertThat(passedDiameter(grams, leastMm - 0.01)).isTrue();
    }

    private static boolean passedDiameter(double grams, double mm) {
        return KitLimits.of(new Kit(grams / 1000, null, null, mm / 1000, null, null)).stream()
                .anyMatch(Caution::passed);
    }

    /** Ninety grams is about three ounces; an ounce is 28.349523 g exactly. */
    @Test
    void ninetyGramsIsAboutThreeOunces() {
        assertThat(90 / 28.349523).isCloseTo(3, within(0.2));
        assertThat(CommonPractice.rows().get(5).model()).isCloseTo(90 / 28.349523, within(1e-6));
    }
}
