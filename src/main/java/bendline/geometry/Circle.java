package bendline.geometry;

import java.util.List;

/**
 * A circle in the plane.
 *
 * @param centre its centre
 * @param radius positive
 */
public record Circle(Point centre, double radius) {

    private static final int ROUNDS = 50;

    /** Signed distance of a point from the circle, positive outside. */
    public double outside(Point p) {
        return p.distance(centre) - radius;
    }

    /**
     * The circle with the least squared distances to the points: Gauss–Newton from the algebraic fit.
     *
     * @param points at least three, not on one line
     * @throws IllegalArgumentException if they are fewer or lie on one line
     */
    public static Circle through(List<Point> points) {
        Circle c = algebraic(points);
        for (int round = 0; round < ROUNDS; round++) {
            Circle next = step(c, points);
            boolean settled = next.centre.distance(c.centre) <= 1e-12 * next.radius;
            c = next;
            if (settled) {
                break;
            }
        }
        return c;
    }

    private static Circle algebraic(List<Point> points) {
        if (points.size() < 3) {
            throw new IllegalArgumentException("a circle needs three points, got " + points.size());
        }
        Point mean = mean(points);
        double[][] a = new double[3][3];
        double[] b = new double[3];
        for (Point p : points) {
            Point q = p.minus(mean);
            accumulate(a, b, new double[] {q.x(), q.y(), 1}, q.dot(q));
        }
        double[] u = solve(a, b);
        Point centre = new Point(u[0] / 2, u[1] / 2);
        return new Circle(mean.plus(centre), Math.sqrt(u[2] + centre.dot(centre)));
    }

    private static Circle step(Circle c, List<Point> points) {
        double[][] a = new double[3][3];
        double[] b = new double[3];
        for (Point p : points) {
            Point out = p.minus(c.centre);
            double n = Math.max(out.norm(), 1e-12);
            accumulate(a, b, new double[] {out.x() / n, out.y() / n, 1}, n - c.radius);
        }
        double[] u = solve(a, b);
        return new Circle(c.centre.plus(new Point(u[0], u[1])), c.radius + u[2]);
    }

    private static void accumulate(double[][] a, double[] b, double[] row, double value) {
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                a[i][j] += row[i] * row[j];
            }
            b[i] += row[i] * value;
        }
    }

    private static Point mean(List<Point> points) {
        Point sum = new Point(0, 0);
        for (Point p : points) {
            sum = sum.plus(p);
        }
        return sum.times(1.0 / points.size());
    }

    /** Cramer's rule; the normal matrix of points on one line is singular. */
    private static double[] solve(double[][] a, double[] b) {
        double det = det(a);
        double size = a[0][0] * a[1][1] * a[2][2];
        if (!(Math.abs(det) > 1e-12 * Math.abs(size))) {
            throw new IllegalArgumentException("no circle goes through points on one line");
        }
        double[] out = new double[3];
        for (int k = 0; k < 3; k++) {
            double[][] m = {a[0].clone(), a[1].clone(), a[2].clone()};
            for (int i = 0; i < 3; i++) {
                m[i][k] = b[i];
            }
            out[k] = det(m) / det;
        }
        return out;
    }

    private static double det(double[][] m) {
        return m[0][0] * (m[1][1] * m[2][2] - m[1][2] * m[2][1])
                - m[0][1] * (m[1][0] * m[2][2] - m[1][2] * m[2][0])
                + m[0][2] * (m[1][0] * m[2][1] - m[1][1] * m[2][0]);
    }
}
