package bendline.geometry;

/**
 * A plane affine map: {@code x' = a·x + b·y + tx}, {@code y' = c·x + d·y + ty}.
 *
 * @param a xx
 * @param b xy
 * @param tx shift in x
 * @param c yx
 * @param d yy
 * @param ty shift in y
 */
public record Affine(double a, double b, double tx, double c, double d, double ty) {

    /** The map that changes nothing. */
    public static final Affine IDENTITY = new Affine(1, 0, 0, 0, 1, 0);

    /** The image of a point. */
    public Point apply(Point p) {
        return new Point(a * p.x() + b * p.y() + tx, c * p.x() + d * p.y() + ty);
    }

    /** First this map, then {@code next}. */
    public Affine then(Affine next) {
        return new Affine(
                next.a * a + next.b * c,
                next.a * b + next.b * d,
                next.a * tx + next.b * ty + next.tx,
                next.c * a + next.d * c,
                next.c * b + next.d * d,
                next.c * tx + next.d * ty + next.ty);
    }

    /**
     * The map back.
     *
     * @throws IllegalArgumentException if the map flattens the plane
     */
    public Affine inverse() {
        double det = a * d - b * c;
        if (Math.abs(det) < 1e-12) {
            throw new IllegalArgumentException("affine map has no inverse, determinant " + det);
        }
        double ia = d / det;
        double ib = -b / det;
        double ic = -c / det;
        double id = a / det;
        return new Affine(ia, ib, -(ia * tx + ib * ty), ic, id, -(ic * tx + id * ty));
    }
}
