package bendline.report;

import bendline.technique.Finding.Check;

/** A number with its uncertainty against its limit, as a small drawing: the side of the fault is hatched. */
final class LimitLine {

    private static final double WIDTH = 280;
    private static final double HEIGHT = 26;
    private static final double EDGE = 6;

    private LimitLine() {}

    /** The drawing, or an empty text where there is no number. */
    static String draw(Check check, String id) {
        Double value = check.measure().value();
        if (value == null) {
            return "";
        }
        double sd =
                Double.isFinite(check.measure().plusMinus()) ? check.measure().plusMinus() : 0;
        double low = Math.min(0, Math.min(value - 2 * sd, check.limit()));
        double high = Math.max(0, Math.max(value + 2 * sd, check.limit()));
        double room = 0.15 * Math.max(1e-9, high - low);
        double from = low < 0 ? low - room : 0;
        double to = high + room;
        double perUnit = (WIDTH - 2 * EDGE) / (to - from);
        double limit = EDGE + (check.limit() - from) * perUnit;
        double at = EDGE + (value - from) * perUnit;
        double faultFrom = check.worseAbove() ? limit : EDGE;
        double faultWidth = check.worseAbove() ? WIDTH - EDGE - limit : limit - EDGE;
        return Words.of(
                "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"limit\" viewBox=\"0 0 %.0f %.0f\" aria-hidden=\"true\"><defs><pattern id=\"%s\" width=\"5\""
                        + " height=\"5\" patternUnits=\"userSpaceOnUse\" patternTransform=\"rotate(45)\"><path"
                        + " d=\"M0 0V5\" stroke=\"var(--soft)\" stroke-width=\"1.6\"/></pattern></defs><rect x=\"%.1f\""
                        + " y=\"8\" width=\"%.1f\" height=\"10\" fill=\"url(#%s)\"/><path d=\"M%.0f 13H%.0f\""
                        + " stroke=\"var(--soft)\"/><path d=\"M%.1f 3V23\" stroke=\"var(--ink)\" stroke-width=\"2\"/>"
                        + "<path d=\"M%.1f 13H%.1f\" stroke=\"var(--blank)\" stroke-width=\"5\"/><circle cx=\"%.1f\""
                        + " cy=\"13\" r=\"5\" fill=\"var(--blank)\" stroke=\"var(--paper)\" stroke-width=\"1.5\"/></svg>",
                WIDTH,
                HEIGHT,
                id,
                faultFrom,
                Math.max(0, faultWidth),
                id,
                EDGE,
                WIDTH - EDGE,
                limit,
                at - sd * perUnit,
                at + sd * perUnit,
                at);
    }
}
