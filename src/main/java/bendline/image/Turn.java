package bendline.image;

/**
 * One of the eight ways to lay a picture on a square grid again: an optional mirroring (left becomes right) followed by a
 * clockwise turn.
 *
 * @param clockwiseDegrees 0, 90, 180 or 270
 * @param mirrored whether left and right are swapped before the turn
 */
public record Turn(int clockwiseDegrees, boolean mirrored) {

    /** Leaves the picture as it is. */
    public static final Turn NONE = new Turn(0, false);

    private static final int BLOCK = 32;

    /** Checks the angle. */
    public Turn {
        if (clockwiseDegrees < 0 || clockwiseDegrees >= 360 || clockwiseDegrees % 90 != 0) {
            throw new IllegalArgumentException("a turn is 0, 90, 180 or 270 degrees, got " + clockwiseDegrees);
        }
    }

    /**
     * The turn nearest to a linear map of stored to shown pixel offsets, {@code x' = a·x + c·y, y' = b·x + d·y}, y down.
     *
     * @return {@link #NONE} where the map is degenerate
     */
    public static Turn nearest(double a, double b, double c, double d) {
        double determinant = a * d - b * c;
        if (!(Math.abs(determinant) > 0)) {
            return NONE;
        }
        boolean mirrored = determinant < 0;
        double sign = mirrored ? -1 : 1;
        double angle = Math.toDegrees(Math.atan2(sign * b - c, sign * a + d));
        return new Turn(Math.floorMod(Math.round(angle / 90) * 90, 360), mirrored);
    }

    /** The turn that takes the upright picture back to the stored one. */
    public Turn inverse() {
        return mirrored ? this : new Turn((360 - clockwiseDegrees) % 360, false);
    }

    /** This turn and after it another. */
    public Turn then(Turn next) {
        // A mirroring passed through a turn reverses it: mirror after turn by a is turn by -a after mirror.
        int own = next.mirrored ? 360 - clockwiseDegrees : clockwiseDegrees;
        return new Turn((own + next.clockwiseDegrees) % 360, mirrored != next.mirrored);
    }

    /** Whether width and height change places. */
    public boolean swapsSides() {
        return clockwiseDegrees % 180 != 0;
    }

    /** Whether nothing changes. */
    public boolean isNone() {
        return clockwiseDegrees == 0 && !mirrored;
    }

    /**
     * Lays a raster out anew. Made for pictures that are on the heap already; a native one is turned faster by
     * the clip reader itself.
     *
     * @param source {@code width · height · bytesPerPixel} bytes, rows from the top
     * @param width of the source
     * @param height of the source
     * @param bytesPerPixel interleaved bytes of a pixel, kept in their order
     * @return the source itself where nothing changes, else a new array
     */
    public byte[] apply(byte[] source, int width, int height, int bytesPerPixel) {
        if (isNone()) {
            return source;
        }
        byte[] target = new byte[source.length];
        int shownWidth = swapsSides() ? height : width;
        int[] across = {1, 0};
        int[] down = {0, 1};
        int column0 = corner(across, down, width, height)[0];
        int row0 = corner(across, down, width, height)[1];
        int stepX = across[1] * shownWidth + across[0];
        int stepY = down[1] * shownWidth + down[0];
        int origin = row0 * shownWidth + column0;
        for (int top = 0; top < height; top += BLOCK) {
            int bottom = Math.min(height, top + BLOCK);
            for (int left = 0; left < width; left += BLOCK) {
                int right = Math.min(width, left + BLOCK);
                block(source, target, width, bytesPerPixel, left, top, right, bottom, origin, stepX, stepY);
            }
        }
        return target;
    }

    /** Fills in where a step across and a step down the source lead, and returns where its first pixel goes. */
    private int[] corner(int[] across, int[] down, int width, int height) {
        int c = new int[] {1, 0, -1, 0}[clockwiseDegrees / 90];
        int s = new int[] {0, 1, 0, -1}[clockwiseDegrees / 90];
        int flip = mirrored ? -1 : 1;
        across[0] = c * flip;
        across[1] = s * flip;
        down[0] = -s;
        down[1] = c;
        int column = (across[0] < 0 ? width - 1 : 0) + (down[0] < 0 ? height - 1 : 0);
        int row = (across[1] < 0 ? width - 1 : 0) + (down[1] < 0 ? height - 1 : 0);
        return new int[] {column, row};
    }

    private static void block(
            byte[] source,
            byte[] target,
            int width,
            int bytesPerPixel,
            int left,
            int top,
            int right,
            int bottom,
            int origin,
            int stepX,
            int stepY) {
        for (int y = top; y < bottom; y++) {
            int to = origin + y * stepY + left * stepX;
            int from = y * width + left;
            if (bytesPerPixel == 1) {
                for (int x = left; x < right; x++, from++, to += stepX) {
                    target[to] = source[from];
                }
            } else {
                for (int x = left; x < right; x++, from++, to += stepX) {
                    for (int k = 0; k < bytesPerPixel; k++) {
                        target[to * bytesPerPixel + k] = source[from * bytesPerPixel + k];
                    }
                }
            }
        }
    }
}
