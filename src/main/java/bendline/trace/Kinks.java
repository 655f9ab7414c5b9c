package bendline.trace;

import bendline.geometry.Angles;
import bendline.geometry.Polyline;
import bendline.signal.LeastSquares;
import bendline.signal.Scatter;
import bendline.trace.BlankFitter.Fit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Finds frames in which the blank leaves the hand in a direction that its neighbours in time do not bear out: a rod weighs
 * too much to kink for one picture. Such curves have caught on an arm or a branch.
 */
final class Kinks {

    /** Frames to either side that are asked, and how many of them must show the blank. */
    private static final int SPAN = 7;

    private static final int FEWEST = 6;
    /** Deviations below this are never called a kink, radians. */
    private static final double SMALLEST = 0.1;

    private static final double SCATTERS = 5;

    private Kinks() {}

    /** The same looks without curves that kink. */
    static List<Look> removed(List<Look> looks, RodLength.Estimate rod) {
        double[] angle = new double[looks.size()];
        for (int t = 0; t < angle.length; t++) {
            Fit fit = looks.get(t).chosen();
            angle[t] = Double.NaN;
            if (fit != null) {
                Polyline drawn = ToTheHand.drawn(fit.line(), rod.along(fit.line()) - fit.hiddenPx(), 12);
                angle[t] = drawn.at(0.1 * rod.freePx()).minus(drawn.first()).angle();
            }
        }
        List<Look> out = new ArrayList<>(looks.size());
        for (int t = 0; t < angle.length; t++) {
            boolean kink = !Double.isNaN(angle[t]) && kinks(t, angle, looks);
            out.add(kink ? looks.get(t).with(null) : looks.get(t));
        }
        return out;
    }

    private static boolean kinks(int t, double[] angle, List<Look> looks) {
        List<Integer> near = new ArrayList<>();
        for (int i = Math.max(0, t - SPAN); i <= Math.min(angle.length - 1, t + SPAN); i++) {
            if (i != t && !Double.isNaN(angle[i])) {
                near.add(i);
            }
        }
        if (near.size() < FEWEST) {
            return false;
        }
        double now = looks.get(t).seconds();
        double[] away =
                near.stream().mapToDouble(i -> looks.get(i).seconds() - now).toArray();
        double span = Math.max(1e-6, Arrays.stream(away).map(Math::abs).max().orElse(1));
        double[] u = Arrays.stream(away).map(s -> s / span).toArray();
        double[] v =
                near.stream().mapToDouble(i -> Angles.wrap(angle[i] - angle[t])).toArray();
        double[] weight = new double[v.length];
        double median = median(v.clone());
        double spread = Math.max(SMALLEST, 3 * Scatter.SD_OVER_MEDIAN * median(away(v, median)));
        for (int k = 0; k < v.length; k++) {
            weight[k] = 1 / (1 + sq((v[k] - median) / (2 * spread)));
        }
        double expected = median;
        double scatter = spread;
        for (int round = 0; round < 6; round++) {
            double[] c = LeastSquares.parabola(
                    u, v, Arrays.stream(weight).map(w -> w + 1e-6).toArray());
            double[] residual = new double[v.length];
            for (int k = 0; k < v.length; k++) {
                residual[k] = v[k] - c[0] - u[k] * (c[1] + u[k] * c[2]);
            }
            scatter = Math.max(0.01, Scatter.SD_OVER_MEDIAN * median(away(residual, 0)));
            for (int k = 0; k < v.length; k++) {
                weight[k] = 1 / (1 + sq(residual[k] / (2 * scatter)));
            }
            expected = c[0];
        }
        return Math.abs(expected) > Math.max(SMALLEST, SCATTERS * scatter);
    }

    private static double[] away(double[] values, double from) {
        return Arrays.stream(values).map(x -> Math.abs(x - from)).toArray();
    }

    private static double median(double[] values) {
        Arrays.sort(values);
        return values[values.length / 2];
    }

    private static double sq(double x) {
        return x * x;
    }
}
