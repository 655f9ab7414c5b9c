package bendline.trace;

import bendline.trace.BlankFitter.Fit;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** When a fitted curve is believed. */
final class Confidence {

    private static final double WITHOUT_GAPS = 0.88;

    private Confidence() {}

    /** Good enough to be asked where its neighbours should be. */
    static boolean sure(@Nullable Fit fit) {
        return fit != null && fit.coverage() >= 0.6 && fit.alongSdPx() < 8 && fit.acrossSdPx() < 5;
    }

    /** Good enough to be reported, given that it lies where the neighbours say. */
    static boolean usable(@Nullable Fit fit) {
        return fit != null && fit.coverage() >= 0.4 && fit.alongSdPx() < 15 && fit.acrossSdPx() < 8;
    }

    /** How far a curve may be from its prediction, mean pixels, when the rod moves by a step from frame to frame. */
    static double tolerance(double stepPx) {
        return 8 + 0.6 * stepPx;
    }

    /**
     * Curves that show gaps and lie far from where their neighbours say are dropped, the worst first so that it cannot drag
     * others. A curve of the right length without gaps is better evidence than a prediction, above all in the fast part.
     */
    static List<Look> withoutOutliers(List<Look> looks) {
        List<Look> out = new ArrayList<>(looks);
        for (int round = 0; round < looks.size() / 4 + 1; round++) {
            int worst = -1;
            double excess = 1;
            for (int t = 0; t < out.size(); t++) {
                Fit fit = out.get(t).chosen();
                fit = fit != null && fit.coverage() < WITHOUT_GAPS ? fit : null;
                Neighbours.Prediction p = fit == null ? null : Neighbours.at(t, out);
                if (p != null) {
                    double e = PathChooser.displacement(fit.line(), p.line()) / tolerance(p.stepPx());
                    if (e > excess) {
                        excess = e;
                        worst = t;
                    }
                }
            }
            if (worst < 0) {
                break;
            }
            out.set(worst, out.get(worst).with(null));
        }
        return out;
    }
}
