package bendline.trace;

import bendline.geometry.Point;
import bendline.trace.BlankFitter.Fit;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * The rig while it is reeled in before a further cast: below the tip, farther away than its drop, and nearer from frame to frame.
 * Anything that hangs, floats or sways below a rod lies there too, so it is looked for backwards only, from where a rig that had not been
 * seen for a while has come up to its drop, and what does not move away at a reel's pace is not believed.
 */
final class ReeledIn {

    /** Slowest and fastest that line is taken in, rod lengths per second: 0.3 to 3 m/s (common practice, no source). */
    private static final double SLOWEST = 0.08;

    private static final double FASTEST = 0.8;

    /** Paces that are tried. */
    private static final int PACES = 19;

    /** What hangs below a tip is so near to upright: sideways share of its distance, swing and a tilted camera included. */
    private static final double UPRIGHT = 0.35;

    /** How far what is found may lie from where it is expected, along the line and across it, where it swings, rod lengths; set on one clip, judged on six. */
    private static final double ALONG = 0.012;

    private static final double ACROSS = 0.03;

    /** What more for each second in which it was not seen, rod lengths: reels are wound evenly, swings turn. */
    private static final double ALONG_RATE = 0.05;

    private static final double ACROSS_RATE = 0.4;

    /** Longest time without seeing it, and shortest that it has to be seen for to be believed, seconds. */
    private static final double GAP_SECONDS = 0.35;

    private static final double LEAST_SECONDS = 0.3;

    /** Share of the frames of that time in which it has to be seen. */
    private static final double LEAST_SHARE = 0.6;

    /** How far off its drop the rig may be where it is first seen, drops. */
    private static final double AT_DROP = 0.3;

    /** What of each surprise is taken for a change of place, and of pace over a frame along the line and across it. */
    private static final double TAKEN = 0.5;

    private static final double PACE_TAKEN = 0.05;

    private static final double SWING_TAKEN = 0.15;

    private final List<List<Blob>> blobs;
    private final List<Look> looks;
    private final double rodPx;
    private final double drop;

    /**
     * @param blobs what moves, by frame
     * @param rodPx hand to tip along the blank, pixels
     * @param drop tip to rig, pixels
     */
    ReeledIn(List<List<Blob>> blobs, List<Look> looks, double rodPx, double drop) {
        this.blobs = blobs;
        this.looks = looks;
        this.rodPx = rodPx;
        this.drop = drop;
    }

    /**
     * What is seen of it, by frame; none where there is no such way.
     *
     * @param places of the rig, one a frame
     */
    Map<Integer, Blob> before(List<Tracked> places) {
        Map<Integer, Blob> out = new TreeMap<>();
        for (int t = 1; t < places.size(); t++) {
            if (places.get(t).seen() && !places.get(t - 1).seen()) {
                out.putAll(longest(t, places));
            }
        }
        return out;
    }

    private Map<Integer, Blob> longest(int from, List<Tracked> places) {
        Map<Integer, Blob> best = new TreeMap<>();
        Point start = below(from, places.get(from).position());
        if (start != null && Math.abs(start.norm() - drop) <= AT_DROP * drop) {
            for (int k = 0; k < PACES; k++) {
                double pace = SLOWEST + (FASTEST - SLOWEST) * k / (PACES - 1);
                TreeMap<Integer, Blob> way = backwards(from, start, pace * rodPx, places);
                if (way.size() > best.size() && believed(way, from, start)) {
                    best = way;
                }
            }
        }
        return best;
    }

    private boolean believed(TreeMap<Integer, Blob> way, int from, Point start) {
        int first = way.firstKey();
        double seconds = looks.get(from).seconds() - looks.get(first).seconds();
        double far = below(first, way.get(first).centre()).norm();
        return seconds >= LEAST_SECONDS
                && way.size() >= LEAST_SHARE * (from - first)
                && far - start.norm() >= SLOWEST * rodPx * seconds;
    }

    /** @param pace first pace at which it is taken to go away, pixels a second */
    private TreeMap<Integer, Blob> backwards(int from, Point start, double pace, List<Tracked> places) {
        TreeMap<Integer, Blob> way = new TreeMap<>();
        Point hangs = start;
        Point rate = start.times(pace / start.norm());
        double seen = looks.get(from).seconds();
        for (int t = from - 1; t >= 0 && !places.get(t).seen(); t--) {
            double dt = looks.get(t + 1).seconds() - looks.get(t).seconds();
            double unseen = seen - looks.get(t).seconds();
            hangs = hangs.plus(rate.times(dt));
            Blob best = nearest(t, hangs, unseen - dt);
            if (best != null) {
                Point off = below(t, best.centre()).minus(hangs);
                hangs = hangs.plus(off.times(TAKEN));
                Point down = hangs.times(1 / hangs.norm());
                Point along = down.times(off.dot(down));
                Point across = off.minus(along);
                rate = rate.plus(along.times(PACE_TAKEN / dt)).plus(across.times(SWING_TAKEN / dt));
                way.put(t, best);
                seen = looks.get(t).seconds();
            } else if (unseen > GAP_SECONDS) {
                break;
            }
        }
        withoutEnd(way);
        return way;
    }

    /** Takes off what was seen last for a shorter time than nothing had been seen before: most likely another thing that came in the way. */
    private static void withoutEnd(TreeMap<Integer, Blob> way) {
        int seen = 0;
        int before = 0;
        for (int t : List.copyOf(way.keySet())) {
            if (seen > 0 && t - before - 1 > seen) {
                way.headMap(t).clear();
                seen = 0;
            } else if (seen > 0 && t - before > 1) {
                return;
            }
            before = t;
            seen++;
        }
    }

    private @Nullable Blob nearest(int t, Point expected, double unseen) {
        double along = (ALONG + ALONG_RATE * unseen) * rodPx;
        double across = (ACROSS + ACROSS_RATE * unseen) * rodPx;
        Point down = expected.times(1 / expected.norm());
        Blob best = null;
        double least = 1;
        for (Blob b : blobs.get(t)) {
            Point hangs = b.lineEnd() ? null : below(t, b.centre());
            if (hangs != null) {
                Point off = hangs.minus(expected);
                double far = Math.hypot(off.dot(down) / along, off.cross(down) / across);
                if (far < least) {
                    best = b;
                    least = far;
                }
            }
        }
        return best;
    }

    /** From the tip to a place, where that is below it; else null. */
    private @Nullable Point below(int t, Point place) {
        Fit rod = looks.get(t).chosen();
        if (rod == null) {
            return null;
        }
        Point hangs = place.minus(RigFinder.tip(rod));
        return hangs.y() > 0 && Math.abs(hangs.x()) <= UPRIGHT * hangs.norm() ? hangs : null;
    }
}
