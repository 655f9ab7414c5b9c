package bendline.technique;

import bendline.stroke.EventKind;
import java.util.List;

/** The faults that need the caster's body: where the hands are, what the lower one does, and the order of the chain. */
final class BodyFaults {

    private BodyFaults() {}

    static Fault lowHands() {
        return new Fault(
                "low-hands",
                "Low hands at the start of the push",
                List.of(
                        Criterion.any("the upper hand is well under the head", "low-hands.head"),
                        Criterion.any("it is hardly over the shoulders", "low-hands.shoulder")),
                2,
                List.of(EventKind.FORWARD_START, EventKind.RELEASE),
                "High hands: the push began with the upper hand {upperHandAgainstShoulder} above the shoulders.",
                "From low hands the way of your push is short and goes upwards, so the tip dips under the line of the cast before"
                        + " it rises.",
                "Stand as at the end of the backswing and stop there: the upper hand beside or over the head, the elbow out in"
                        + " front, the lower hand before the face. Ten slow casts that each begin with a look at the hand.");
    }

    static Fault weakPull() {
        return new Fault(
                "weak-pull",
                "Weak pull of the lower hand",
                List.of(
                        Criterion.any("the lower hand comes to the chest slowly", "weak-pull.speed"),
                        Criterion.any("it comes only a short way", "weak-pull.length")),
                2,
                List.of(EventKind.FORWARD_START, EventKind.FASTEST_TURN, EventKind.RELEASE),
                "Strong pull: the lower hand came to the chest at up to {lowerHandPullSpeed}.",
                "Your two hands turn the rod: one pushes, one pulls. Without the pull the upper hand has to push it round alone,"
                        + " later and slower.",
                "Half-power casts in which only the lower hand counts: as the upper arm straightens, draw the butt sharply to the"
                        + " breastbone and keep it there. Clear ground all round, and no more weight than usual.");
    }

    static Fault outOfOrder() {
        return new Fault(
                "out-of-order",
                "Body, hands and rod out of order",
                List.of(
                        Criterion.any(
                                "the body is fastest after the upper hand",
                                "out-of-order.hips",
                                "out-of-order.shoulders"),
                        Criterion.any("the rod turns fastest before the upper hand pushes", "out-of-order.turn")),
                1,
                List.of(EventKind.FORWARD_START, EventKind.FASTEST_TURN, EventKind.RELEASE),
                "In order: the upper hand was fastest {upperHandBeforeButt} before the rod turned fastest.",
                "Each link carries the next one. A rod that is turned before your hands have pushed, or hands that go before your"
                        + " body, have nothing behind them.",
                "Slow casts said aloud: hips, shoulders, push, turn. Begin with the weight going onto the front foot and let the"
                        + " rod turn last.");
    }
}
