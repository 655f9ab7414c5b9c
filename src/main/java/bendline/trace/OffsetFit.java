package bendline.trace;

import bendline.geometry.PolynomialCurve;
import java.util.Arrays;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
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
    OffsetFit(Strip strip, int[] path, int from, int to, double stiffness) {
        int n = to - from + 1;
        middle = (from + to) / 2.0;
        halfSpan = Math.max(1, (to - from) / 2.0);
        double[] value = new double[n];
        double[] prior = new double[n];
        double[][] basis = new double[n][];
        for (int i = 0; i < n; i++) {
            value[i] = strip.offset(peak(strip, from + i, path[from + i]));
            prior[i] = weight(strip, from + i, path[from + i]);
            basis[i] = PolynomialCurve.legendre(
                    Math.min(BlankFitter.DEGREE, Math.max(1, n / 12)), (from + i - middle) / halfSpan);
        }
        double[] weight = prior.clone();
        double[] c = new double[basis[0].length];
        RealMatrix inverse = new Array2DRowRealMatrix(c.length, c.length);
        double scale = 1;
        for (int round = 0; round < 5; round++) {
            RealMatrix normal = new Array2DRowRealMatrix(c.length, c.length);
            double[] right = new double[c.length];
            for (int i = 0; i < n; i++) {
                for (int a = 0; a < c.length; a++) {
                    right[a] += weight[i] * basis[i][a] * value[i];
                    for (int b = 0; b < c.length; b++) {
                        normal.addToEntry(a, b, weight[i] * basis[i][a] * basis[i][b]);
                    }
                }
            }
            for (int a = 0; a < c.length; a++) {
                normal.addToEntry(a, a, stiffness * n + SMOOTH * n * Math.pow(Math.max(0, a - 2), 4));
            }
            inverse = new LUDecomposition(normal).getSolver().getInverse();
            c = inverse.operate(new ArrayRealVector(right)).toArray();
            double[] size = new double[n];
            for (int i = 0; i < n; i++) {
                size[i] = Math.abs(value[i] - dot(c, basis[i])) * Math.sqrt(prior[i]);
            }
            double[] sorted = size.clone();
            Arrays.sort(sorted);
            scale = Math.max(0.5, 1.4826 * sorted[n / 2]);
            for (int i = 0; i < n; i++) {
                double r = size[i] / (4.685 * scale);
                weight[i] = r < 1 ? prior[i] * (1 - r * r) * (1 - r * r) : 0;
            }
        }
        coefficients = c;
        covariance = inverse.scalarMultiply(scale * scale * CORRELATED_STATIONS);
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

    /** What a ridge's place at a station is worth, 1/px²; nothing where there is none. */
    static double weight(Strip strip, int station, int k) {
        double strength = strip.strength[station][k];
        double sd = Math.max(2, strip.width[station][k]) / 2 * RodEnds.FLOOR / Math.max(1, strength) + 0.25;
        return strength > 0 ? 1 / (sd * sd) : 0;
    }

    /** Index of an offset near one at which the ridge is strongest, between whole ones. */
    static double peak(Strip strip, int station, int k) {
        if (k == 0 || k == strip.offsets() - 1) {
            return k;
        }
        double a = strip.strength[station][k - 1];
        double b = strip.strength[station][k];
        double c = strip.strength[station][k + 1];
        double curvature = a - 2 * b + c;
        return curvature < -1e-9 ? k + Math.max(-0.7, Math.min(0.7, 0.5 * (a - c) / curvature)) : k;
    }

    private static double dot(double[] a, double[] b) {
        double s = 0;
        for (int i = 0; i < a.length; i++) {
            s += a[i] * b[i];
        }
        return s;
    }
}
