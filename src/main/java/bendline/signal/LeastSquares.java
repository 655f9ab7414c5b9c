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

    /** The sum of squared residuals at the solution. */
    public static double residual(double[][] rows, double[] y) {
        RealVector fitted = new Array2DRowRealMatrix(rows, false).operate(MatrixUtils.createRealVector(solve(rows, y)));
        double norm = MatrixUtils.createRealVector(y).subtract(fitted).getNorm();
        return norm * norm;
    }
}
