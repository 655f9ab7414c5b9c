package bendline.stroke;

import bendline.rod.BendReader;
import bendline.rod.BendReading;
import bendline.rod.Blank;
import bendline.rod.BlankLibrary;
import bendline.rod.TracedArc;
import java.util.List;

/** Where along a blank an arc bends. Force over stiffness shapes it, so that the stiffness itself need not be known. */
final class BendPlace {

    /** A tip twice or half as stiff moves the place of the same compression by 0.03; the rest is the reading. */
    static final double SD = 0.04;

    /** An arc farther from the moment than this is of another bend, real seconds. */
    private static final double NEAR_SECONDS = 0.03;

    /** Lengths of arcs, metres or rod lengths, that can be of a rod. */
    private static final double SHORTEST = 0.5;

    private static final double LONGEST = 8;

    private static final int POINTS = 13;

    private BendPlace() {}

    /** Mean place of the bend in the arc nearest to a real time, as a share of the length from the hand; NaN for none. */
    static double at(List<BendArc> arcs, double time) {
        BendArc best = null;
        for (BendArc a : arcs) {
            double away = Math.abs(a.realSeconds() - time);
            if (a.whole() && away <= NEAR_SECONDS && (best == null || away < Math.abs(best.realSeconds() - time))) {
                best = a;
            }
        }
        double length = best == null ? Double.NaN : best.line().length();
        if (best == null || !(length >= SHORTEST && length <= LONGEST)) {
            return Double.NaN;
        }
        Blank like = BlankLibrary.like(3.3, Double.NaN).bending().stretchedTo(length);
        BendReading read = new BendReader(like)
                .read(TracedArc.through(best.line().resampled(POINTS).points(), best.sd()), BendReader.Hints.NONE);
        return read.shape() == null ? Double.NaN : read.shape().bendCentre();
    }
}
