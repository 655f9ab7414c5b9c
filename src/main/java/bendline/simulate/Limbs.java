package bendline.simulate;

import bendline.geometry.Point;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Where an angler's joints are for given hands; metres in the plane of the cast. */
record Limbs(
        Point head,
        Point neck,
        Point chest,
        Point pelvis,
        Point shoulder,
        Point hip,
        Point farShoulder,
        Point farHip,
        Point nearElbow,
        Point nearHand,
        Point farElbow,
        Point farHand,
        Point frontKnee,
        Point frontFoot,
        Point backKnee,
        Point backFoot) {

    /** Where the wrist is, from elbow to the middle of the fist. */
    static final double WRIST = 0.86;

    /**
     * Joints for the upper hand (near the camera) on the grip and the lower one on the butt.
     *
     * @param m the moment
     * @param rod gives the distance of the hands
     * @param stature metres
     * @param trunk where hips and shoulders are; null where they lean after the hands
     */
    static Limbs holding(Motion.Moment m, RodSpec rod, double stature, @Nullable Trunk trunk) {
        double k = stature / 1.78;
        Point grip = new Point(m.handX(), m.handY());
        double lower = rod.handleM() - 0.05;
        Point butt = new Point(grip.x() - lower * Math.cos(m.angle()), grip.y() - lower * Math.sin(m.angle()));
        if (trunk != null) {
            return holding(
                    grip,
                    butt,
                    k,
                    List.of(
                            trunk.shoulders(k),
                            trunk.shoulder(k, true),
                            trunk.shoulder(k, false),
                            trunk.hips(k),
                            trunk.hip(k, true),
                            trunk.hip(k, false)));
        }
        double lean = Math.max(-0.16, Math.min(0.20, 0.42 * (0.6 * grip.x() + 0.4 * butt.x() - 0.22))) * k;
        Point hip = new Point(0.02 + 0.35 * lean, 0.93 * k);
        Point shoulder = new Point(0.02 + lean, 1.45 * k);
        Point far = new Point(shoulder.x() + 0.05 * k, shoulder.y() - 0.01);
        return holding(grip, butt, k, List.of(shoulder, shoulder, far, hip, hip, hip));
    }

    /** @param trunk middle of the chest, near and far shoulder, middle of the pelvis, near and far hip */
    private static Limbs holding(Point grip, Point butt, double k, List<Point> trunk) {
        Point chest = trunk.get(0);
        Point front = new Point(0.27 * k, 0.07);
        Point back = new Point(-0.22 * k, 0.07);
        return new Limbs(
                new Point(chest.x() + 0.05, chest.y() + 0.20 * k),
                new Point(chest.x() + 0.015, chest.y() + 0.07 * k),
                chest,
                trunk.get(3),
                trunk.get(1),
                trunk.get(4),
                trunk.get(2),
                trunk.get(5),
                elbow(trunk.get(1), grip, 0.30 * k, 0.30 * k, 1),
                grip,
                elbow(trunk.get(2), butt, 0.30 * k, 0.30 * k, 1),
                butt,
                elbow(trunk.get(4), front, 0.455 * k, 0.455 * k, -1),
                front,
                elbow(trunk.get(5), back, 0.455 * k, 0.455 * k, -1),
                back);
    }

    /**
     * The joints by name. The upper hand's side is the one near the camera: the angler's right in a cast to the right, the left in
     * one to the left.
     *
     * @param stature metres
     * @param side 1 for a cast to the right in the picture, −1 to the left
     */
    Map<String, Point> joints(double stature, int side) {
        double k = stature / 1.78;
        String near = side > 0 ? "right" : "left";
        String far = side > 0 ? "left" : "right";
        Map<String, Point> out = new TreeMap<>();
        out.put("nose", new Point(head.x() + 0.104 * k, head.y() - 0.024 * k));
        out.put(near + "Shoulder", shoulder);
        out.put(far + "Shoulder", farShoulder);
        out.put(near + "Elbow", nearElbow);
        out.put(far + "Elbow", farElbow);
        out.put(near + "Wrist", nearElbow.towards(nearHand, WRIST));
        out.put(far + "Wrist", farElbow.towards(farHand, WRIST));
        out.put(near + "Hip", hip);
        out.put(far + "Hip", farHip);
        out.put(near + "Knee", frontKnee);
        out.put(far + "Knee", backKnee);
        out.put(near + "Ankle", frontFoot);
        out.put(far + "Ankle", backFoot);
        return out;
    }

    /** The middle joint of a two-part limb; side +1 lies clockwise of the way from root to end. */
    private static Point elbow(Point root, Point end, double first, double second, int side) {
        double dx = end.x() - root.x();
        double dy = end.y() - root.y();
        double d = Math.max(0.05, Math.hypot(dx, dy));
        double reach = Math.min(d, 0.999 * (first + second));
        double along = (first * first - second * second + reach * reach) / (2 * reach);
        double across = Math.sqrt(Math.max(0, first * first - along * along));
        double f = along / reach;
        return new Point(root.x() + dx * f + side * dy / d * across, root.y() + dy * f - side * dx / d * across);
    }
}
