package bendline.rod;

import java.util.Arrays;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.SingularMatrixException;
import org.jspecify.annotations.Nullable;

/** Damped least squares (Levenberg 1944) with slopes by differences, for models of few parameters. */
final class ArcFit {

    /** Residuals, each over its uncertainty. */
    interface Residuals {
        double[] at(double[] parameters);
    }

    /**
     * What fits best.
     *
     * @param parameters at the optimum
     * @param covariance of the parameters, for residuals of unit size
     * @param chiSquare sum of the squared residuals
     */
    record Fitted(double[] parameters, double[][] covariance, double chiSquare) {}

    private static final int ROUNDS = 40;
    private static final double SETTLED = 1e-9;

    private ArcFit() {}

    /**
     * @param start where to begin
     * @param steps differences by which slopes are taken
     * @return null where it does not settle
     */
    static @Nullable Fitted of(Residuals model, double[] start, double[] steps) {
        double[] p = start.clone();
        double[] r = model.at(p);
        double best = square(r);
        double damping = 1e-3;
        double[][] slopes = slopes(model, p, steps);
        for (int round = 0; round < ROUNDS; round++) {
            double[] move = move(slopes, r, damping);
            if (move == null) {
                return null;
            }
            double[] q = p.clone();
            for (int i = 0; i < q.length; i++) {
                q[i] += move[i];
            }
            double[] trial = tried(model, q);
            double next = trial == null ? Double.POSITIVE_INFINITY : square(trial);
            if (trial != null && next <= best) {
                double gain = best - next;
                p = q;
                r = trial;
                best = next;
                damping = Math.max(1e-12, damping / 10);
                slopes = slopes(model, p, steps);
                if (gain <= SETTLED * (1e-12 + best) || best < 1e-16) {
                    break;
                }
            } else {
                damping *= 10;
                if (damping > 1e12) {
                    break;
                }
            }
        }
        double[][] covariance = covariance(slopes);
        return covariance == null ? null : new Fitted(p, covariance, best);
    }

    private static double @Nullable [] tried(Residuals model, double[] p) {
        try {
            return model.at(p);
        } catch (BendException e) {
            return null;
        }
    }

    private static double[][] slopes(Residuals model, double[] p, double[] steps) {
        double[][] columns = new double[p.length][];
        for (int k = 0; k < p.length; k++) {
            double[] up = p.clone();
            double[] down = p.clone();
            up[k] += steps[k];
            down[k] -= steps[k];
            double[] a = model.at(up);
            double[] b = model.at(down);
            columns[k] = new double[a.length];
            for (int i = 0; i < a.length; i++) {
                columns[k][i] = (a[i] - b[i]) / (2 * steps[k]);
            }
        }
        return columns;
    }

    private static RealMatrix normal(double[][] columns) {
        RealMatrix j = new Array2DRowRealMatrix(columns, false);
        return j.multiply(j.transpose());
    }

    private static double @Nullable [] move(double[][] columns, double[] r, double damping) {
        RealMatrix n = normal(columns);
        double[] g = new double[columns.length];
        for (int k = 0; k < g.length; k++) {
            for (int i = 0; i < r.length; i++) {
                g[k] -= columns[k][i] * r[i];
            }
            n.multiplyEntry(k, k, 1 + damping);
        }
        try {
            return new LUDecomposition(n)
                    .getSolver()
                    .solve(MatrixUtils.createRealVector(g))
                    .toArray();
        } catch (SingularMatrixException e) {
            return null;
        }
    }

    private static double @Nullable [][] covariance(double[][] columns) {
        try {
            return new LUDecomposition(normal(columns)).getSolver().getInverse().getData();
        } catch (SingularMatrixException e) {
            return null;
        }
    }

    private static double square(double[] r) {
        return Arrays.stream(r).map(e -> e * e).sum();
    }
}
