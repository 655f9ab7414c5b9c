package bendline.trace;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.SingularMatrixException;

/**
 * Where a ridge turns a corner. A blank bends smoothly, however hard it is loaded; line leaves its tip at an angle, and after the
 * release shows as far as the picture goes. Round a place, the ridge's offsets from a smooth curve are taken for a parabola and a
 * hinge; it is a corner where the hinge is wide open and far beyond its uncertainty.
 */
final class Corner {

    /** How far to both sides the ridge is asked, pixels. */
    private static final double SPAN_PX = 45;

    /** Least that must lie beyond a corner, pixels. */
    private static final double BEYOND_PX = 18;

    /** Least change of slope: a tip under load bends by less over its last few pixels, and a line at less does little harm. */
    private static final double LEAST = Math.tan(Math.toRadians(9));

    /** Least change in its uncertainties. */
    private static final double SURE = 6;

    /** Inner share of a ridge that is never the tip. */
    private static final double INNER = 0.35;

    /** Neighbouring stations share pixels: so many of them are one measurement. */
    private static final double ALIKE = 2;

    private static final int COARSE = 3;
    private static final int TERMS = 4;

    private Corner() {}

    /**
     * The innermost corner.
     *
     * @param offset of the ridge from a smooth curve by station, pixels
     * @param weight what each is worth, 1/px²
     * @param from first station that shows a ridge
     * @param to last station that does
     * @return its station; {@code to} where there is none
     */
    static int before(double[] offset, double[] weight, int from, int to) {
        int first = from + (int) (INNER * (to - from));
        int last = to - (int) (BEYOND_PX / Strip.STEP_PX);
        int best = -1;
        double most = SURE;
        for (int i = first; i <= last; i += COARSE) {
            double open = open(offset, weight, Math.max(from, i - span()), i, Math.min(to, i + span()));
            if (open > most) {
                most = open;
                best = i;
            } else if (best >= 0 && i - best > span() / 2) {
                break;
            }
        }
        return best < 0 ? to : best;
    }

    private static int span() {
        return (int) (SPAN_PX / Strip.STEP_PX);
    }

    /** By how many of its uncertainties a hinge stands open; 0 where it is nearly closed or the fit fails. */
    private static double open(double[] offset, double[] weight, int from, int at, int to) {
        RealMatrix normal = new Array2DRowRealMatrix(TERMS, TERMS);
        double[] right = new double[TERMS];
        double[] terms = new double[TERMS];
        for (int i = from; i <= to; i++) {
            terms(i - at, terms);
            for (int a = 0; a < TERMS; a++) {
                right[a] += weight[i] * terms[a] * offset[i];
                for (int b = 0; b < TERMS; b++) {
                    normal.addToEntry(a, b, weight[i] * terms[a] * terms[b]);
                }
            }
        }
        try {
            RealMatrix inverse = new LUDecomposition(normal).getSolver().getInverse();
            double[] c = inverse.operate(new ArrayRealVector(right)).toArray();
            double chi = 0;
            for (int i = from; i <= to; i++) {
                terms(i - at, terms);
                double off = offset[i] - c[0] - c[1] * terms[1] - c[2] * terms[2] - c[3] * terms[3];
                chi += weight[i] * off * off;
            }
            double scale = Math.max(1, chi / Math.max(1, to - from + 1 - TERMS));
            double sd = Math.sqrt(ALIKE * scale * inverse.getEntry(3, 3));
            return Math.abs(c[3]) < LEAST ? 0 : Math.abs(c[3]) / sd;
        } catch (SingularMatrixException e) {
            return 0;
        }
    }

    /** A parabola and a hinge, of a way in stations, pixels. */
    private static void terms(int stations, double[] into) {
        double s = stations * Strip.STEP_PX;
        into[0] = 1;
        into[1] = s;
        into[2] = s * s;
        into[3] = Math.max(0, s);
    }
}
