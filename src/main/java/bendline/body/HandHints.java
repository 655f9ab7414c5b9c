package bendline.body;

import bendline.body.JointFinder.Body;
import bendline.body.PersonFinder.Person;
import bendline.footage.Frame;
import bendline.geometry.Point;
import bendline.scene.CameraMotion;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Where somebody in the picture may hold a rod: the places of hands that are near each other, of everybody who is seen in a few
 * frames. A hint and no more: who holds nothing may stand so too, and who casts far off or in the dusk is not seen.
 */
public final class HandHints {

    /** Sides of the squares that are searched, over the picture's longer side; each overlaps the next by half. */
    private static final double[] SQUARES = {0.9, 0.5, 0.3};

    /** Hands on one rod are at most so far apart, sides of the square round the body, which is about as large as the body. */
    private static final double APART = 0.45;

    /** Two bodies whose hips are nearer than this, in sides of the square, are one. */
    private static final double SAME = 0.3;

    /** Likelihood from which somebody counts. */
    private static final double LIKELY = 0.5;

    private HandHints() {}

    /** One person's hands in the frames in which they were near each other. */
    private static final class Holder {

        private final Point hips;
        private final double side;
        private final List<Point> upper = new ArrayList<>();

        Holder(Point hips, double side) {
            this.hips = hips;
            this.side = side;
        }

        boolean same(Point otherHips) {
            return otherHips.distance(hips) < SAME * side;
        }

        Point middle() {
            double[] x = upper.stream().mapToDouble(Point::x).sorted().toArray();
            double[] y = upper.stream().mapToDouble(Point::y).sorted().toArray();
            return new Point(x[x.length / 2], y[y.length / 2]);
        }
    }

    /**
     * The middle place of each person's upper hand, reference picture; those first who were seen so most often.
     *
     * @param frames a few frames spread over the clip
     * @param motion of the camera
     */
    public static List<Point> places(List<Frame> frames, CameraMotion motion) {
        List<Holder> holders = new ArrayList<>();
        try (Finders finders = new Finders()) {
            for (Frame frame : frames) {
                for (Body body : bodies(finders, frame)) {
                    note(holders, body, frame.index(), motion);
                }
            }
        }
        return holders.stream()
                .sorted(Comparator.comparingInt((Holder h) -> h.upper.size()).reversed())
                .map(Holder::middle)
                .toList();
    }

    private static void note(List<Holder> holders, Body body, int frame, CameraMotion motion) {
        Point left = body.joints().get(Joint.LEFT_WRIST).place();
        Point right = body.joints().get(Joint.RIGHT_WRIST).place();
        double side = body.region().side();
        if (left.distance(right) > APART * side) {
            return;
        }
        Point hips = motion.toReference(frame, body.region().centre());
        Holder holder = holders.stream().filter(h -> h.same(hips)).findFirst().orElse(null);
        if (holder == null) {
            holder = new Holder(hips, side);
            holders.add(holder);
        }
        holder.upper.add(motion.toReference(frame, left.y() < right.y() ? left : right));
    }

    /** Everybody in a frame, each once. */
    private static List<Body> bodies(Finders finders, Frame frame) {
        List<Body> out = new ArrayList<>();
        for (Region square : Region.over(frame.luma().width(), frame.luma().height(), SQUARES)) {
            for (Person p : finders.people(frame, square)) {
                Region region = new Region(p.region().centre(), p.region().side(), 0);
                if (out.stream().anyMatch(b -> b.region().centre().distance(region.centre()) < SAME * region.side())) {
                    continue;
                }
                Body body = finders.joints(List.of(frame), region).get(0);
                if (body.person() >= LIKELY) {
                    out.add(body);
                }
            }
        }
        return out;
    }
}
