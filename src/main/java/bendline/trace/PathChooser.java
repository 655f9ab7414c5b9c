package bendline.trace;

import bendline.geometry.Polyline;
import bendline.trace.PolarSearch.Candidate;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One candidate a frame, or none, such that evidence and continuity are best over the whole clip at once (dynamic
 * programming over frames). A single frame may be overruled by its neighbours; a jump must pay for itself.
 */
final class PathChooser {

    /** Price of a mean displacement of one pixel a frame, in the units of a candidate's score. */
    private final double movePrice;
    /** Score of a frame in which no candidate is taken. */
    private final double noneScore;
    /** Price of going from none to a candidate or back. */
    private final double switchPrice;

    /** @param heightPx picture height, which sets the scale of scores and moves */
    PathChooser(double heightPx) {
        movePrice = 2.0;
        noneScore = 0.1 * heightPx;
        switchPrice = 0.05 * heightPx;
    }

    /**
     * @param candidates per frame, may be empty lists
     * @return per frame the chosen candidate or null
     */
    @Nullable
    Candidate[] choose(List<List<Candidate>> candidates) {
        int n = candidates.size();
        double[][] score = new double[n][];
        int[][] from = new int[n][];
        for (int t = 0; t < n; t++) {
            List<Candidate> here = candidates.get(t);
            score[t] = new double[here.size() + 1];
            from[t] = new int[here.size() + 1];
            for (int k = 0; k <= here.size(); k++) {
                double own = k < here.size() ? here.get(k).score() : noneScore;
                score[t][k] = own + (t == 0 ? 0 : bestFrom(candidates.get(t - 1), score[t - 1], here, k, from[t]));
            }
        }
        return backtrack(candidates, score, from);
    }

    private double bestFrom(List<Candidate> before, double[] score, List<Candidate> here, int k, int[] from) {
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
                        * displacement(before.get(q).curve(), here.get(k).curve());
            }
            if (score[q] - price > best) {
                best = score[q] - price;
                from[k] = q;
            }
        }
        return best;
    }

    private static @Nullable Candidate[] backtrack(List<List<Candidate>> candidates, double[][] score, int[][] from) {
        int n = candidates.size();
        @Nullable Candidate[] out = new Candidate[n];
        if (n == 0) {
            return out;
        }
        int k = 0;
        for (int q = 1; q < score[n - 1].length; q++) {
            k = score[n - 1][q] > score[n - 1][k] ? q : k;
        }
        for (int t = n - 1; t >= 0; t--) {
            out[t] = k < candidates.get(t).size() ? candidates.get(t).get(k) : null;
            k = from[t][k];
        }
        return out;
    }

    /** Mean distance between two curves at equal arc lengths from the hands, over the shorter one. */
    static double displacement(Polyline a, Polyline b) {
        double length = Math.min(a.length(), b.length());
        return Arrays.stream(new double[] {0.1, 0.3, 0.5, 0.7, 0.9})
                .map(f -> a.at(f * length).distance(b.at(f * length)))
                .average()
                .orElse(0);
    }
}
