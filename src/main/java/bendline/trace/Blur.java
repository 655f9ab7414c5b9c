package bendline.trace;

/** How wide a moving blank can be smeared. */
final class Blur {

    /** Turn during one exposure beyond which a blank is not followed, radians: 13 rad/s over a hundredth of a second. */
    private static final double LARGEST_TURN = 0.13;
    /** Width of the picture of a blank that stands still, pixels. */
    private static final double AT_REST_PX = 5;

    private Blur() {}

    /**
     * Widest picture of the blank at a distance from the hands, pixels. A blank turns about the hands, so its smear grows
     * with the distance; arms and legs are wide near the hands and so fall out.
     */
    static double widest(double fromHandsPx) {
        return Math.max(AT_REST_PX, AT_REST_PX / 2 + LARGEST_TURN * fromHandsPx);
    }
}
