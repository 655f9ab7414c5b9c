package bendline.footage;

import bendline.image.Turn;

/**
 * How big a stored picture is when its pixels are square and it stands upright.
 *
 * @param storedWidth decoded columns
 * @param storedHeight decoded rows
 * @param squareWidth columns once pixels are square, before turning
 * @param squareHeight rows once pixels are square, before turning
 * @param turn what brings it upright
 */
record UprightSize(int storedWidth, int storedHeight, int squareWidth, int squareHeight, Turn turn) {

    /** The longer side of a pixel is stretched, never the shorter one squeezed, so no detail is lost. */
    static UprightSize of(int width, int height, double pixelAspect, Turn turn) {
        int squareWidth = pixelAspect > 1 ? (int) Math.round(width * pixelAspect) : width;
        int squareHeight = pixelAspect < 1 ? (int) Math.round(height / pixelAspect) : height;
        return new UprightSize(width, height, squareWidth, squareHeight, turn);
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
