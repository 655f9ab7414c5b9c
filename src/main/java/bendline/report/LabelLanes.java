package bendline.report;

import java.util.ArrayList;
import java.util.List;

/** Puts labels that belong to places on a line into as few lanes as it takes for none to touch another. */
final class LabelLanes {

    /** Room between neighbours. */
    private static final double GAP = 6;

    /**
     * Where a label goes.
     *
     * @param left its left edge
     * @param lane 0 is next to the line
     */
    record Place(double left, int lane) {}

    private LabelLanes() {}

    /**
     * Places labels, each over its spot and inside the line's length where that is possible.
     *
     * @param spots where the labels belong, in rising order
     * @param widths their widths
     * @param length of the line
     * @return a place for each, in the same order
     */
    static List<Place> arrange(double[] spots, double[] widths, double length) {
        List<Double> laneEnds = new ArrayList<>();
        List<Place> places = new ArrayList<>();
        for (int i = 0; i < spots.length; i++) {
            double left = Math.max(0, Math.min(length - widths[i], spots[i] - widths[i] / 2));
            int lane = 0;
            while (lane < laneEnds.size() && laneEnds.get(lane) + GAP > left) {
                lane++;
            }
            if (lane == laneEnds.size()) {
                laneEnds.add(0.0);
            }
            laneEnds.set(lane, left + widths[i]);
            places.add(new Place(left, lane));
        }
        return places;
    }
}
