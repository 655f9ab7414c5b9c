package bendline.image;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;

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

    /** Pixels of one byte are moved in squares of this side, in eight registers; see {@link #transpose}. */
    private static final int SQUARE = 8;

    /** Rows that are finished before the next ones begin, so that what is written stays in the cache; a multiple of the square. */
    private static final int BLOCK = 64;

    private static final VarHandle EIGHT = MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);

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
     * Lays a raster out anew.
     *
     * @param source at least {@code width · height · bytesPerPixel} bytes, rows from the top
     * @param width of the source
     * @param height of the source
     * @param bytesPerPixel interleaved bytes of a pixel, kept in their order
     * @return the source itself where nothing changes, else a new array
     */
    public byte[] apply(byte[] source, int width, int height, int bytesPerPixel) {
        return isNone()
                ? source
                : apply(source, width, height, bytesPerPixel, new byte[width * height * bytesPerPixel]);
    }

    /**
     * The same into an array of one's own, which is written over even where nothing changes.
     *
     * @param target at least {@code width · height · bytesPerPixel} bytes, not the source
     * @return the target
     */
    public byte[] apply(byte[] source, int width, int height, int bytesPerPixel, byte[] target) {
        int shownWidth = swapsSides() ? height : width;
        int[] across = {1, 0};
        int[] down = {0, 1};
        int[] corner = corner(across, down, width, height);
        int stepX = across[1] * shownWidth + across[0];
        int stepY = down[1] * shownWidth + down[0];
        int origin = corner[1] * shownWidth + corner[0];
        boolean bySquares = bytesPerPixel == 1 && swapsSides();
        int squaresWidth = bySquares ? width / SQUARE * SQUARE : 0;
        int squaresHeight = bySquares ? height / SQUARE * SQUARE : 0;
        squares(source, target, width, squaresWidth, squaresHeight, origin, stepX, stepY);
        boolean backwards = bytesPerPixel == 1 && stepX == -1;
        for (int y = 0; y < height; y++) {
            int left = y < squaresHeight ? squaresWidth : 0;
            if (backwards) {
                left = eights(source, target, y * width, width, origin + y * stepY);
            }
            singles(
                    source,
                    target,
                    bytesPerPixel,
                    y * width + left,
                    width - left,
                    origin + y * stepY + left * stepX,
                    stepX);
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

    /** Pixel by pixel along a row. */
    private static void singles(byte[] source, byte[] target, int bytesPerPixel, int from, int n, int to, int step) {
        if (bytesPerPixel == 1) {
            for (int i = 0; i < n; i++) {
                target[to + i * step] = source[from + i];
            }
            return;
        }
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < bytesPerPixel; k++) {
                target[(to + i * step) * bytesPerPixel + k] = source[(from + i) * bytesPerPixel + k];
            }
        }
    }

    /** A row from right to left, as far as it goes in eights; returns how far that is. */
    private static int eights(byte[] source, byte[] target, int from, int n, int to) {
        int end = n / SQUARE * SQUARE;
        for (int i = 0; i < end; i += SQUARE) {
            EIGHT.set(target, to - i - SQUARE + 1, Long.reverseBytes((long) EIGHT.get(source, from + i)));
        }
        return end;
    }

    /** Where rows become columns: square by square, the first {@code width} columns of the first {@code height} rows. */
    private static void squares(
            byte[] source, byte[] target, int stride, int width, int height, int origin, int stepX, int stepY) {
        long[] rows = new long[SQUARE];
        for (int top = 0; top < height; top += BLOCK) {
            int bottom = Math.min(height, top + BLOCK);
            for (int x = 0; x < width; x += SQUARE) {
                for (int y = top; y < bottom; y += SQUARE) {
                    for (int i = 0; i < SQUARE; i++) {
                        rows[i] = (long) EIGHT.get(source, (y + i) * stride + x);
                    }
                    transpose(rows);
                    // Going backwards, the last of the eight rows comes first.
                    int to = origin + x * stepX + (stepY > 0 ? y : -(y + SQUARE - 1));
                    for (int i = 0; i < SQUARE; i++) {
                        EIGHT.set(target, to + i * stepX, stepY > 0 ? rows[i] : Long.reverseBytes(rows[i]));
                    }
                }
            }
        }
    }

    /** Byte j of row i becomes byte i of row j: quarters change places, then theirs, then theirs. */
    private static void transpose(long[] rows) {
        for (int i = 0; i < 4; i++) {
            swap(rows, i, i + 4, 32, 0x00000000ffffffffL);
        }
        for (int i = 0; i < 8; i += 4) {
            swap(rows, i, i + 2, 16, 0x0000ffff0000ffffL);
            swap(rows, i + 1, i + 3, 16, 0x0000ffff0000ffffL);
        }
        for (int i = 0; i < 8; i += 2) {
            swap(rows, i, i + 1, 8, 0x00ff00ff00ff00ffL);
        }
    }

    private static void swap(long[] rows, int upper, int lower, int bits, long mask) {
        long change = (rows[upper] >>> bits ^ rows[lower]) & mask;
        rows[lower] ^= change;
        rows[upper] ^= change << bits;
    }
}
