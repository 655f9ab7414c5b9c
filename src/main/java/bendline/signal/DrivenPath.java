package bendline.signal;

import java.util.Arrays;
import java.util.Random;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.NonPositiveDefiniteMatrixException;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.special.Erf;

/**
 * What drives a point, told by places at which it was seen: its acceleration, of which nothing is known beforehand but how large it
 * usually is and how fast it changes (regression with a Gaussian process: Rasmussen and Williams, Gaussian Processes for Machine
 * Learning, MIT 2006, 2.2; places are the acceleration summed twice). Between frames and in gaps it is as uncertain as such a drive is,
 * so that a mean over some time is told well where a value at one moment is not. A place far from what all the others say loses weight;
 * the places' stated uncertainties are right up to a common factor, estimated within limits.
 */
public final class DrivenPath {

    private static final double MIN_SCALE = 0.5;
    private static final double MAX_SCALE = 4;
    private static final int ROUNDS = 6;

    /** Rounds in which the common factor is found, before strays are. */
    private static final int SCALING = 3;

    /** Median of the squared error of two coordinates over twice its variance, if errors are normal: ln 2. */
    private static final double MEDIAN = Math.log(2);

    /** Half the squared distance, in what the others allow, from which a place is a stray. */
    private static final double FAR = 8;

    /** What is known of the place and the speed at the beginning, in the samples' units: nothing. */
    private static final double PLACE_VARIANCE = 1e2;

    private static final double SPEED_VARIANCE = 1e3;

    /** Uncertainties of an end after which it has passed for sure. */
    private static final double SURELY = 2.5;

    /** Added to a variance to keep its root real, over what it is beforehand. */
    private static final double JITTER = 1e-6;

    private final double[][] mean;
    private final double scale;
    private final RealMatrix root;

    /**
     * What is known of an acceleration beforehand, per coordinate: one part that changes smoothly (Matérn's covariance of order 3/2)
     * and one that may jump.
     *
     * @param smooth standard deviation of the one, units over seconds squared
     * @param smoothSeconds in which it changes
     * @param sudden standard deviation of the other
     * @param suddenSeconds how long a jolt lasts
     */
    public record Habit(double smooth, double smoothSeconds, double sudden, double suddenSeconds) {

        double covariance(double apart) {
            double r = Math.sqrt(3) * Math.abs(apart) / smoothSeconds;
            return smooth * smooth * (1 + r) * Math.exp(-r)
                    + sudden * sudden * Math.exp(-Math.abs(apart) / suddenSeconds);
        }
    }

    /**
     * The cells of time in which the acceleration is told.
     *
     * @param from beginning of the first, seconds
     * @param step length of each
     * @param share of its usual size that it may have in each, 0 to 1
     */
    public record Cells(double from, double step, double[] share) {

        /** Cells up to an end after which nothing drives the point; they fade as surely as it is over. */
        public static Cells until(double from, double step, double end, double endSd) {
            double[] share = new double[(int) Math.ceil((end + SURELY * endSd - from) / step)];
            Arrays.setAll(share, i -> 0.5 * Erf.erfc((from + (i + 0.5) * step - end) / (Math.sqrt(2) * endSd)));
            return new Cells(from, step, share);
        }

        /** Beginning of a cell, or the end of the one before it. */
        public double time(int cell) {
            return from + cell * step;
        }
    }

    /**
     * Where the point was seen.
     *
     * @param t seconds, none before the first cell
     * @param x one coordinate, what else moves the point taken out
     * @param y the other
     * @param sd 68 % uncertainty of a coordinate, positive
     */
    public record Places(double[] t, double[] x, double[] y, double[] sd) {}

    /**
     * Tells the acceleration.
     *
     * @throws IllegalArgumentException if there are fewer than four places
     */
    public DrivenPath(Places places, Cells cells, Habit habit) {
        if (places.t.length < 4) {
            throw new IllegalArgumentException("a driven path needs four places, got " + places.t.length);
        }
        RealMatrix prior = prior(cells, habit);
        RealMatrix response = response(places.t, cells);
        RealMatrix cross = prior.multiply(response.transpose());
        RealMatrix seen = response.multiply(cross).add(start(places.t, cells.from));
        Weighed w = weighed(places, seen);
        this.scale = w.scale;
        RealMatrix gain = cross.multiply(w.inverse);
        this.mean = new double[][] {gain.operate(places.x), gain.operate(places.y)};
        this.root = root(prior.subtract(gain.multiply(cross.transpose())), habit.covariance(0));
    }

    /** By how much the places scatter more (above 1) or less than stated. */
    public double scale() {
        return scale;
    }

    /** The likeliest acceleration per cell, x and y; shared, do not write to it. */
    public double[][] mean() {
        return mean;
    }

    /** An acceleration per cell, x and y, as likely as the places allow. */
    public double[][] draw(Random random) {
        int n = mean[0].length;
        double[][] out = new double[2][];
        for (int axis = 0; axis < 2; axis++) {
            double[] white = new double[n];
            for (int i = 0; i < n; i++) {
                white[i] = random.nextGaussian();
            }
            double[] off = root.operate(white);
            for (int i = 0; i < n; i++) {
                off[i] += mean[axis][i];
            }
            out[axis] = off;
        }
        return out;
    }

    /** What is left of a variance may be less than its rounding: then as little is added as makes it one. */
    private static RealMatrix root(RealMatrix covariance, double usual) {
        RealMatrix even = covariance.add(covariance.transpose()).scalarMultiply(0.5);
        for (double more = JITTER * usual; ; more *= 10) {
            for (int i = 0; i < even.getRowDimension(); i++) {
                even.addToEntry(i, i, more);
            }
            try {
                return new CholeskyDecomposition(even, 1e-9, 0).getL();
            } catch (NonPositiveDefiniteMatrixException e) {
                if (more > usual) {
                    throw e;
                }
            }
        }
    }

    private static RealMatrix prior(Cells cells, Habit habit) {
        int n = cells.share.length;
        double[] apart = new double[n];
        Arrays.setAll(apart, k -> habit.covariance(k * cells.step));
        double[][] k = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                k[i][j] = cells.share[i] * cells.share[j] * apart[Math.abs(i - j)];
            }
        }
        return new Array2DRowRealMatrix(k, false);
    }

    /** How far a place moves with each cell's acceleration. */
    private static RealMatrix response(double[] t, Cells cells) {
        double[][] a = new double[t.length][cells.share.length];
        for (int i = 0; i < t.length; i++) {
            for (int j = 0; j < a[i].length; j++) {
                double since = Math.max(0, t[i] - cells.time(j));
                double after = Math.max(0, since - cells.step);
                a[i][j] = 0.5 * (since * since - after * after);
            }
        }
        return new Array2DRowRealMatrix(a, false);
    }

    private static RealMatrix start(double[] t, double from) {
        double[][] b = new double[t.length][t.length];
        for (int i = 0; i < t.length; i++) {
            for (int j = 0; j < t.length; j++) {
                b[i][j] = PLACE_VARIANCE + SPEED_VARIANCE * (t[i] - from) * (t[j] - from);
            }
        }
        return new Array2DRowRealMatrix(b, false);
    }

    private record Weighed(RealMatrix inverse, double scale) {}

    /** Each place held against what all the others say of it. */
    private static Weighed weighed(Places p, RealMatrix seen) {
        int n = p.t.length;
        double[] more = new double[n];
        Arrays.fill(more, 1);
        double scale = 1;
        RealMatrix inverse = inverse(seen, p.sd, more, scale);
        for (int round = 0; round < ROUNDS; round++) {
            double[] wx = inverse.operate(p.x);
            double[] wy = inverse.operate(p.y);
            double[] off = new double[n];
            for (int i = 0; i < n; i++) {
                off[i] = (wx[i] * wx[i] + wy[i] * wy[i]) / inverse.getEntry(i, i) / 2;
            }
            if (round < SCALING) {
                double[] sorted = off.clone();
                Arrays.sort(sorted);
                scale *= Math.sqrt(sorted[n / 2] / MEDIAN);
                scale = Math.max(MIN_SCALE, Math.min(MAX_SCALE, scale));
            }
            for (int i = 0; round > 0 && i < n; i++) {
                more[i] *= off[i] > FAR ? off[i] / 4 : 1;
            }
            inverse = inverse(seen, p.sd, more, scale);
        }
        return new Weighed(inverse, scale);
    }

    private static RealMatrix inverse(RealMatrix seen, double[] sd, double[] more, double scale) {
        RealMatrix s = seen.copy();
        for (int i = 0; i < sd.length; i++) {
            s.addToEntry(i, i, sd[i] * sd[i] * scale * scale * more[i]);
        }
        return new CholeskyDecomposition(s, 1e-9, 0).getSolver().getInverse();
    }
}
