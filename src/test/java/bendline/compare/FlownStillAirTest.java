package bendline.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import bendline.analysis.Launched;
import bendline.analysis.Reach;
import bendline.flight.DoubtfulShot;
import bendline.flight.Flyer;
import bendline.flight.Shot;
import bendline.scene.Conditions;
import bendline.scene.Setup;
import bendline.stroke.Measure;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Throws that are flown in a wind and held against the same throws flown without. */
class FlownStillAirTest {

    private static final double SPEED = 44;
    private static final double ANGLE_DEG = 38;

    private static Setup kit(double clipM) {
        Conditions told = new Conditions(
                new Conditions.Rig(Conditions.RigType.FEEDER_LOADED, null, null, null, null),
                Conditions.Tackle.NONE,
                Conditions.Wind.NONE,
                new Conditions.Outcome(null, clipM > 0 ? clipM : null, null, null));
        return Setup.NONE.withConditions(told).withMass(0.074);
    }

    private static double flown(Wind wind) {
        Conditions c = kit(0).conditions();
        Setup windy = kit(0).withConditions(new Conditions(
                c.rig(),
                c.tackle(),
                new Conditions.Wind(wind.speedMps(), wind.fromDeg(), null),
                Conditions.Outcome.NONE));
        DoubtfulShot shot = Reach.throwing(windy, Launched.told(SPEED, 1, ANGLE_DEG, 2.0));
        Shot clear = shot.shot();
        return new Flyer().fly(clear).distanceM();
    }

    private static Cast cast(Wind wind, double metres, Setup setup) {
        Measure angle = new Measure("launchAngleDeg", "launch angle", "deg", ANGLE_DEG, 2.0, "for this test");
        return new Cast("A", null, Map.of(), wind, Cast.distance(metres, 0.5, "wraps"), List.of(angle))
                .withSetup(setup);
    }

    @Test
    void aFollowingAndAHeadWindAreTakenOutOfTheDistance() {
        double still = flown(Sets.CALM);
        for (Wind wind : List.of(new Wind(6, 180), new Wind(6, 0), new Wind(5, 150))) {
            double measured = flown(wind);
            Measure told = StillAir.FLOWN.of(cast(wind, measured, kit(0)));
            assertThat(told.value()).as("in " + wind + " it went " + measured).isNotNull();
            // Calm is up to half a metre a second of wind here.
            assertThat(told.value()).isCloseTo(still, within(0.015 * still));
            assertThat(told.plusMinus()).isGreaterThan(0.3);
        }
        assertThat(flown(new Wind(6, 180))).isGreaterThan(1.03 * still);
    }

    @Test
    void whatCannotBeTakenOutIsNotGuessed() {
        Wind wind = new Wind(6, 180);
        assertThat(StillAir.FLOWN.of(cast(wind, 80, Setup.NONE)).basis()).contains("weight of the rig");
        assertThat(StillAir.FLOWN.of(cast(wind, 80, kit(80))).basis()).contains("clip stopped the rig");
        Cast unwritten =
                new Cast("A", null, Map.of(), null, Cast.distance(80, 1, "wraps"), List.of()).withSetup(kit(0));
        assertThat(StillAir.FLOWN.of(unwritten).basis()).contains("wind was not written down");
    }

    @Test
    void inNextToNoWindTheMeasuredDistanceStands() {
        Cast calm = cast(Sets.CALM, 80, Setup.NONE);
        assertThat(StillAir.FLOWN.of(calm)).isEqualTo(calm.distance());
    }
}
