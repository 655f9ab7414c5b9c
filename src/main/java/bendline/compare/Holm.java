package bendline.compare;

import java.util.Arrays;

/** Looking at several measures at once finds something by chance sooner; Holm's rule takes that back. */
final class Holm {

    private Holm() {}

    /** Probabilities adjusted so that any of them under a level is a false alarm no more often than the level says. */
    static double[] adjusted(double[] p) {
        Integer[] order = new Integer[p.length];
        Arrays.setAll(order, i -> i);
        Arrays.sort(order, (i, j) -> Double.compare(p[i], p[j]));
        double[] out = new double[p.length];
        double running = 0;
        for (int k = 0; k < p.length; k++) {
            running = Math.max(running, Math.min(1, (p.length - k) * p[order[k]]));
            out[order[k]] = running;
        }
        return out;
    }
}
