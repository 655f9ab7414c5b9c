package bendline.signal;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * Weighted least-squares polynomials through unevenly spaced samples. On an even grid with equal uncertainties the weights
 * are those of Savitzky and Golay, Analytical Chemistry 36 (1964) 1627.
 */
public final class LocalPolynomial {

    private LocalPolynomial() {}

    /**
     * Fits a polynomial.
     *
     * @param t sample positions, any order, at least {@code degree + 1} different ones
     * @param y samples
     * @param sd their 68 % uncertainties, positive
     * @param origin abscissa about which the coefficients are taken
     * @param degree 0 or more
     * @throws IllegalArgumentException if there are too few samples or an uncertainty is not positive
     */
    public static PolynomialFit fit(double[] t, double[] y, double[] sd, double origin, int degree) {
        check(t, y, sd, degree);
        double scale = span(t, origin);
        int n = t.length;
        double[][] rows = new double[n][];
        double[] rhs = new double[n];
        for (int i = 0; i < n; i++) {
            rows[i] = PolynomialFit.row((t[i] - origin) / scale, 0, degree + 1);
            for (int k = 0; k <= degree; k++) {
                rows[i][k] /= sd[i];
            }
            rhs[i] = y[i] / sd[i];
        }
        RealMatrix design = new Array2DRowRealMatrix(rows, false);
        double[] scaled = new QRDecomposition(design)
                .getSolver()
                .solve(MatrixUtils.createRealVector(rhs))
                .toArray();
        double[][] covariance = new CholeskyDecomposition(design.transpose().multiply(design), 1e-10, 1e-14)
                .getSolver()
                .getInverse()
                .getData();
        double chiSquare = MatrixUtils.createRealVector(rhs)
                .subtract(design.operate(MatrixUtils.createRealVector(scaled)))
                .getNorm();
        return unscaled(origin, scale, scaled, covariance, chiSquare * chiSquare, n);
    }

    /**
     * The factors with which samples at {@code offsets} from a point enter the least-squares estimate there: apply them to the
     * samples and add up.
     *
     * @param offsets sample positions relative to the point
     * @param degree of the polynomial
     * @param derivative order wanted, 0 for the value
     */
    public static double[] weights(double[] offsets, int degree, int derivative) {
        double scale = span(offsets, 0);
        double[][] rows = new double[offsets.length][];
        for (int i = 0; i < offsets.length; i++) {
            rows[i] = PolynomialFit.row(offsets[i] / scale, 0, degree + 1);
        }
        RealMatrix inverse = new QRDecomposition(new Array2DRowRealMatrix(rows, false))
                .getSolver()
                .getInverse();
        double factor = PolynomialFit.row(0, derivative, degree + 1)[derivative] / Math.pow(scale, derivative);
        double[] out = inverse.getRow(derivative);
        for (int i = 0; i < out.length; i++) {
            out[i] *= factor;
        }
        return out;
    }

    private static PolynomialFit unscaled(
            double origin, double scale, double[] c, double[][] covariance, double chiSquare, int n) {
        for (int i = 0; i < c.length; i++) {
            c[i] /= Math.pow(scale, i);
            for (int j = 0; j < c.length; j++) {
                covariance[i][j] /= Math.pow(scale, i + j);
            }
        }
        return new PolynomialFit(origin, c, covariance, chiSquare, n);
    }

    private static double span(double[] t, double origin) {
        double span = 0;
        for (double x : t) {
            span = Math.max(span, Math.abs(x - origin));
        }
        return span > 0 ? span : 1;
    }

    private static void check(double[] t, double[] y, double[] sd, int degree) {
        if (t.length != y.length || t.length != sd.length || t.length <= degree) {
            throw new IllegalArgumentException("a polynomial of degree " + degree + " needs " + (degree + 1)
                    + " samples with a value and an uncertainty each, got " + t.length + ", " + y.length + ", "
                    + sd.length);
        }
        for (double s : sd) {
            if (!(s > 0)) {
                throw new IllegalArgumentException("an uncertainty must be positive, got " + s);
            }
        }
    }
}
