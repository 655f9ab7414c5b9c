package bendline.geometry;

/**
 * A point or a vector in the plane.
 *
 * @param x first coordinate
 * @param y second coordinate
 */
public record Point(double x, double y) {

    /** Component-wise sum. */
    public Point plus(Point other) {
        return new Point(x + other.x, y + other.y);
    }

    /** Component-wise difference. */
    public Point minus(Point other) {
        return new Point(x - other.x, y - other.y);
    }

    /** This vector scaled by a factor. */
    public Point times(double factor) {
        return new Point(x * factor, y * factor);
    }

    /** Scalar product. */
    public double dot(Point other) {
        return x * other.x + y * other.y;
    }

    /** z component of the vector product. */
    public double cross(Point other) {
        return x * other.y - y * other.x;
    }

    /** Euclidean length of this vector. */
    public double norm() {
        return Math.hypot(x, y);
    }

    /** Euclidean distance to another point. */
    public double distance(Point other) {
        return Math.hypot(x - other.x, y - other.y);
    }

    /** The point that divides the way to {@code other} at {@code fraction}; 0 is here, 1 is there. */
    public Point towards(Point other, double fraction) {
        return new Point(x + fraction * (other.x - x), y + fraction * (other.y - y));
    }

    /** Direction of this vector, radians in (−π, π], measured from +x towards +y. */
    public double angle() {
        return Math.atan2(y, x);
    }

    /** The unit vector in a direction, radians from +x towards +y. */
    public static Point direction(double radians) {
        return new Point(Math.cos(radians), Math.sin(radians));
    }
}
