package bendline.trace;

import bendline.geometry.Point;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Where the hand on the rod is in every frame that has it told, or lies shortly between two that have. */
final class HandPath {

    /** Longest time between two frames with a hand over which its way is taken for straight, clip seconds. */
    private static final double LONGEST_GAP_SECONDS = 0.15;

    private HandPath() {}

    /**
     * Hands by frame.
     *
     * @param grasps told by something else than the rod, reference picture
     * @param looks give the times of the frames
     * @param origin of the coordinates that are given back
     */
    static Map<Integer, Point> of(List<Grasp> grasps, List<Look> looks, Point origin) {
        TreeMap<Integer, Point> told = new TreeMap<>();
        grasps.forEach(g -> told.put(g.frame(), g.hand().minus(origin)));
        Map<Integer, Point> out = new TreeMap<>(told);
        for (Map.Entry<Integer, Point> from : told.entrySet()) {
            Map.Entry<Integer, Point> to = told.higherEntry(from.getKey());
            if (to == null) {
                break;
            }
            double start = looks.get(from.getKey()).seconds();
            double span = looks.get(to.getKey()).seconds() - start;
            for (int t = from.getKey() + 1; t < to.getKey() && span <= LONGEST_GAP_SECONDS; t++) {
                double share = (looks.get(t).seconds() - start) / span;
                out.put(t, from.getValue().towards(to.getValue(), share));
            }
        }
        return out;
    }
}
