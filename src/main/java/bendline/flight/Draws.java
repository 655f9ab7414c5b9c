package bendline.flight;

import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.random.HaltonSequenceGenerator;

/**
 * Normal scores to draw flights with: Halton's sequence, which fills the space more evenly than chance, so that a hundred draws
 * do the work of thousands; the same every time, so that changes can be compared draw by draw.
 */
final class Draws {

    /** Parts of a shot that are drawn, and three for what a change itself is unsure of. */
    static final int PARTS = 12;

    /** Where the parts of a change begin. */
    static final int OWN = 10;

    /** The first points of the sequence lie in a row. */
    private static final int SKIPPED = 40;

    private Draws() {}

    static double[][] normal(int count) {
        HaltonSequenceGenerator halton = new HaltonSequenceGenerator(PARTS);
        halton.skipTo(SKIPPED);
        NormalDistribution normal = new NormalDistribution(null, 0, 1);
        double[][] out = new double[count][PARTS];
        for (double[] z : out) {
            double[] u = halton.nextVector();
            for (int i = 0; i < PARTS; i++) {
                z[i] = normal.inverseCumulativeProbability(Math.max(0.002, Math.min(0.998, u[i])));
            }
        }
        return out;
    }
}
