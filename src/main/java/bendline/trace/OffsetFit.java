package bendline.trace;

import bendline.geometry.PolynomialCurve;
import bendline.signal.Scatter;
import java.util.Arrays;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;

/** Weighted, outlier-resistant polynomial of the ridge's offsets along the strip. */
final class OffsetFit {

    /** Neighbouring stations share pixels and compression blocks, so they count for less than their number. */
    private static final double CORRELATED_STATIONS = 4;

    /** Weight of the wish for low degrees; keeps the ends from curling where little is seen. */
    private static final double SMOOTH = 3e-4;

    private final double[] coefficients;
    private final RealMatrix covariance;
    private final double middle;
    private final double halfSpan;

    /** @param stiffness weight of the wish to stay where the line was, per station */
    OffsetFit(Offsets places, int from, int to, double stiffness) {
        int n = to - from + 1;
        middle = (from + to) / 2.0;
        halfSpan = Math.max(1, (to - from) / 2.0);
        double[] value = Arrays.copyOfRange(places.offset(), from, to + 1);
        double[] prior = Arrays.copyOfRange(places.weight(), from, to + 1);
        double[][] basis = new double[n][];
        for (int i = 0; i < n; i++) {
            basis[i] = PolynomialCurve.legendre(
                    Math.min(BlankFitter.DEGREE, Math.max(1, n / 12)), (from + i - middle) / halfSpan);
        }
        double[] weight = prior.clone();
        double[] c = new double[basis[0].length];
        RealMatrix inverse = new Array2DRowRealMatrix(c.length, c.length);
        double scale = 1;
        for (int round = 0; round < 5; round++) {
            double[] right = new double[c.length];
            double[][] normal = normal(basis, value, weight, right);
            for (int a = 0; a < c.length; a++) {
                normal[a][a] += stiffness * n + SMOOTH * n * Math.pow(Math.max(0, a - 2), 4);
            }
            inverse = new LUDecomposition(new Array2DRowRealMatrix(normal, false))
                    .getSolver()
                    .getInverse();
            c = inverse.operate(right);
            scale = reweighed(basis, value, prior, c, weight);
        }
        coefficients = c;
        covariance = inverse.scalarMultiply(scale * scale * CORRELATED_STATIONS);
    }

    /** The normal equations' matrix; their right side is put into {@code right}. */
    private static double[][] normal(double[][] basis, double[] value, double[] weight, double[] right) {
        int m = right.length;
        double[][] normal = new double[m][m];
        for (int i = 0; i < value.length; i++) {
            double[] b = basis[i];
            for (int p = 0; p < m; p++) {
                double w = weight[i] * b[p];
                right[p] += w * value[i];
                for (int q = 0; q <= p; q++) {
                    normal[p][q] += w * b[q];
                }
            }
        }
        for (int p = 0; p < m; p++) {
            for (int q = 0; q < p; q++) {
                normal[q][p] = normal[p][q];
            }
        }
        return normal;
    }

    /** Turns down what lies far off the curve, and says how far usual offsets lie off it, in what was expected of them. */
    private static double reweighed(double[][] basis, double[] value, double[] prior, double[] c, double[] weight) {
        double[] size = new double[value.length];
        for (int i = 0; i < size.length; i++) {
            size[i] = Math.abs(value[i] - dot(c, basis[i])) * Math.sqrt(prior[i]);
        }
        double[] sorted = size.clone();
        Arrays.sort(sorted);
        double scale = Math.max(0.5, Scatter.SD_OVER_MEDIAN * sorted[size.length / 2]);
        for (int i = 0; i < size.length; i++) {
            double r = size[i] / (Scatter.BIWEIGHT * scale);
            weight[i] = r < 1 ? prior[i] * (1 - r * r) * (1 - r * r) : 0;
        }
        return scale;
    }

    double at(double station) {
        return dot(coefficients, PolynomialCurve.legendre(coefficients.length - 1, (station - middle) / halfSpan));
    }

    double sdAt(double station) {
        double[] b = PolynomialCurve.legendre(coefficients.length - 1, (station - middle) / halfSpan);
        return Math.sqrt(Math.max(0, dot(covariance.operate(b), b)));
    }

    double slopeSdAt(double station) {
        double span = 20 / Strip.STEP_PX;
        double[] a = PolynomialCurve.legendre(coefficients.length - 1, (station - middle) / halfSpan);
        double[] b = PolynomialCurve.legendre(coefficients.length - 1, (station + span - middle) / halfSpan);
        for (int k = 0; k < b.length; k++) {
            b[k] = (b[k] - a[k]) / (span * Strip.STEP_PX);
        }
        return Math.sqrt(Math.max(0, dot(covariance.operate(b), b)));
    }

    private static double dot(double[] a, double[] b) {
        double s = 0;
        for (int i = 0; i < a.length; i++) {
            s += a[i] * b[i];
        }
        return s;
    }
}
