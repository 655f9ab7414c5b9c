package bendline.stroke;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/**
 * One moment from all clues to it: their likelihoods multiplied, so that clues that agree sharpen it, one that stands against the
 * others counts little, and two that contradict each other leave it as wide as they lie apart.
 */
final class Clues {

    /** Where a clue that tells the wrong thing may lie: a stretch as long as a stroke, real seconds. */
    static final double ANYWHERE_SECONDS = 0.5;

    private static final int POINTS = 4000;
    private static final double TAILS = 5;

    /** Two clues disagree where they lie apart by more than this many of their uncertainties together. */
    private static final double APART = 2.5;

    private Clues() {}

    /** The moment, its 68 % uncertainty, and which clues say so; those that tell nothing are left out. */
    static Found together(List<Clue> all) {
        List<Clue> known = all.stream().filter(Clue::known).toList();
        if (known.isEmpty()) {
            return Found.nothing("nothing tells it");
        }
        double from = known.stream()
                .mapToDouble(c -> c.seconds() - TAILS * c.sd())
                .min()
                .orElseThrow();
        double to = known.stream()
                .mapToDouble(c -> c.seconds() + TAILS * c.sd())
                .max()
                .orElseThrow();
        double[] weight = new double[POINTS];
        double step = (to - from) / (POINTS - 1);
        int best = 0;
        double total = 0;
        for (int i = 0; i < POINTS; i++) {
            weight[i] = 1;
            for (Clue c : known) {
                weight[i] *= c.likelihood(from + i * step);
            }
            total += weight[i];
            best = weight[i] > weight[best] ? i : best;
        }
        return new Found(
                from + best * step, radius(weight, best, 0.68 * total) * step, words(known, from + best * step));
    }

    /** Half the width about a place that holds a share of the weight. */
    private static double radius(double[] weight, int at, double share) {
        double sum = weight[at];
        int r = 0;
        while (sum < share && r < weight.length) {
            r++;
            sum += at - r >= 0 ? weight[at - r] : 0;
            sum += at + r < weight.length ? weight[at + r] : 0;
        }
        return Math.max(0.5, r);
    }

    private static String words(List<Clue> known, double moment) {
        List<Clue> sharpestFirst = new ArrayList<>(known);
        sharpestFirst.sort(Comparator.comparingDouble(Clue::sd));
        StringBuilder agree = new StringBuilder();
        StringBuilder against = new StringBuilder();
        for (Clue c : sharpestFirst) {
            double off = c.seconds() - moment;
            StringBuilder to = Math.abs(off) > APART * c.sd() ? against : agree;
            to.append(to.length() == 0 ? "" : "; ").append(c.what());
            to.append(
                    to == against
                            ? String.format(
                                    Locale.ROOT, " (%.0f ms %s)", 1000 * Math.abs(off), off > 0 ? "later" : "earlier")
                            : "");
        }
        String disagreement = against.length() == 0 ? "" : "; against it: " + against;
        return agree + disagreement;
    }
}
