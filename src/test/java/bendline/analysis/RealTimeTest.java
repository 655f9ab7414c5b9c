package bendline.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import bendline.footage.ClipInfo;
import bendline.footage.SlowMotion;
import bendline.geometry.Point;
import bendline.scene.Setup;
import bendline.scene.Setup.Side;
import bendline.stroke.ColouredBob;
import bendline.stroke.Event;
import bendline.stroke.EventKind;
import bendline.stroke.Gravity;
import bendline.stroke.Kinematics;
import bendline.stroke.Pace;
import bendline.stroke.SlantedFall;
import bendline.stroke.Stroke;
import bendline.trace.Trace;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * The product's own clock-keeping on real motion: the bob of a real pendulum and a ball that really falls, put in the place of a
 * rig. What is made up is the rod about them; what moves, when and how far, is as filmed.
 */
class RealTimeTest {

    private static final String FITS = "The clip's time fits gravity";
    private static final String ALARM = "Check the slow-motion factor";
    private static final SlowMotion AS_PLAYED = new SlowMotion(1, "as played: nothing tells", false);

    /**
     * Where the rope hangs from, above the picture: where its lines at either end of the swing meet, by eye. Only how wide the bob
     * swings is read from it, which changes the period by 0.3 %.
     */
    private static final Point NAIL = new Point(283, -184);

    /** Four seconds of frames: as long as a rig is seen to wait before a cast. */
    private static final int WAIT = 240;

    /** Frame of the release, from the clip's description: the fall is in frames 118 to 201. */
    private static final int RELEASE = 118;

    /** The drop as a user would give it: the maker's 25 cm of rope, not what the period would make of it. */
    private static final Setup ROPE = new Setup(null, null, 0.25, null, null, null, List.of());

    private static final Setup WALL = new Setup(null, SlantedFall.HEIGHT_M, null, null, null, null, List.of());

    private static ColouredBob waiting(int from) {
        ColouredBob bob = ColouredBob.pendulum();
        return bob.seen(bob.places().subList(from, from + WAIT));
    }

    private static Trace hung(ColouredBob bob) {
        return bob.asRig(new Point(NAIL.x(), 700), NAIL);
    }

    /** The ball as a rig that flies from the tip of a rod that stands on the floor under the hand, so that its length is known. */
    private static Trace dropped(ColouredBob ball) {
        Point hand = ball.places().get(RELEASE - ColouredBob.FALL_FROM).point();
        return ball.asRig(new Point(hand.x(), SlantedFall.FLOOR), hand);
    }

    private static double release(ColouredBob ball) {
        return ball.places().get(RELEASE - ColouredBob.FALL_FROM).seconds();
    }

    private static List<String> notes(ColouredBob bob, double taken, Trace trace, Setup setup, List<Stroke> strokes) {
        ClipInfo info = bob.info().with(new SlowMotion(taken, "as you gave it")).with(List.of());
        return Timekeeper.checked(info, trace, setup, strokes).notes();
    }

    private static List<String> afterTheFall(ColouredBob ball, double taken) {
        double[] none = {};
        Kinematics k = new Kinematics(RELEASE, none, none, none, none, none, none, none, none, none);
        Event release = new Event(EventKind.RELEASE, release(ball), 0.01, RELEASE, "the clip's description");
        Stroke stroke = new Stroke(1, Side.RIGHT, RELEASE, RELEASE, k, Map.of(EventKind.RELEASE, release), List.of());
        return notes(ball, taken, dropped(ball), WALL, List.of(stroke));
    }

    private static void only(List<String> notes, String beginning) {
        assertThat(notes).singleElement().asString().startsWith(beginning);
    }

    @Test
    void aRealPendulumFitsGravityInEveryStretchOfFourSeconds() {
        int frames = ColouredBob.pendulum().places().size();
        for (int from = 0; from + WAIT <= frames; from += WAIT) {
            ColouredBob bob = waiting(from);
            only(notes(bob, 1, hung(bob), ROPE, List.of()), FITS);
        }
    }

    @Test
    void aRealPendulumTakenForSlowMotionRaisesTheAlarm() {
        ColouredBob bob = waiting(0);
        only(notes(bob, 4, hung(bob), ROPE, List.of()), ALARM);
        // And slow motion taken for real time, and for slower than it is.
        ColouredBob slow = bob.played(4, AS_PLAYED);
        only(notes(slow, 1, hung(slow), ROPE, List.of()), ALARM);
        only(notes(slow, 8, hung(slow), ROPE, List.of()), ALARM);
        only(notes(slow, 4, hung(slow), ROPE, List.of()), FITS);
    }

    @Test
    void theFactorOfARealPendulumPlayedFourTimesSlowerIsFound() {
        ColouredBob slow = waiting(0).played(4, AS_PLAYED);
        SlowMotion found = Timekeeper.inferred(slow.info(), hung(slow), ROPE).slowMotion();
        // Captured at 59.9 frames a second, so that the nearest rate of phones, 60, makes 4.007 of it; the pendulum
        // alone would make 4.09, as the rope is a little shorter than the way to the bob's middle.
        assertThat(found.factor()).isCloseTo(4, within(0.01));
        assertThat(found.basis()).contains("inferred").contains("swings once in");
        assertThat(found.told()).isTrue();
    }

    @Test
    void aRealPendulumInRealTimeOrOfUnknownLengthSetsNothing() {
        ColouredBob bob = waiting(0);
        assertThat(Timekeeper.inferred(bob.info(), hung(bob), ROPE)).isSameAs(bob.info());
        ColouredBob slow = bob.played(4, AS_PLAYED);
        assertThat(Timekeeper.inferred(slow.info(), hung(slow), Setup.NONE)).isSameAs(slow.info());
    }

    @Test
    void aRealFallFitsGravityWithTheFactorFromItsTag() {
        ColouredBob ball = ColouredBob.fall();
        double tag = ball.info().slowMotion().factor();
        only(afterTheFall(ball, tag), FITS);
        only(afterTheFall(SlantedFall.of(ball).squared(ball), tag), FITS);
    }

    @Test
    void aRealFallTakenForRealTimeOrForSlowerThanItIsRaisesTheAlarm() {
        ColouredBob ball = ColouredBob.fall();
        for (double wrong : new double[] {1, 8}) {
            only(afterTheFall(ball, wrong), ALARM);
            only(afterTheFall(SlantedFall.of(ball).squared(ball), wrong), ALARM);
        }
    }

    @Test
    void whatPullsARealFallDownIsGravityAlone() {
        ColouredBob ball = ColouredBob.fall();
        ColouredBob squared = SlantedFall.of(ball).squared(ball);
        Pace pace = Gravity.flying(dropped(squared), WALL, release(ball));
        assertThat(pace).isNotNull();
        // A feeder that climbs is pulled by 1.4 times gravity, a ball that falls by gravity less its drag: the pace
        // must lie off the true factor by just the root of that. To 5 % of g, for the reasons given in RealGravityTest.
        double g = 1.4 * Gravity.STANDARD * Math.pow(ball.info().slowMotion().factor() / pace.factor(), 2);
        assertThat(g).isCloseTo(Gravity.STANDARD, within(0.05 * Gravity.STANDARD));
        // Left at a slant, as a camera held up or down sees it, the pace is 5 % off that: under half its uncertainty.
        Pace slanted = Gravity.flying(dropped(ball), WALL, release(ball));
        assertThat(slanted).isNotNull();
        assertThat(slanted.away(pace.factor())).isLessThan(0.5);
    }
}
