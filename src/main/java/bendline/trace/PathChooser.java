package bendline.trace;

import bendline.geometry.Polyline;
import bendline.trace.BlankFitter.Fit;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One fitted curve a frame, or none, such that evidence and continuity are best over the whole clip at once (dynamic
 * programming over frames). A single frame may be overruled by its neighbours; a jump must pay for itself.
 */
final class PathChooser {

    /** Evidence of a frame in which nothing is taken, as a share of the clip's usual evidence. */
    private static final double NONE_SHARE = 0.15;
    /** Price of going from none to a curve or back, as a share of the usual evidence. */
    private static final double SWITCH_SHARE = 0.05;

    /** Across its end a blank is known to a pixel or two; a line put together from rod and arm is not. */
    private static final double VAGUE_PX = 4;

    private final double freePx;
    private final double movePrice;
    private final double noneScore;
    private final double switchPrice;

    /**
     * @param choices per frame
     * @param heightPx picture height, pixels; a mean displacement of half of it in one frame costs the usual evidence
     * @param freePx upper hand to tip along the blank, pixels
     */
    PathChooser(List<List<Fit>> choices, double heightPx, double freePx) {
        this.freePx = freePx;
        double[] best = choices.stream()
                .mapToDouble(c -> c.stream().mapToDouble(this::worth).max().orElse(0))
                .sorted()
                .toArray();
        double usual = best.length == 0 ? 0 : best[best.length / 2];
        movePrice = usual / (0.5 * heightPx);
        noneScore = NONE_SHARE * usual;
        switchPrice = SWITCH_SHARE * usual;
    }

    /** Evidence for a blank: what a line is longer than the rod speaks of something else, and so does a ragged one. */
    private double worth(Fit fit) {
        double vague = fit.acrossSdPx() / VAGUE_PX;
        return fit.evidence() * Math.min(1, freePx / fit.line().length()) / (1 + vague * vague);
    }

    /** Per frame the chosen curve or null. */
    @Nullable
    Fit[] choose(List<List<Fit>> choices) {
        int n = choices.size();
        double[][] score = new double[n][];
        int[][] from = new int[n][];
        for (int t = 0; t < n; t++) {
            List<Fit> here = choices.get(t);
            score[t] = new double[here.size() + 1];
            from[t] = new int[here.size() + 1];
            for (int k = 0; k <= here.size(); k++) {
                double own = k < here.size() ? worth(here.get(k)) : noneScore;
                score[t][k] = own + (t == 0 ? 0 : bestFrom(choices.get(t - 1), score[t - 1], here, k, from[t]));
            }
        }
        return backtrack(choices, score, from);
    }

    private double bestFrom(List<Fit> before, double[] score, List<Fit> here, int k, int[] from) {
        double best = Double.NEGATIVE_INFINITY;
        for (int q = 0; q <= before.size(); q++) {
            boolean wasNone = q == before.size();
            boolean isNone = k == here.size();
            double price;
            if (wasNone && isNone) {
                price = 0;
            } else if (wasNone || isNone) {
                price = switchPrice;
            } else {
                price = movePrice
                        * displacement(before.get(q).line(), here.get(k).line());
            }
            if (score[q] - price > best) {
                best = score[q] - price;
                from[k] = q;
            }
        }
        return best;
    }

    private static @Nullable Fit[] backtrack(List<List<Fit>> choices, double[][] score, int[][] from) {
        int n = choices.size();
        @Nullable Fit[] out = new Fit[n];
        if (n == 0) {
            return out;
        }
        int k = 0;
        for (int q = 1; q < score[n - 1].length; q++) {
            k = score[n - 1][q] > score[n - 1][k] ? q : k;
        }
        for (int t = n - 1; t >= 0; t--) {
            out[t] = k < choices.get(t).size() ? choices.get(t).get(k) : null;
            k = from[t][k];
        }
        return out;
    }

    /** Mean distance between two curves at equal arc lengths from their outer ends, over the shorter one. */
    static double displacement(Polyline a, Polyline b) {
        double length = Math.min(a.length(), b.length());
        return Arrays.stream(new double[] {0.05, 0.25, 0.5, 0.75, 0.95})
                .map(f -> a.at(a.length() - f * length).distance(b.at(b.length() - f * length)))
                .average()
                .orElse(0);
    }
}
