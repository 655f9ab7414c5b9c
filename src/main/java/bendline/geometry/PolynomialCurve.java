package bendline.geometry;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;

/**
 * A smooth plane curve whose coordinates are polynomials of one parameter in [−1, 1] (Legendre basis, which keeps the
 * normal equations well conditioned). Outside that range the curve continues straight.
 */
public final class PolynomialCurve {

    private final double[] x;
    private final double[] y;

    private PolynomialCurve(double[] x, double[] y) {
        this.x = x;
        this.y = y;
    }

    /**
     * Least-squares curve through a chain, parameter proportional to arc length.
     *
     * @param degree polynomial degree, lowered where the chain has too few points
     */
    public static PolynomialCurve through(Polyline chain, int degree) {
        int n = chain.points().size();
        int d = Math.max(1, Math.min(degree, n - 1));
        RealMatrix basis = new Array2DRowRealMatrix(n, d + 1);
        RealVector xs = new ArrayRealVector(n);
        RealVector ys = new ArrayRealVector(n);
        double s = 0;
        Point before = chain.first();
        for (int i = 0; i < n; i++) {
            Point p = chain.points().get(i);
            s += p.distance(before);
            before = p;
            basis.setRow(i, legendre(d, chain.length() > 0 ? 2 * s / chain.length() - 1 : 0));
            xs.setEntry(i, p.x());
            ys.setEntry(i, p.y());
        }
        var solver = new QRDecomposition(basis, 1e-12).getSolver();
        return new PolynomialCurve(solver.solve(xs).toArray(), solver.solve(ys).toArray());
    }

    /** The point at parameter {@code u}. */
    public Point at(double u) {
        double c = Math.max(-1, Math.min(1, u));
        double[] basis = legendre(x.length - 1, c);
        Point p = new Point(sum(x, basis), sum(y, basis));
        return c == u ? p : p.plus(derivative(c).times(u - c));
    }

    /** Derivative by the parameter at {@code u}; constant outside [−1, 1]. */
    public Point derivative(double u) {
        double c = Math.max(-1, Math.min(1, u));
        double[] basis = legendreSlopes(x.length - 1, c);
        return new Point(sum(x, basis), sum(y, basis));
    }

    /** The chain of {@code count} points at equal parameter steps between two parameters. */
    public Polyline chain(double from, double to, int count) {
        List<Point> points = new ArrayList<>(count);
        for (int i = 0; i < count; i++) {
            points.add(at(from + (to - from) * i / (count - 1)));
        }
        return new Polyline(points);
    }

    /** Values of the Legendre polynomials of degree 0 to {@code degree} at {@code u}. */
    public static double[] legendre(int degree, double u) {
        double[] p = new double[degree + 1];
        p[0] = 1;
        if (degree > 0) {
            p[1] = u;
        }
        for (int k = 2; k <= degree; k++) {
            p[k] = ((2 * k - 1) * u * p[k - 1] - (k - 1) * p[k - 2]) / k;
        }
        return p;
    }

    private static double[] legendreSlopes(int degree, double u) {
        double[] p = legendre(degree, u);
        double[] d = new double[degree + 1];
        for (int k = 1; k <= degree; k++) {
            d[k] = (k >= 2 ? d[k - 2] : 0) + (2 * k - 1) * p[k - 1];
        }
        return d;
    }

    private static double sum(double[] a, double[] b) {
        double s = 0;
        for (int i = 0; i < a.length; i++) {
            s += a[i] * b[i];
        }
        return s;
    }
}
