package bendline.simulate;

import bendline.geometry.Point;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;

/**
 * What is exactly true of the body in one cast: read from joints in metres in the plane of the cast at every millisecond,
 * without camera.
 */
final class BodyMeasures {

    private static final double STEP = 1e-3;

    /** How long before the forward start and after the release fastest moments are looked for, real seconds. */
    private static final double BEFORE = 0.3;

    private static final double AFTER = 0.08;

    private static final double SPEED_SECONDS = 0.15;

    /** The chest lies between shoulders and hips, by this share of the way from the shoulders. */
    private static final double CHEST = 0.3;

    private final Motion motion;
    private final TrunkPath trunk;
    private final RodSpec rod;
    private final double stature;

    BodyMeasures(Motion motion, TrunkPath trunk, RodSpec rod, double stature) {
        this.motion = motion;
        this.trunk = trunk;
        this.rod = rod;
        this.stature = stature;
    }

    /** By name with the unit in it; heights are the upper wrist's above nose and shoulders. */
    Map<String, Double> of(CastTimes cast, Motion.Launch launch) {
        double start = cast.time("forwardStart");
        double end = launch.t();
        double hand = fastest(start, end, j -> j.get("rightWrist").x());
        Map<String, Double> m = new TreeMap<>();
        m.put("upperHandAgainstHeadM", above("nose", start));
        m.put("upperHandAgainstShoulderM", shoulders(start));
        m.put("upperHandAgainstHeadAtReleaseM", above("nose", end));
        m.put("upperHandAgainstShoulderAtReleaseM", shoulders(end));
        m.put(
                "hipsBeforeUpperHandSeconds",
                hand - fastest(start, end, j -> middle(j, "Hip").x()));
        m.put(
                "shouldersBeforeUpperHandSeconds",
                hand - fastest(start, end, j -> middle(j, "Shoulder").x()));
        m.put("upperHandBeforeButtSeconds", cast.time("fastestTurn") - hand);
        double pull = fastest(start, end, j -> -toChest(j));
        m.put("lowerHandPullAfterPushSeconds", pull - hand);
        m.put("lowerHandPullSpeedMps", pullSpeed(start, end));
        m.replaceAll((name, value) -> Math.round(value * 1e6) / 1e6);
        return m;
    }

    /** The largest mean over {@value #SPEED_SECONDS} s. */
    private double pullSpeed(double start, double end) {
        double most = 0;
        for (double t = start - BEFORE; t <= end + AFTER; t += STEP) {
            double way = toChest(joints(t - SPEED_SECONDS / 2)) - toChest(joints(t + SPEED_SECONDS / 2));
            most = Math.max(most, way / SPEED_SECONDS);
        }
        return most;
    }

    private Map<String, Point> joints(double t) {
        return Limbs.holding(motion.at(t), rod, stature, trunk.at(t)).joints(stature, 1);
    }

    private double above(String joint, double t) {
        Map<String, Point> j = joints(t);
        return j.get("rightWrist").y() - j.get(joint).y();
    }

    private double shoulders(double t) {
        Map<String, Point> j = joints(t);
        return j.get("rightWrist").y() - middle(j, "Shoulder").y();
    }

    /** When a length grows fastest. */
    private double fastest(double start, double end, ToDoubleFunction<Map<String, Point>> length) {
        double best = Double.NaN;
        double most = Double.NEGATIVE_INFINITY;
        for (double t = start - BEFORE; t <= end + AFTER; t += STEP) {
            double rate = length.applyAsDouble(joints(t + STEP)) - length.applyAsDouble(joints(t - STEP));
            if (rate > most) {
                most = rate;
                best = t;
            }
        }
        return best;
    }

    private static double toChest(Map<String, Point> j) {
        Point chest = middle(j, "Shoulder").towards(middle(j, "Hip"), CHEST);
        return j.get("leftWrist").distance(chest);
    }

    private static Point middle(Map<String, Point> j, String joint) {
        return j.get("right" + joint).towards(j.get("left" + joint), 0.5);
    }
}
