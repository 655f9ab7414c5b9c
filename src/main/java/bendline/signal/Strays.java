package bendline.signal;

import java.util.Arrays;

/**
 * Samples that one or two in a row jump out of a stretch in which their neighbours agree with each other. They must be known
 * before a stiffness is chosen: a curve soft enough to follow them would hide them.
 */
final class Strays {

    /** Neighbours asked on each side. */
    private static final int SIDE = 3;

    private static final int DEGREE = 2;
    private static final int LONGEST_RUN = 2;

    /** How far outside, in what the neighbours allow, a sample must lie. */
    private static final double FAR = 7;

    private Strays() {}

    /** A factor for each sample's variance, 1 for those that are no strays. */
    static double[] inflation(double[] t, double[] y, double[] sd, int[] seen) {
        double[] out = new double[t.length];
        Arrays.fill(out, 1);
        for (int run = 1; run <= LONGEST_RUN; run++) {
            for (int k = SIDE; k + run + SIDE <= seen.length; k++) {
                check(t, y, sd, seen, k, run, out);
            }
        }
        return out;
    }

    private static void check(double[] t, double[] y, double[] sd, int[] seen, int k, int run, double[] out) {
        double[][] near = new double[3][2 * SIDE];
        for (int j = 0; j < SIDE; j++) {
            put(near, j, seen[k - SIDE + j], t, y, sd);
            put(near, SIDE + j, seen[k + run + j], t, y, sd);
        }
        double spread = 0;
        for (int j = 0; j < run; j++) {
            spread = Math.max(spread, Math.abs(y[seen[k + j]] - near[1][SIDE - 1]) / sd[seen[k + j]]);
        }
        if (spread < FAR) {
            return;
        }
        PolynomialFit fit = LocalPolynomial.fit(near[0], near[1], near[2], t[seen[k]], DEGREE);
        double[] far = new double[run];
        for (int j = 0; j < run; j++) {
            int i = seen[k + j];
            double allowed = Math.hypot(sd[i], fit.sd(t[i], 0)) * fit.excess();
            far[j] = Math.abs(y[i] - fit.value(t[i])) / allowed;
            if (far[j] < FAR) {
                return;
            }
        }
        for (int j = 0; j < run; j++) {
            int i = seen[k + j];
            out[i] = Math.max(out[i], far[j] * far[j]);
        }
    }

    private static void put(double[][] near, int j, int i, double[] t, double[] y, double[] sd) {
        near[0][j] = t[i];
        near[1][j] = y[i];
        near[2][j] = sd[i];
    }
}
