package bendline.simulate;

/**
 * The still picture without anything that moves, larger than the frame on all sides by a margin.
 *
 * @param width with margins, pixels
 * @param height with margins, pixels
 * @param margin pixels left, right, above and below the still frame
 * @param rgb packed 0xRRGGBB, row by row
 * @param water 1 where the surface of the water is seen, which ripples, else 0
 */
record Backdrop(int width, int height, int margin, int[] rgb, byte[] water) {}
