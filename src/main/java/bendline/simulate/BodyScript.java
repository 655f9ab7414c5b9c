package bendline.simulate;

/**
 * What an angler's body does in one cast besides holding the rod: the trunk comes forward and turns towards the water with a
 * timing of its own. Times are real seconds from the start of the push to the fastest moment.
 *
 * @param trunkShare how much of its usual way back, forward and round the trunk goes, 0 to 1
 * @param handsLowerM how far under its usual place beside the head the upper hand is at the end of the backswing, metres, 0 to 0.7
 * @param hipsSeconds fastest moment of the hips, −0.3 to 0.6
 * @param shouldersSeconds fastest moment of the shoulders, −0.3 to 0.6
 * @param lowHands how plainly the hands are low
 * @param weakPull how plainly the lower hand does not pull
 * @param outOfOrder how plainly body, hands and rod are out of order
 */
public record BodyScript(
        double trunkShare,
        double handsLowerM,
        double hipsSeconds,
        double shouldersSeconds,
        Severity lowHands,
        Severity weakPull,
        Severity outOfOrder) {

    /** How much longer one hand alone takes for the turn. */
    private static final double SLOWER = 1.4;

    /** Checks the ranges. */
    public BodyScript {
        Ranges.check("share of the trunk's way", trunkShare, 0, 1);
        Ranges.check("hands lower by (m)", handsLowerM, 0, 0.7);
        Ranges.check("fastest hips after the push begins (s)", hipsSeconds, -0.3, 0.6);
        Ranges.check("fastest shoulders after the push begins (s)", shouldersSeconds, -0.3, 0.6);
    }

    /**
     * A cast whose hands push from beside the head, with a strong pull, hips before shoulders before hands.
     *
     * @param cast the hands' cast, whose timing of push and turn is kept
     */
    public static CastScript sound(CastScript cast) {
        double hand = cast.pushSeconds() / 2;
        return cast.embodied(
                cast.pushSeconds(),
                cast.turnDelaySeconds(),
                cast.turnSeconds(),
                new BodyScript(1, 0, hand - 0.10, hand - 0.05, Severity.NONE, Severity.NONE, Severity.NONE));
    }

    /**
     * The same from low hands.
     *
     * @param degree 0 for hands beside the head, 1 for hands in front of the belt
     */
    public static CastScript lowHands(CastScript cast, double degree) {
        Ranges.check("degree of low hands", degree, 0, 1);
        BodyScript b = body(sound(cast));
        return cast.embodied(
                cast.pushSeconds(),
                cast.turnDelaySeconds(),
                cast.turnSeconds(),
                new BodyScript(
                        1,
                        0.65 * degree,
                        b.hipsSeconds(),
                        b.shouldersSeconds(),
                        Severity.of(degree),
                        Severity.NONE,
                        Severity.NONE));
    }

    /**
     * The same with an upper hand that carries the rod round the lower one, which hardly moves before a chest that stays: pushed and
     * turned at once instead of pushed first, then turned by pulling the butt in.
     */
    public static CastScript weakPull(CastScript cast) {
        double seconds = SLOWER * cast.turnSeconds();
        double hand = seconds / 2;
        return cast.embodied(
                seconds,
                0,
                seconds,
                new BodyScript(0, 0, hand - 0.10, hand - 0.05, Severity.NONE, Severity.CLEAR, Severity.NONE));
    }

    /** The same with a body that follows its hands instead of carrying them. */
    public static CastScript bodyLast(CastScript cast) {
        double hand = cast.pushSeconds() / 2;
        return cast.embodied(
                cast.pushSeconds(),
                cast.turnDelaySeconds(),
                cast.turnSeconds(),
                new BodyScript(1, 0, hand + 0.16, hand + 0.14, Severity.NONE, Severity.NONE, Severity.CLEAR));
    }

    /** The same with a rod that is turned before the hands have pushed. */
    public static CastScript turnedFirst(CastScript cast) {
        double hand = cast.pushSeconds() / 2;
        double early = hand - cast.turnSeconds() / 2 - 0.12;
        return cast.embodied(
                cast.pushSeconds(),
                early,
                cast.turnSeconds(),
                new BodyScript(1, 0, hand - 0.10, hand - 0.05, Severity.NONE, Severity.NONE, Severity.CLEAR));
    }

    private static BodyScript body(CastScript cast) {
        BodyScript b = cast.body();
        if (b == null) {
            throw new IllegalArgumentException("the cast has no body of its own");
        }
        return b;
    }
}
