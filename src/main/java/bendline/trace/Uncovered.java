package bendline.trace;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.scene.Cover;
import bendline.trace.BlankFitter.Fit;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;

/**
 * Which frames show what lies behind the rod: those in which it was surely found, as many in each direction, so that what it
 * covers in one of them is bare in most others. A rod that waits in one place for most of a clip becomes background there
 * when all frames are asked; in these it is seen on its way everywhere else.
 */
final class Uncovered {

    private static final int MOST = 60;
    private static final int FEWEST = 24;
    private static final double SECTOR_RAD = Math.toRadians(10);
    private static final int FEWEST_SECTORS = 5;

    /** How far beside the fitted line the rod and its blur may lie, pixels, besides half the blur. */
    private static final double BESIDE_PX = 5;

    /** How much longer than found the rod may be, free lengths. */
    private static final double BEYOND = 0.15;

    private static final int POINTS = 40;

    /** Share of the frames with a sure rod above which the background needs no second look. */
    private static final double GOOD = 0.97;

    private Uncovered() {}

    /** Whether the rod was missed so often that a better background may help. */
    static boolean needed(List<Look> looks) {
        long found = looks.stream().filter(l -> l.chosen() != null).count();
        return found < GOOD * looks.size();
    }

    /**
     * At most {@link #MOST} frames, none if the rod was not seen in enough directions.
     *
     * @param looks at some frames
     * @param frames which they are, counted from 0
     */
    static List<Cover> covers(List<Look> looks, List<Integer> frames, RodLength.Estimate rod, Point origin) {
        TreeMap<Integer, List<Integer>> sectors = new TreeMap<>();
        for (int t = 0; t < looks.size(); t++) {
            Fit fit = looks.get(t).chosen();
            if (fit != null) {
                Point chord = fit.line().last().minus(fit.line().first());
                sectors.computeIfAbsent((int) Math.floor(chord.angle() / SECTOR_RAD), k -> new ArrayList<>())
                        .add(t);
            }
        }
        List<Cover> out = new ArrayList<>();
        if (sectors.size() < FEWEST_SECTORS) {
            return out;
        }
        int each = Math.max(1, MOST / sectors.size());
        for (List<Integer> alike : sectors.values()) {
            int n = Math.min(each, alike.size());
            for (int k = 0; k < n; k++) {
                int t = alike.get((int) ((k + 0.5) * alike.size() / n));
                out.add(cover(frames.get(t), looks.get(t).chosen(), rod, origin));
            }
        }
        return out.size() < FEWEST ? List.of() : out;
    }

    private static Cover cover(int frame, Fit fit, RodLength.Estimate rod, Point origin) {
        Polyline whole = ToTheHand.drawn(
                fit.line(), Math.max(rod.along(fit.line()), fit.line().length()), POINTS);
        Polyline longer = whole.cut(whole.length() + fit.hiddenPx() + BEYOND * rod.freePx());
        return new Cover(frame, longer.map(origin::plus), BESIDE_PX + 0.5 * fit.blurPx());
    }
}
