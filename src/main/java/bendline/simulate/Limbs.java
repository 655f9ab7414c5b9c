package bendline.simulate;

import bendline.geometry.Point;
import java.util.Map;
import java.util.TreeMap;

/** Where an angler's joints are for given hands; metres in the plane of the cast. */
record Limbs(
        Point head,
        Point neck,
        Point shoulder,
        Point hip,
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
     */
    static Limbs holding(Motion.Moment m, RodSpec rod, double stature) {
        double k = stature / 1.78;
        Point grip = new Point(m.handX(), m.handY());
        double lower = rod.handleM() - 0.05;
        Point butt = new Point(grip.x() - lower * Math.cos(m.angle()), grip.y() - lower * Math.sin(m.angle()));
        double lean = Math.max(-0.16, Math.min(0.20, 0.42 * (0.6 * grip.x() + 0.4 * butt.x() - 0.22))) * k;
        Point hip = new Point(0.02 + 0.35 * lean, 0.93 * k);
        Point shoulder = new Point(0.02 + lean, 1.45 * k);
        Point neck = new Point(shoulder.x() + 0.015, shoulder.y() + 0.07 * k);
        Point head = new Point(shoulder.x() + 0.05, shoulder.y() + 0.20 * k);
        Point farShoulder = new Point(shoulder.x() + 0.05 * k, shoulder.y() - 0.01);
        return new Limbs(
                head,
                neck,
                shoulder,
                hip,
                elbow(shoulder, grip, 0.30 * k, 0.30 * k, 1),
                grip,
                elbow(farShoulder, butt, 0.30 * k, 0.30 * k, 1),
                butt,
                elbow(hip, new Point(0.27 * k, 0.07), 0.455 * k, 0.455 * k, -1),
                new Point(0.27 * k, 0.07),
                elbow(hip, new Point(-0.22 * k, 0.07), 0.455 * k, 0.455 * k, -1),
                new Point(-0.22 * k, 0.07));
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
        out.put(far + "Shoulder", new Point(shoulder.x() + 0.05 * k, shoulder.y() - 0.01));
        out.put(near + "Elbow", nearElbow);
        out.put(far + "Elbow", farElbow);
        out.put(near + "Wrist", nearElbow.towards(nearHand, WRIST));
        out.put(far + "Wrist", farElbow.towards(farHand, WRIST));
        out.put(near + "Hip", hip);
        out.put(far + "Hip", hip);
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
