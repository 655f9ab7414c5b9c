package bendline.report;

import bendline.compare.Comparison;
import bendline.compare.Confounder;
import bendline.compare.Difference;
import bendline.compare.Drift;
import bendline.compare.Sequence;
import bendline.compare.Uneven;
import bendline.stroke.Measure;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** A comparison in sentences. */
final class CompareWords {

    private CompareWords() {}

    /** A number of a measure's kind. */
    static String value(Difference d, double value) {
        return Words.alike(value, measure(d));
    }

    private static Measure measure(Difference d) {
        return Measure.unknown(d.id(), d.label(), d.unit(), "");
    }

    /** The outcome in a few words. */
    static String headline(Comparison c) {
        List<Difference> shown = c.family().stream().filter(Difference::shown).toList();
        List<Difference> credited =
                shown.stream().filter(d -> d.explainedBy().isEmpty()).toList();
        if (!credited.isEmpty()) {
            return Words.capital(names(credited)) + (credited.size() == 1 ? " has changed" : " have changed");
        }
        if (!shown.isEmpty()) {
            return Words.capital(names(shown)) + " changed, but so did something else";
        }
        boolean could = c.family().stream().anyMatch(d -> d.verdict() == Difference.Verdict.NOT_SHOWN);
        return could ? "No change shown" : "Too few casts to tell";
    }

    private static String names(List<Difference> all) {
        String first = all.stream().limit(2).map(CompareWords::brief).collect(Collectors.joining(" and "));
        return all.size() > 2 ? first + Words.of(" and %d more", all.size() - 2) : first;
    }

    /** A label without what stands in brackets behind it. */
    static String brief(Difference d) {
        return d.label().replaceAll("\\s*\\(.*\\)", "");
    }

    /** What changed besides the stroke; a sentence each. */
    static List<String> besides(Comparison c) {
        List<String> out = new ArrayList<>();
        for (Confounder x : c.confounders()) {
            String what = Words.capital(x.what().label());
            String a = list(x.inA());
            String b = list(x.inB());
            out.add(
                    switch (x.state()) {
                        case DIFFERS -> what + " changed too: " + a + " in A, " + b + " in B.";
                        case MIXED -> what + " is mixed in both sets: " + a + ".";
                        case NOT_TOLD ->
                            what + " is not written down for every cast, so a change of it can't be ruled out.";
                    });
        }
        return out;
    }

    private static String list(List<String> values) {
        return values.isEmpty() ? "not told" : String.join(", ", values);
    }

    static String verdict(Difference d) {
        return switch (d.verdict()) {
            case MORE -> "More in B";
            case LESS -> "Less in B";
            case NOT_SHOWN -> "No change shown";
            case CANNOT_TELL -> "Cannot tell";
            case NOT_TESTED -> "Not tested";
        };
    }

    /** Class of the verdict's frame, as for findings. */
    static String frame(Difference d) {
        return switch (d.verdict()) {
            case MORE, LESS -> "found";
            case NOT_SHOWN -> "clear";
            case CANNOT_TELL, NOT_TESTED -> "cannot-tell";
        };
    }

    /** The difference with its interval. */
    static String difference(Difference d) {
        String by = signed(d, d.shift().estimate());
        if (!d.shift().bounded()) {
            return by
                    + Words.of(
                            " (%d and %d casts give no interval of %.0f %%)",
                            d.a().size(), d.b().size(), 100 * Comparison.LEVEL);
        }
        return by + ", between " + signed(d, d.shift().low()) + " and "
                + signed(d, d.shift().high())
                + Words.of(" (%.1f %%)", 100 * d.shift().confidence());
    }

    private static String signed(Difference d, double v) {
        return (v > 0 ? "+" : "") + value(d, v);
    }

    /** What to make of it, in sentences. */
    static List<String> says(Difference d) {
        List<String> out = new ArrayList<>();
        out.add(sentence(d));
        if (!d.explainedBy().isEmpty()) {
            out.add("Not to be put down to technique alone: "
                    + d.explainedBy().stream().map(c -> c.what().label()).collect(Collectors.joining(", "))
                    + " changed at the same time.");
        }
        if (Double.isFinite(d.measurementShare()) && d.measurementShare() > 0.5) {
            out.add(Words.of(
                    "%.0f %% of the scatter is no more than measuring adds: a better film would tell more than more casts.",
                    100 * d.measurementShare()));
        }
        if (!d.shown()) {
            out.add(power(d));
        }
        return out;
    }

    private static String sentence(Difference d) {
        return switch (d.verdict()) {
            case MORE, LESS ->
                Words.of("Chance alone does this in fewer than %s of comparisons like this one.", share(d.pHolm()));
            case NOT_SHOWN ->
                Words.of("Chance alone does as much in %s of comparisons like this one.", share(d.pHolm()));
            case CANNOT_TELL ->
                Words.of(
                        "With %d and %d casts and as many measures looked at, no change could have been shown, however plain.",
                        d.a().size(), d.b().size());
            case NOT_TESTED -> "Shown only; it was not among the measures chosen beforehand.";
        };
    }

    private static String share(double p) {
        return p < 0.001 ? "0.1 %" : p > 0.995 ? "nearly all" : Words.of("%.2g %%", Math.ceil(1000 * p) / 10);
    }

    private static String power(Difference d) {
        String could = Double.isFinite(d.smallestChange())
                ? "These casts would have shown a change of about " + value(d, d.smallestChange())
                        + " four times in five. "
                : "";
        int more = d.moreCasts();
        return could
                + (more < 0
                        ? "A change as small as this one would take more than 500 casts a set."
                        : Words.of(
                                "To show a change as large as this one takes about %d more casts in each set.", more));
    }

    /** In which order the casts were made and what follows from it. */
    static String order(Comparison c) {
        Sequence s = c.sequence();
        return switch (s.kind()) {
            case ALTERNATING ->
                c.paired()
                        ? "The casts alternate, so each was held against its neighbour; warming up and tiring touch both alike."
                        : "The casts alternate; they were compared as two sets all the same.";
            case A_THEN_B ->
                "All of A was cast before B in one session, so warming up or tiring can look like a change; alternate next time.";
            case B_THEN_A ->
                "All of B was cast before A in one session, so warming up or tiring can look like a change; alternate next time.";
            case APART ->
                "The sets were cast in different sessions, so whatever differed between the days counts as change; alternate within"
                        + " one session next time.";
            case MIXED -> "The casts of both sets were made through each other, though not in turns.";
            case NOT_KNOWN ->
                "It is not known in which order the casts were made, so warming up and tiring can't be told apart from a change.";
        };
    }

    /** How a measure moves from cast to cast. */
    static String drift(Drift d, Comparison c) {
        Measure m = Measure.unknown(d.id(), d.label(), d.unit(), "");
        String moved = Words.capital(d.label()) + ": " + (d.perCast() > 0 ? "+" : "") + Words.alike(d.perCast(), m)
                + " from cast to cast (" + Words.alike(d.low(), m) + " to " + Words.alike(d.high(), m) + ")";
        if (!d.shown()) {
            return moved + ", no more than chance.";
        }
        double gap = c.sequence().gap();
        boolean blocks =
                c.sequence().kind() == Sequence.Kind.A_THEN_B || c.sequence().kind() == Sequence.Kind.B_THEN_A;
        return moved + ", more than chance"
                + (blocks && Double.isFinite(gap)
                        ? "; over the casts between the middles of the sets that alone makes "
                                + Words.alike(gap * d.perCast(), m) + "."
                        : ".");
    }

    /** How even a set is. */
    static String uneven(String label, Uneven u) {
        Uneven.Scatter s = u.most();
        if (s == null) {
            return label + ": cannot tell, " + u.says() + ".";
        }
        Measure m = Measure.unknown(s.id(), s.label(), s.unit(), "");
        String scatters = s.label().replaceAll("\\s*\\(.*\\)", "") + " scatters most, by " + Words.alike(s.sd(), m)
                + " from cast to cast (" + Words.alike(s.low(), m) + " to " + Words.alike(s.high(), m) + "; a step is "
                + Words.alike(s.step(), m) + ")";
        return label + ": "
                + switch (u.state()) {
                    case FOUND ->
                        "uneven. " + Words.capital(scatters) + "; hold "
                                + s.lowest().cast().name() + " against "
                                + s.highest().cast().name() + ".";
                    case CLEAR -> "even. " + Words.capital(scatters) + ".";
                    case CANNOT_TELL -> "cannot tell, " + u.says() + ". " + Words.capital(scatters) + ".";
                };
    }
}
