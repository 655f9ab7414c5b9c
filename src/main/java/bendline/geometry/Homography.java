package bendline.geometry;

/**
 * A projective map of the plane, the way a picture changes when the camera turns or a plane is seen from elsewhere:
 * {@code x' = (a·x + b·y + c) / w}, {@code y' = (d·x + e·y + f) / w}, {@code w = g·x + h·y + 1}.
 */
public record Homography(double a, double b, double c, double d, double e, double f, double g, double h) {

    /** The map that changes nothing. */
    public static final Homography IDENTITY = new Homography(1, 0, 0, 0, 1, 0, 0, 0);

    /** A shift. */
    public static Homography shift(double x, double y) {
        return new Homography(1, 0, x, 0, 1, y, 0, 0);
    }

    /** The same factor in both directions about the origin. */
    public static Homography scale(double factor) {
        return new Homography(factor, 0, 0, 0, factor, 0, 0, 0);
    }

    /** The image of a point. */
    public Point apply(Point p) {
        double w = g * p.x() + h * p.y() + 1;
        return new Point((a * p.x() + b * p.y() + c) / w, (d * p.x() + e * p.y() + f) / w);
    }

    /** First this map, then {@code next}. */
    public Homography then(Homography next) {
        double w = next.g * c + next.h * f + 1;
        return new Homography(
                (next.a * a + next.b * d + next.c * g) / w,
                (next.a * b + next.b * e + next.c * h) / w,
                (next.a * c + next.b * f + next.c) / w,
                (next.d * a + next.e * d + next.f * g) / w,
                (next.d * b + next.e * e + next.f * h) / w,
                (next.d * c + next.e * f + next.f) / w,
                (next.g * a + next.h * d + g) / w,
                (next.g * b + next.h * e + h) / w);
    }

    /**
     * The map back.
     *
     * @throws IllegalArgumentException if the map flattens the plane or sends the origin to infinity
     */
    public Homography inverse() {
        double w = a * e - b * d;
        double det = w + c * (d * h - e * g) - f * (a * h - b * g);
        if (Math.abs(det) < 1e-12 || Math.abs(w) < 1e-12) {
            throw new IllegalArgumentException("homography has no inverse, determinant " + det);
        }
        return new Homography(
                (e - f * h) / w,
                (c * h - b) / w,
                (b * f - c * e) / w,
                (f * g - d) / w,
                (a - c * g) / w,
                (c * d - a * f) / w,
                (d * h - e * g) / w,
                (b * g - a * h) / w);
    }
}
