package bendline.technique;

import bendline.stroke.Stroke;
import bendline.technique.Finding.State;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Looks a stroke over for faults, says what was good, and picks the one thing to work on next. */
public final class TechniqueReview {

    /** Severities that differ by less are alike. */
    private static final double ALIKE = 0.15;

    /** Faults that are sides of another one; where that is found they are not a thing to work on by themselves. */
    private static final Set<String> SIDES_OF_A_RUSH = Set.of("slack-start", "late-bend");

    private static final String RUSH = "flat-rushed-backswing";

    private final Limits limits;

    /** Holds strokes against the limits that come with the program. */
    public TechniqueReview() {
        this(Limits.standard());
    }

    /** @param limits what to hold strokes against */
    public TechniqueReview(Limits limits) {
        this.limits = limits;
    }

    /** The review of one stroke. */
    public Review review(Stroke stroke) {
        List<Finding> findings = new ArrayList<>();
        List<String> good = new ArrayList<>();
        for (Fault fault : Faults.ALL) {
            Finding f = fault.look(stroke, limits);
            findings.add(f);
            String praise = f.state() == State.CLEAR ? Sentences.filled(fault.praise(), stroke) : null;
            if (praise != null && !praise.isEmpty()) {
                good.add(praise);
            }
        }
        findings.addAll(Unseen.findings(stroke));
        Finding next = next(findings);
        return new Review(findings, good, next, why(next, findings));
    }

    /**
     * The most severe fault; of those alike the one that comes first in the cast, since later ones often follow from earlier
     * ones.
     */
    private static @Nullable Finding next(List<Finding> findings) {
        List<Finding> found = candidates(findings);
        double worst = found.stream().mapToDouble(Finding::severity).max().orElse(0);
        return found.stream()
                .filter(f -> f.severity() >= worst - ALIKE)
                .findFirst()
                .orElse(null);
    }

    private static List<Finding> candidates(List<Finding> findings) {
        List<Finding> found =
                findings.stream().filter(f -> f.state() == State.FOUND).toList();
        boolean rushed = found.stream().anyMatch(f -> f.id().equals(RUSH));
        return found.stream()
                .filter(f -> !(rushed && SIDES_OF_A_RUSH.contains(f.id())))
                .toList();
    }

    private static String why(@Nullable Finding next, List<Finding> findings) {
        if (next == null) {
            boolean open = findings.stream().limit(Faults.ALL.size()).anyMatch(f -> f.state() == State.CANNOT_TELL);
            return open
                    ? "None of the faults looked for was found; some could not be told from this clip."
                    : "None of the faults looked for was found: repeat the stroke and compare sets of casts.";
        }
        List<Finding> found = candidates(findings);
        if (found.size() == 1) {
            long all = findings.stream().filter(f -> f.state() == State.FOUND).count();
            return all == 1
                    ? "It is the only fault found."
                    : "What else was found is a side of it: mend this first and look again.";
        }
        double worst = found.stream().mapToDouble(Finding::severity).max().orElse(0);
        boolean strongest = next.severity() == worst;
        String others = found.stream()
                .filter(f -> !f.equals(next))
                .sorted(Comparator.comparingDouble(Finding::severity).reversed())
                .map(f -> String.format(Locale.ROOT, "%s (%.2f)", f.title().toLowerCase(Locale.ROOT), f.severity()))
                .findFirst()
                .orElse("");
        return String.format(
                Locale.ROOT,
                strongest
                        ? "It is the most severe of the faults found (%.2f of 1), before %s."
                        : "It is about as severe (%.2f of 1) as %s and comes earlier in the cast; what comes later often"
                                + " follows from it.",
                next.severity(),
                others);
    }
}
