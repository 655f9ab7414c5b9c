package bendline.body;

import bendline.geometry.Point;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Joins both wrists with the traced rod: who holds it has one wrist by its grip and the other along its butt. Left and right are
 * never asked for, so a mirrored clip or a back turned to the camera changes nothing but the name of the hand.
 */
final class HoldReader {

    /** How far a wrist lies from the place on the rod that its hand holds, body heights: a hand's length is 0.11 of it. */
    private static final double NEAR = 0.15;

    /** Frames in which the rod's hands must be the body's, of those in which both were seen. */
    private static final double MOSTLY = 0.6;

    private static final int FEWEST = 5;

    /** Of the frames that tell which hand is nearer to the tip, so many must name the same. */
    private static final double ALIKE = 0.8;

    /** Why nothing is told of a person whose hands are elsewhere. */
    static final String ELSEWHERE = "the hands of the person who was followed are not on the rod";

    private HoldReader() {}

    /** Whether one of a body's wrists is near the grip. */
    static boolean holds(BodySight sight, HeldRod rod, double heightPx) {
        return away(sight, rod) < 2 * NEAR * heightPx;
    }

    /** From the grip to the nearer wrist, pixels. */
    static double away(BodySight sight, HeldRod rod) {
        return Math.min(
                sight.joint(Joint.LEFT_WRIST).place().distance(rod.grip()),
                sight.joint(Joint.RIGHT_WRIST).place().distance(rod.grip()));
    }

    /** How the rod is held, over all frames in which body and rod were seen. */
    static RodHold of(List<BodySight> sights, Map<Integer, HeldRod> rods, double heightPx) {
        int both = 0;
        int near = 0;
        Map<Integer, Joint> leading = new TreeMap<>();
        for (BodySight s : sights) {
            HeldRod rod = rods.get(s.frame());
            if (rod == null) {
                continue;
            }
            both++;
            near += holds(s, rod, heightPx) ? 1 : 0;
            double lead = along(s, Joint.RIGHT_WRIST, rod) - along(s, Joint.LEFT_WRIST, rod);
            if (bothShow(s) && Math.abs(lead) > 0.5 * NEAR * heightPx) {
                leading.put(s.frame(), lead > 0 ? Joint.LEFT_WRIST : Joint.RIGHT_WRIST);
            }
        }
        if (both < FEWEST) {
            return RodHold.unknown("body and rod were seen together in " + both + " frames only");
        }
        if (near < MOSTLY * both) {
            return RodHold.unknown(ELSEWHERE);
        }
        long left = leading.values().stream().filter(j -> j == Joint.LEFT_WRIST).count();
        long right = leading.size() - left;
        if (leading.size() < FEWEST || Math.max(left, right) < ALIKE * leading.size()) {
            String why = "left and right hand could not be told apart on the rod";
            return new RodHold(null, Double.NaN, Double.NaN, why, leading);
        }
        return apart(sights, rods, left > right ? Joint.LEFT_WRIST : Joint.RIGHT_WRIST, leading);
    }

    /** A wrist that is hidden is guessed, and mostly where the other one is. */
    private static boolean bothShow(BodySight s) {
        return s.joint(Joint.LEFT_WRIST).shows() && s.joint(Joint.RIGHT_WRIST).shows();
    }

    private static RodHold apart(
            List<BodySight> sights, Map<Integer, HeldRod> rods, Joint upper, Map<Integer, Joint> leading) {
        double[] way = sights.stream()
                .filter(s -> rods.containsKey(s.frame()) && bothShow(s))
                .mapToDouble(s -> {
                    HeldRod rod = rods.get(s.frame());
                    return along(s, upper.other(), rod) - along(s, upper, rod);
                })
                .sorted()
                .toArray();
        double median = way[way.length / 2];
        double spread = 0.5 * (way[(int) (0.84 * (way.length - 1))] - way[(int) (0.16 * (way.length - 1))]);
        double joint = sights.get(0).joint(upper).sdPx();
        return new RodHold(
                upper,
                median,
                Math.hypot(spread / Math.sqrt(Math.min(way.length, FEWEST)), joint),
                "both wrists along the butt, median of " + way.length + " frames",
                leading);
    }

    /** How far from the grip towards the butt cap a wrist is, pixels. */
    private static double along(BodySight s, Joint wrist, HeldRod rod) {
        Point p = s.joint(wrist).place().minus(rod.grip());
        return p.dot(rod.butt());
    }
}
