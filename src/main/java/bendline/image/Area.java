package bendline.image;

/**
 * A rectangle of whole pixels.
 *
 * @param left first column
 * @param top first row
 * @param width columns
 * @param height rows
 */
public record Area(int left, int top, int width, int height) {

    /** Checks that it is not empty. */
    public Area {
        if (left < 0 || top < 0 || width <= 0 || height <= 0) {
            throw new IllegalArgumentException(
                    "area " + width + "x" + height + " at " + left + "," + top + " is not inside a picture");
        }
    }

    /** Whether this is the whole of a plane. */
    public boolean covers(Luma plane) {
        return left == 0 && top == 0 && width == plane.width() && height == plane.height();
    }

    /** Whether {@link #half} is exact. */
    public boolean halves() {
        return (left | top | width | height) % 2 == 0;
    }

    /** The same in a picture of half the width and height. */
    public Area half() {
        return new Area(left / 2, top / 2, width / 2, height / 2);
    }
}
