package bendline.signal;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealVector;

/** Linear least squares. */
public final class LeastSquares {

    private LeastSquares() {}

    /**
     * The coefficients with the smallest sum of squared residuals.
     *
     * @param rows design, {@code [sample][coefficient]}, of full column rank
     * @param y one value per row
     */
    public static double[] solve(double[][] rows, double[] y) {
        return new QRDecomposition(new Array2DRowRealMatrix(rows, false))
                .getSolver()
                .solve(MatrixUtils.createRealVector(y))
                .toArray();
    }

    /**
     * The parabola with the smallest sum of weighted squared residuals, as coefficients of 1, x and x².
     *
     * @param x at least three different ones
     * @param y one value each
     * @param weights positive
     */
    public static double[] parabola(double[] x, double[] y, double[] weights) {
        double[][] rows = new double[x.length][];
        double[] values = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            double root = Math.sqrt(weights[i]);
            rows[i] = new double[] {root, root * x[i], root * x[i] * x[i]};
            values[i] = root * y[i];
        }
        return solve(rows, values);
    }

    /** The sum of squared residuals at the solution. */
    public static double residual(double[][] rows, double[] y) {
        RealVector fitted = new Array2DRowRealMatrix(rows, false).operate(MatrixUtils.createRealVector(solve(rows, y)));
        double norm = MatrixUtils.createRealVector(y).subtract(fitted).getNorm();
        return norm * norm;
    }
}
