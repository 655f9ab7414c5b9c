package bendline.report;

import bendline.technique.Finding;
import bendline.technique.Finding.Check;
import bendline.technique.Finding.State;

/** Verdicts in words. */
final class StateWords {

    private StateWords() {}

    static String verdict(Finding finding) {
        return switch (finding.state()) {
            case FOUND -> "Found, " + strength(finding.severity());
            case CLEAR -> "Not there";
            case CANNOT_TELL -> "Cannot tell";
        };
    }

    private static String strength(double severity) {
        if (severity < 1 / 3.0) {
            return "mild";
        }
        return severity < 2 / 3.0 ? "plain" : "strong";
    }

    /** What one number says. */
    static String says(Check check) {
        Double value = check.measure().value();
        if (value == null) {
            return "cannot tell: " + check.measure().basis();
        }
        String side = check.worseAbove() ? "above " : "below ";
        String limit = side + Words.alike(check.limit(), check.measure());
        return switch (check.verdict()) {
            case FOUND -> "a fault " + limit + "; speaks for it";
            case CLEAR -> "a fault " + limit + "; speaks against it";
            case CANNOT_TELL -> "a fault " + limit + "; too close to tell";
        };
    }

    /** How sure a finding is, from how far its numbers stand clear of their limits. */
    static String howSure(Finding finding) {
        long speaking = finding.checks().stream()
                .filter(c -> c.verdict() == State.FOUND)
                .count();
        if (speaking == 0) {
            return "";
        }
        double margin = finding.checks().stream()
                .filter(c -> c.verdict() == State.FOUND && c.measure().value() != null)
                .mapToDouble(c ->
                        Math.abs(c.measure().value() - c.limit()) / c.measure().plusMinus())
                .filter(Double::isFinite)
                .min()
                .orElse(Double.NaN);
        String who = Words.of(
                "%d of %d numbers %s for it", speaking, finding.checks().size(), speaking == 1 ? "speaks" : "speak");
        if (Double.isNaN(margin)) {
            return who + ".";
        }
        String each = speaking == 1 ? "" : "each ";
        return margin >= 2
                ? Words.of(
                        "%s, %sbeyond its limit by more than %d times its uncertainty.",
                        who, each, (int) Math.min(10, Math.floor(margin)))
                : who + ", but not all by much more than their uncertainty: look at the frames yourself.";
    }
}
