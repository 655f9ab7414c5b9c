package bendline.stroke;

import bendline.signal.Trend;

/**
 * A blank that may have been bent deepest while its tip was not seen. The bend grows and falls in a tenth of a second; what is
 * deepest of the frames on both sides of a gap says little of what lies in it.
 */
final class HiddenBend {

    /** By so much the bend must be able to pass the deepest that was seen: a fourth more of the compression. */
    private static final double DEEPER = Math.sqrt(1.25);

    private HiddenBend() {}

    /** These moments, without the deepest bend where a gap in the load may hide a deeper one. */
    static Moments from(Moments m, RodSeries rod, StrokeTrends trends, double step) {
        double from = Double.isNaN(m.turnStart()) ? m.fastestTurn() : m.turnStart();
        double to = Double.isNaN(m.stop()) ? m.fastestTurn() : m.stop();
        int deepest = at(rod, m.deepestLoad());
        if (deepest < 0) {
            return m;
        }
        double seen = Math.abs(trends.bend().values()[deepest]);
        int last = -1;
        for (int i = 0; i < rod.size(); i++) {
            if (Double.isNaN(rod.chord()[i])) {
                continue;
            }
            boolean within = last >= 0 && rod.time()[last] < to && rod.time()[i] > from;
            if (within
                    && rod.time()[i] - rod.time()[last] > StrokeTrends.bridge(step) * (1 + 1e-9)
                    && reached(trends.bend(), last, i) > DEEPER * seen) {
                return m.withoutDeepest();
            }
            last = i;
        }
        return m;
    }

    /** How deep the bend comes in a gap if it goes on for half of it as it does at either end. */
    private static double reached(Trend bend, int from, int to) {
        double half = 0.5 * (bend.times()[to] - bend.times()[from]);
        double before = bend.values()[from] + half * Math.max(0, bend.rates()[from]);
        double after = bend.values()[to] - half * Math.min(0, bend.rates()[to]);
        return Math.max(before, after);
    }

    /** The frame nearest to a time; −1 for none. */
    private static int at(RodSeries rod, double time) {
        int best = -1;
        for (int i = 0; i < rod.size(); i++) {
            if (!Double.isNaN(rod.chord()[i])
                    && (best < 0 || Math.abs(rod.time()[i] - time) < Math.abs(rod.time()[best] - time))) {
                best = i;
            }
        }
        return Double.isNaN(time) ? -1 : best;
    }
}
