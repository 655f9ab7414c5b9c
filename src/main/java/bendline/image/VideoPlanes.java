package bendline.image;

/**
 * A picture the way video holds it: a plane of brightness (16 to 235) and two planes of colour difference (16 to 240, 128 is
 * grey) of half the width and height, by the constants of ITU-R BT.709-6, items 3.2 to 3.5. The arrays are shared, and written to
 * by the methods below.
 *
 * @param width even
 * @param height even
 * @param luma {@code width · height} bytes
 * @param blue a quarter as many
 * @param red a quarter as many
 */
public record VideoPlanes(int width, int height, byte[] luma, byte[] blue, byte[] red) {

    private static final int BLACK = 16;
    private static final int GREY = 128;
    private static final double RED = 0.2126;
    private static final double BLUE = 0.0722;
    /** Products are in 1/65536. */
    private static final double LUMA_STEP = 65536 * 219.0 / 255;

    private static final double COLOUR_STEP = 65536 * 224.0 / 255;

    private static final int Y_R = (int) Math.round(LUMA_STEP * RED);
    private static final int Y_B = (int) Math.round(LUMA_STEP * BLUE);
    private static final int Y_G = (int) Math.round(LUMA_STEP) - Y_R - Y_B;
    private static final int HALF = (int) Math.round(COLOUR_STEP / 2);
    private static final int CB_R = (int) Math.round(-COLOUR_STEP * RED / (2 - 2 * BLUE));
    private static final int CB_G = -HALF - CB_R;
    private static final int CR_B = (int) Math.round(-COLOUR_STEP * BLUE / (2 - 2 * RED));
    private static final int CR_G = -HALF - CR_B;

    /** Checks that the arrays fit the size. */
    public VideoPlanes {
        int quarter = width / 2 * (height / 2);
        boolean even = width > 0 && height > 0 && width % 2 == 0 && height % 2 == 0;
        if (!even || luma.length != width * height || blue.length != quarter || red.length != quarter) {
            throw new IllegalArgumentException("planes of " + luma.length + ", " + blue.length + " and " + red.length
                    + " bytes do not make an even picture of " + width + "x" + height);
        }
    }

    /** A black picture. */
    public static VideoPlanes black(int width, int height) {
        byte[] luma = new byte[width * height];
        byte[] blue = new byte[luma.length / 4];
        byte[] red = new byte[luma.length / 4];
        java.util.Arrays.fill(luma, (byte) BLACK);
        java.util.Arrays.fill(blue, (byte) GREY);
        java.util.Arrays.fill(red, (byte) GREY);
        return new VideoPlanes(width, height, luma, blue, red);
    }

    /**
     * A picture of blue, green, red bytes; an odd last column or row is left out.
     *
     * @param bgr {@code 3 · width · height} bytes
     */
    public static VideoPlanes ofBgr(byte[] bgr, int width, int height) {
        VideoPlanes out = black(width / 2 * 2, height / 2 * 2);
        for (int y = 0; y < out.height; y += 2) {
            for (int x = 0; x < out.width; x += 2) {
                int at = 3 * (y * width + x);
                int below = at + 3 * width;
                int b = 0;
                int g = 0;
                int r = 0;
                for (int k = 0; k < 4; k++) {
                    int from = (k < 2 ? at : below) + 3 * (k & 1);
                    int pixelB = bgr[from] & 0xff;
                    int pixelG = bgr[from + 1] & 0xff;
                    int pixelR = bgr[from + 2] & 0xff;
                    out.luma[(y + k / 2) * out.width + x + (k & 1)] = (byte) (BLACK + luma(pixelR, pixelG, pixelB));
                    b += pixelB;
                    g += pixelG;
                    r += pixelR;
                }
                int quarter = y / 2 * (out.width / 2) + x / 2;
                out.blue[quarter] = (byte) (GREY + blue(r, g, b));
                out.red[quarter] = (byte) (GREY + red(r, g, b));
            }
        }
        return out;
    }

    /**
     * Copies a picture into this one, cut off at its edges.
     *
     * @param left even column of its upper left corner here
     * @param top even row
     */
    public void put(VideoPlanes part, int left, int top) {
        int columns = Math.min(part.width, width - left);
        int rows = Math.min(part.height, height - top);
        copy(part.luma, part.width, luma, width, left, top, columns, rows);
        copy(part.blue, part.width / 2, blue, width / 2, left / 2, top / 2, columns / 2, rows / 2);
        copy(part.red, part.width / 2, red, width / 2, left / 2, top / 2, columns / 2, rows / 2);
    }

    private static void copy(
            byte[] from, int fromWidth, byte[] to, int toWidth, int left, int top, int columns, int rows) {
        for (int y = 0; y < rows; y++) {
            System.arraycopy(from, y * fromWidth, to, (top + y) * toWidth + left, columns);
        }
    }

    /**
     * Lays a square of a drawing over the same square of this picture.
     *
     * @param argb the whole drawing, of this picture's width: alpha, then red, green, blue multiplied by it
     * @param left even
     * @param top even
     * @param side of the square, even; cut off at the picture's edges
     */
    public void cover(int[] argb, int left, int top, int side) {
        for (int y = top; y < Math.min(height, top + side); y += 2) {
            for (int x = left; x < Math.min(width, left + side); x += 2) {
                coverFour(argb, x, y);
            }
        }
    }

    private void coverFour(int[] argb, int x, int y) {
        int a = 0;
        int r = 0;
        int g = 0;
        int b = 0;
        for (int k = 0; k < 4; k++) {
            int at = (y + k / 2) * width + x + (k & 1);
            int p = argb[at];
            int alpha = p >>> 24;
            int pixelR = p >> 16 & 0xff;
            int pixelG = p >> 8 & 0xff;
            int pixelB = p & 0xff;
            luma[at] = (byte) (under(luma[at], alpha, 255, BLACK) + luma(pixelR, pixelG, pixelB));
            a += alpha;
            r += pixelR;
            g += pixelG;
            b += pixelB;
        }
        int quarter = y / 2 * (width / 2) + x / 2;
        blue[quarter] = (byte) (under(blue[quarter], a, 4 * 255, GREY) + blue(r, g, b));
        red[quarter] = (byte) (under(red[quarter], a, 4 * 255, GREY) + red(r, g, b));
    }

    /** What is left of a value under a drawing, which starts at the value of black. */
    private static int under(byte value, int alpha, int full, int black) {
        return ((value & 0xff) * (full - alpha) + black * alpha + full / 2) / full;
    }

    private static int luma(int r, int g, int b) {
        return Y_R * r + Y_G * g + Y_B * b + 32768 >> 16;
    }

    /** Of the sums over four pixels. */
    private static int blue(int r, int g, int b) {
        return CB_R * r + CB_G * g + HALF * b + 131072 >> 18;
    }

    private static int red(int r, int g, int b) {
        return HALF * r + CR_G * g + CR_B * b + 131072 >> 18;
    }
}
