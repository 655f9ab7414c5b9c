package bendline.trace;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.trace.BlankFitter.Fit;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Now and then the fist at the butt is taken for the upper one, half a metre from it along the rod. Then as much of the blank shows as
 * in other frames, only that more than ever is missing between it and the hand; where line is taken for more of the rod, in contrast,
 * more shows than ever.
 */
final class OtherFist {

    /** A hand is where the rod's length puts it within this share of the length, and is another beyond that one. */
    private static final double SAME = 0.05;

    private static final double OTHER = 0.08;

    /** How much more of the blank may show than in other frames, shares of its length. */
    private static final double NO_LONGER = 0.02;

    private static final int FEWEST = 20;

    private OtherFist() {}

    /**
     * The grasps without those.
     *
     * @param looks before tips were put right by hands
     * @param rod how long it looks from the upper hand
     * @param origin of the looks' coordinates, reference picture
     */
    static List<Grasp> without(List<Grasp> grasps, List<Look> looks, RodLength.Estimate rod, Point origin) {
        double[] shown = grasps.stream()
                .filter(g -> Math.abs(length(g, looks, rod, origin) - 1) < SAME)
                .mapToDouble(g -> shown(looks.get(g.frame()).chosen(), rod))
                .sorted()
                .toArray();
        if (shown.length < FEWEST) {
            return grasps;
        }
        double usual = shown[shown.length / 2];
        return grasps.stream()
                .filter(g -> !(length(g, looks, rod, origin) > 1 + OTHER
                        && shown(looks.get(g.frame()).chosen(), rod) < usual + NO_LONGER))
                .toList();
    }

    /** From hand to tip, shares of the rod's length; NaN where no sure curve leads to a tip. */
    private static double length(Grasp grasp, List<Look> looks, RodLength.Estimate rod, Point origin) {
        Fit fit = looks.get(grasp.frame()).chosen();
        if (!Confidence.sure(fit)) {
            return Double.NaN;
        }
        Polyline line = fit.line();
        double inside = line.first().minus(grasp.hand().minus(origin)).dot(line.tangentAt(0));
        return (line.length() + inside) / rod.along(line);
    }

    private static double shown(@Nullable Fit fit, RodLength.Estimate rod) {
        return fit == null ? 0 : fit.line().length() / rod.along(fit.line());
    }
}
