package bendline.stroke;

import bendline.geometry.Polyline;
import java.util.Comparator;
import java.util.List;

/**
 * How far the deepest compression may be off besides what its smooth curve says: arcs about it that are longer or shorter than the
 * rod end on another thing, and a curve that none of them supports bridges a gap or has cut off a crest. Both last for several
 * frames, which the scatter from frame to frame does not tell.
 */
final class BendDepth {

    /** A compression that is known no better is not told: three times what is aimed at. */
    private static final double UNTOLD = 0.045;

    private static final int ARCS = 3;

    static final String UNSURE =
            "where the blank was bent deepest few frames show it, or its length was not the rod's, so that its end"
                    + " was another thing's";

    private BendDepth() {}

    /** The share of it in the compression's 68 % uncertainty; NaN where the compression can't be told. */
    static double sd(StrokeReader.Readings all, Bend bend) {
        double peak = all.moments().peakBend();
        double depth = 1 - all.curves().chord().at(peak);
        List<BendArc> about = bend.arcs().stream()
                .filter(BendArc::whole)
                .sorted(Comparator.comparingDouble(a -> Math.abs(a.realSeconds() - peak)))
                .limit(ARCS)
                .toList();
        if (about.size() < ARCS || Double.isNaN(depth)) {
            return bend.arcs().isEmpty() || Double.isNaN(depth) ? 0 : Double.NaN;
        }
        double[] seen =
                about.stream().mapToDouble(a -> compression(a.line())).sorted().toArray();
        double misplaced = about.stream()
                .mapToDouble(a -> a.misplaced() / a.line().length())
                .average()
                .orElseThrow();
        // A flat arc with the sagitta s in chords: chord ratio 1 − 8/3 s², so that a place off by ε counts 16/3·s·ε.
        double sagitta = Math.sqrt(Math.max(0, depth) * 3 / 8);
        double sd = Math.hypot(16.0 / 3 * sagitta * misplaced, depth - seen[ARCS / 2]);
        return sd > UNTOLD ? Double.NaN : sd;
    }

    /** How much shorter an arc is from end to end than along itself. */
    static double compression(Polyline line) {
        return 1 - line.first().distance(line.last()) / line.length();
    }
}
