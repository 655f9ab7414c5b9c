package bendline.footage;

import bendline.image.Turn;

/**
 * How big a stored picture is when its pixels are square and it stands upright.
 *
 * @param squareWidth columns once pixels are square, before turning
 * @param squareHeight rows once pixels are square, before turning
 * @param divisor how many times smaller than stored, because the stored picture is larger than is worked on
 * @param turn what brings it upright
 */
record UprightSize(int squareWidth, int squareHeight, int divisor, Turn turn) {

    /** A little more than 4K, so that one frame of any clip takes at most this many bytes of grey. */
    static final int MOST_PIXELS = 9_000_000;

    /** Pixels this nearly square count as square: it bends no angle by more than 0.15°, and nothing need be scaled. */
    private static final double NEARLY_SQUARE = 0.005;

    /** The longer side of a pixel is stretched, never the shorter one squeezed, so no detail is lost below 4K. */
    static UprightSize of(int width, int height, double statedAspect, Turn turn) {
        double pixelAspect = Math.abs(statedAspect - 1) < NEARLY_SQUARE ? 1 : statedAspect;
        double squareWidth = pixelAspect > 1 ? width * pixelAspect : width;
        double squareHeight = pixelAspect < 1 ? height / pixelAspect : height;
        int divisor = 1;
        while (squareWidth * squareHeight / divisor / divisor > MOST_PIXELS) {
            divisor++;
        }
        return new UprightSize(rounded(squareWidth / divisor), rounded(squareHeight / divisor), divisor, turn);
    }

    private static int rounded(double side) {
        return Math.max(1, (int) Math.round(side));
    }

    int width() {
        return turn.swapsSides() ? squareHeight : squareWidth;
    }

    int height() {
        return turn.swapsSides() ? squareWidth : squareHeight;
    }

    /** Whether stored pixels of this size are already square. */
    boolean fits(int width, int height) {
        return width == squareWidth && height == squareHeight;
    }
}
