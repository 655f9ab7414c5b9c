package bendline.report;

import bendline.image.VideoPlanes;
import java.util.Arrays;

/** Which squares of a drawing differ from another one, so that only they need be made video. */
final class Squares {

    /** Side in pixels, that of the coder's own. */
    private static final int SIDE = 16;

    private final int width;
    private final int height;
    private final int across;
    private final boolean[] differ;

    Squares(int width, int height) {
        this.width = width;
        this.height = height;
        this.across = (width + SIDE - 1) / SIDE;
        this.differ = new boolean[across * ((height + SIDE - 1) / SIDE)];
    }

    /**
     * Finds them.
     *
     * @param now the drawing, row by row
     * @param then the other one
     * @param thenStride its pixels from row to row; 0 where one row stands for all
     */
    void compare(int[] now, int[] then, int thenStride) {
        Arrays.fill(differ, false);
        for (int y = 0; y < height; y++) {
            int row = y * width;
            int thenRow = y * thenStride;
            for (int x = 0; x < width; ) {
                int same = Arrays.mismatch(now, row + x, row + width, then, thenRow + x, thenRow + width);
                if (same < 0) {
                    break;
                }
                int square = (x + same) / SIDE;
                differ[y / SIDE * across + square] = true;
                x = (square + 1) * SIDE;
            }
        }
    }

    /** Lays the squares that differ over a picture of the drawing's size. */
    void cover(VideoPlanes picture, int[] argb) {
        for (int i = 0; i < differ.length; i++) {
            if (differ[i]) {
                picture.cover(argb, i % across * SIDE, i / across * SIDE, SIDE);
            }
        }
    }

    /** Makes the squares that differ clear. */
    void clear(int[] argb) {
        for (int i = 0; i < differ.length; i++) {
            if (differ[i]) {
                int left = i % across * SIDE;
                int right = Math.min(width, left + SIDE);
                int bottom = Math.min(height, (i / across + 1) * SIDE);
                for (int y = i / across * SIDE; y < bottom; y++) {
                    Arrays.fill(argb, y * width + left, y * width + right, 0);
                }
            }
        }
    }
}
