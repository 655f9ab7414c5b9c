package bendline.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bendline.flight.Outlook;
import bendline.scene.Conditions;
import bendline.scene.Conditions.RigType;
import bendline.scene.Setup;
import java.util.List;
import org.junit.jupiter.api.Test;

class ReachTest {

    private static final Conditions.Rig FEEDER = new Conditions.Rig(RigType.FEEDER_LOADED, 0.06, 0.014, 0.022, 0.035);
    private static final Conditions.Tackle LINE = new Conditions.Tackle(null, null, 0.22e-3, null, null, null, null);
    private static final Conditions.Wind BREEZE = new Conditions.Wind(4.0, 0.0, null);
    private static final Launched STRONG = Launched.told(54.0, 1.5, 36.0, 2);

    private static Setup setup(Conditions.Outcome outcome) {
        return new Setup(3.9, 3.2, null, null, null, null, List.of(), new Conditions(FEEDER, LINE, BREEZE, outcome));
    }

    @Test
    void aLaunchAndAKitGiveADistanceWithAnInterval() {
        Outlook o = Reach.of(setup(Conditions.Outcome.NONE), STRONG);
        assertThat(o.distanceM().value()).isBetween(90.0, 125.0);
        assertThat(o.distanceM().plusMinus()).isBetween(3.0, 15.0);
        assertThat(o.stillAirM().value()).isGreaterThan(o.distanceM().value() + 5);
        assertThat(o.gains())
                .extracting(g -> g.change().id())
                .contains("stem", "faster", "best-angle")
                .as("0.22 mm is thinner than the rules for such a weight allow already")
                .doesNotContain("thinner-line");
        assertThat(o.nextTen()).isNotNull();
        assertThat(o.fitted()).isNull();
        assertThat(o.kit()).allSatisfy(p -> assertThat(p.basis()).isNotBlank());
    }

    @Test
    void aMeasuredDistanceFitsTheLossAndNarrowsTheAnswer() {
        Outlook before = Reach.of(setup(Conditions.Outcome.NONE), STRONG);
        Outlook after = Reach.of(setup(new Conditions.Outcome(null, null, 104.0, 1.0)), STRONG);
        assertThat(after.fitted()).isNotNull();
        assertThat(after.distanceM().value()).isBetween(100.0, 108.0);
        assertThat(after.gains().get(0).change().id())
                .isEqualTo(before.gains().get(0).change().id());
    }

    @Test
    void withoutASpeedItCantTellAndSaysWhy() {
        Launched unknown =
                new Launched(null, Double.NaN, "needs a length in metres", 36.0, 2, "seen", 60.0, null, Double.NaN);
        Outlook o = Reach.of(setup(Conditions.Outcome.NONE), unknown);
        assertThat(o.distanceM().value()).isNull();
        assertThat(o.distanceM().basis()).contains("needs a length in metres");
        assertThat(o.againstBestDeg().value()).isNull();
        assertThat(o.gains()).isEmpty();
        Outlook noMass = Reach.of(Setup.NONE, STRONG);
        assertThat(noMass.distanceM().basis()).contains("weight of the rig");
    }

    @Test
    void aDistanceWithoutASpeedIsPutIntoStillAirAllTheSame() {
        Outlook o = Reach.of(setup(new Conditions.Outcome(null, null, 104.0, null)), Launched.told(null, 0, 36.0, 2));
        assertThat(o.distanceM().value()).isNull();
        assertThat(o.stillAirM().value()).isBetween(108.0, 130.0);
        assertThat(o.notes()).anyMatch(n -> n.contains("must have left at about"));
        assertThat(o.gains()).isNotEmpty();
    }

    @Test
    void aDistanceThatTheClipMayHaveEndedSaysNothingOfTheLoss() {
        Outlook o = Reach.of(setup(new Conditions.Outcome(null, 106.0, 104.0, null)), STRONG);
        assertThat(o.fitted()).isNull();
        assertThat(o.notes()).anyMatch(n -> n.contains("near to the clip"));
        assertThat(o.reachesClip().value()).isBetween(0.0, 1.0);
    }

    @Test
    void theTimeToTheClipFitsTheLossToo() {
        Launched seen = new Launched(54.0, 1.0, "seen", 36.0, 1, "seen", 60.0, 3.3, 0.03);
        Outlook o = Reach.of(setup(new Conditions.Outcome(null, 90.0, null, null)), seen);
        assertThat(o.fitted() != null || o.notes().stream().anyMatch(n -> n.contains("could not be fitted")))
                .isTrue();
    }

    @Test
    void whatIsNotToldWidensTheAnswer() {
        Conditions bare = new Conditions(
                new Conditions.Rig(null, 0.06, 0.014, null, null),
                Conditions.Tackle.NONE,
                Conditions.Wind.NONE,
                Conditions.Outcome.NONE);
        Setup little = new Setup(3.9, 3.2, null, null, null, null, List.of(), bare);
        double wide = Reach.of(little, STRONG).distanceM().plusMinus();
        assertThat(wide)
                .isGreaterThan(1.2
                        * Reach.of(setup(Conditions.Outcome.NONE), STRONG)
                                .distanceM()
                                .plusMinus());
    }

    @Test
    void impossibleConditionsAreRefused() {
        assertThatThrownBy(() -> new Conditions.Rig(null, 90.0, null, null, null))
                .hasMessageContaining("empty rig");
        assertThatThrownBy(() -> new Conditions.Wind(60.0, null, null)).hasMessageContaining("wind");
        assertThatThrownBy(() -> new Conditions.Wind(null, 90.0, null)).hasMessageContaining("speed");
        assertThatThrownBy(() -> new Setup(
                        null,
                        null,
                        null,
                        0.12,
                        null,
                        null,
                        List.of(),
                        new Conditions(FEEDER, LINE, BREEZE, Conditions.Outcome.NONE)))
                .hasMessageContaining("does not fit");
    }
}
