package bendline.report;

import bendline.compare.Difference;
import bendline.compare.Reading;
import java.util.Arrays;
import java.util.List;

/**
 * Every cast of both sets on one line a set: rings for A, discs for B, each with its own uncertainty, an upright stroke at the
 * middle of the set; under them, from A's middle, the shift with its interval.
 */
final class DotRows {

    private static final double WIDTH = 300;
    private static final double HEIGHT = 96;
    private static final double LEFT = 22;
    private static final double RIGHT = 10;
    private static final double ROW_A = 18;
    private static final double ROW_B = 44;
    private static final double ROW_SHIFT = 68;

    private final Difference d;
    private final double from;
    private final double perUnit;

    private DotRows(Difference d) {
        this.d = d;
        double middle = middle(d.a());
        double low = middle
                + Math.min(0, d.shift().bounded() ? d.shift().low() : d.shift().estimate());
        double high = middle
                + Math.max(0, d.shift().bounded() ? d.shift().high() : d.shift().estimate());
        for (List<Reading> set : List.of(d.a(), d.b())) {
            for (Reading r : set) {
                low = Math.min(low, r.value() - sd(r));
                high = Math.max(high, r.value() + sd(r));
            }
        }
        double room = 0.05 * Math.max(1e-9, high - low);
        this.from = low - room;
        this.perUnit = (WIDTH - LEFT - RIGHT) / (high - low + 2 * room);
    }

    static String draw(Difference d) {
        return new DotRows(d).svg();
    }

    private static double sd(Reading r) {
        return Double.isFinite(r.plusMinus()) ? r.plusMinus() : 0;
    }

    private static double middle(List<Reading> set) {
        double[] sorted = set.stream().mapToDouble(Reading::value).sorted().toArray();
        int n = sorted.length;
        return n % 2 == 1 ? sorted[n / 2] : (sorted[n / 2 - 1] + sorted[n / 2]) / 2;
    }

    private double x(double value) {
        return LEFT + (value - from) * perUnit;
    }

    private String svg() {
        StringBuilder out = new StringBuilder(Words.of(
                "<svg class=\"dots\" viewBox=\"0 0 %.0f %.0f\" role=\"img\" aria-label=\"%s\">",
                WIDTH, HEIGHT, label()));
        row(out, "A", d.a(), ROW_A, false);
        row(out, "B", d.b(), ROW_B, true);
        shift(out);
        return out.append("</svg>").toString();
    }

    private String label() {
        return Html.escaped(d.label() + ": " + list(d.a()) + " before, " + list(d.b()) + " after");
    }

    private String list(List<Reading> set) {
        return String.join(
                ", ", set.stream().map(r -> CompareWords.value(d, r.value())).toList());
    }

    private void row(StringBuilder out, String name, List<Reading> set, double y, boolean after) {
        String colour = after ? "var(--blank)" : "var(--soft)";
        out.append(Words.of(
                "<text x=\"2\" y=\"%.0f\" font-size=\"13\" font-weight=\"700\" fill=\"var(--ink)\">%s</text>",
                y + 5, name));
        out.append(Words.of("<path d=\"M%.0f %.0fH%.0f\" stroke=\"var(--rule)\"/>", LEFT, y, WIDTH - RIGHT));
        for (Reading r : set) {
            out.append(Words.of(
                    "<path d=\"M%.1f %.0fH%.1f\" stroke=\"%s\" stroke-width=\"2\" opacity=\"0.55\"/>",
                    x(r.value() - sd(r)), y, x(r.value() + sd(r)), colour));
        }
        for (Reading r : set) {
            out.append(Words.of(
                    "<circle cx=\"%.1f\" cy=\"%.0f\" r=\"5\" fill=\"%s\" stroke=\"%s\" stroke-width=\"1.8\"/>",
                    x(r.value()), y, after ? colour : "var(--paper)", after ? "var(--paper)" : colour));
        }
        out.append(Words.of(
                "<path d=\"M%.1f %.0fV%.0f\" stroke=\"var(--ink)\" stroke-width=\"2.4\"/>",
                x(middle(set)), y - 11, y + 11));
    }

    private void shift(StringBuilder out) {
        double zero = x(middle(d.a()));
        double to = x(middle(d.a()) + d.shift().estimate());
        out.append(Words.of(
                "<path d=\"M%.1f %.0fV%.0f\" stroke=\"var(--soft)\" stroke-dasharray=\"3 3\"/>",
                zero, ROW_A + 11, ROW_SHIFT + 8));
        if (d.shift().bounded()) {
            double low = x(middle(d.a()) + d.shift().low());
            double high = x(middle(d.a()) + d.shift().high());
            out.append(Words.of(
                    "<path d=\"M%.1f %.0fH%.1fM%.1f %.0fv10M%.1f %.0fv10\" stroke=\"var(--ink)\" stroke-width=\"1.6\""
                            + " fill=\"none\"/>",
                    low, ROW_SHIFT, high, low, ROW_SHIFT - 5, high, ROW_SHIFT - 5));
        }
        out.append(Words.of("<path d=\"M%.1f %.0fl6 6l-6 6l-6 -6z\" fill=\"var(--ink)\"/>", to, ROW_SHIFT - 6));
        double[] ends = {d.a().get(0).value(), d.b().get(0).value()};
        for (List<Reading> set : List.of(d.a(), d.b())) {
            ends[0] = Math.min(
                    ends[0], set.stream().mapToDouble(Reading::value).min().orElse(ends[0]));
            ends[1] = Math.max(
                    ends[1], set.stream().mapToDouble(Reading::value).max().orElse(ends[1]));
        }
        Arrays.sort(ends);
        out.append(Words.of(
                "<text x=\"%.1f\" y=\"92\" font-size=\"13\" fill=\"var(--soft)\">%s</text>",
                LEFT, CompareWords.value(d, ends[0])));
        out.append(Words.of(
                "<text x=\"%.1f\" y=\"92\" font-size=\"13\" text-anchor=\"end\" fill=\"var(--soft)\">%s</text>",
                WIDTH - RIGHT, CompareWords.value(d, ends[1])));
    }
}
