package bendline.image;

/**
 * A plane of 8-bit grey values on the Java heap, row by row from the top left. The pixel (column, row) covers the square
 * from (column, row) to (column + 1, row + 1), so its centre is at (column + 0.5, row + 0.5).
 *
 * <p>The array is shared, not copied: whoever is handed a plane must not write to it.
 *
 * @param width columns
 * @param height rows
 * @param pixels {@code width · height} unsigned bytes
 */
public record Luma(int width, int height, byte[] pixels) {

    /** Checks that the array fits the size. */
    public Luma {
        if (width <= 0 || height <= 0 || pixels.length != width * height) {
            throw new IllegalArgumentException(
                    "a " + width + "x" + height + " plane does not fit " + pixels.length + " pixels");
        }
    }

    /** Grey value 0–255 at a column and row inside the plane. */
    public int at(int column, int row) {
        return pixels[row * width + column] & 0xff;
    }
}
