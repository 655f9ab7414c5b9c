package bendline.simulate;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The trunk's own way through a clip: back with the rod, then forward and round, each link along a step of least jerk. */
final class TrunkPath {

    private static final Trunk READY = new Trunk(0.02, 0.04, Math.toRadians(10), Math.toRadians(10));
    private static final Trunk BACK = new Trunk(-0.05, -0.10, Math.toRadians(45), Math.toRadians(60));
    private static final Trunk FRONT = new Trunk(0.09, 0.17, Math.toRadians(-10), Math.toRadians(-20));

    /** How long the forward way of hips and shoulders takes, real seconds. */
    private static final double HIP_SECONDS = 0.30;

    private static final double SHOULDER_SECONDS = 0.26;

    /** What a cast without a script of its own does. */
    private static final double HIPS = 0.09;

    private static final double SHOULDERS = 0.14;

    /** One step: hips and shoulders from one pose to another, each in its own time. */
    private record Step(Trunk from, Trunk to, double hipStart, double hipSeconds, double start, double seconds) {}

    private final List<Step> steps = new ArrayList<>();

    private TrunkPath() {}

    /** The path, or null where no cast has a body of its own. */
    static @Nullable TrunkPath of(Motion motion, List<CastScript> casts) {
        if (casts.stream().allMatch(c -> c.body() == null)) {
            return null;
        }
        TrunkPath path = new TrunkPath();
        Trunk at = READY;
        for (int i = 0; i < casts.size(); i++) {
            CastScript cast = casts.get(i);
            BodyScript body = cast.body();
            double share = body == null ? 1 : body.trunkShare();
            Trunk back = READY.towards(BACK, share);
            path.together(at, back, cast.startSeconds(), 0.9 * cast.backswingSeconds());
            at = back;
            int number = i;
            Double push = motion.pushes().stream()
                    .filter(p -> p.cast() == number)
                    .map(Motion.Push::t)
                    .findFirst()
                    .orElse(null);
            if (push != null) {
                double hips = push + (body == null ? HIPS : body.hipsSeconds());
                double shoulders = push + (body == null ? SHOULDERS : body.shouldersSeconds());
                at = READY.towards(FRONT, share);
                path.steps.add(new Step(
                        back,
                        at,
                        hips - HIP_SECONDS / 2,
                        HIP_SECONDS,
                        shoulders - SHOULDER_SECONDS / 2,
                        SHOULDER_SECONDS));
            } else if (cast.putDown()) {
                path.together(back, READY, cast.startSeconds() + cast.backswingSeconds() + 0.9, 1.7);
                at = READY;
            }
        }
        return path;
    }

    private void together(Trunk from, Trunk to, double start, double seconds) {
        steps.add(new Step(from, to, start, seconds, start, seconds));
    }

    /** The trunk at a time in real seconds. */
    Trunk at(double t) {
        double hipX = READY.hipX();
        double shoulderX = READY.shoulderX();
        double hipTurn = READY.hipTurn();
        double shoulderTurn = READY.shoulderTurn();
        for (Step s : steps) {
            double hip = HandPath.step((t - s.hipStart) / s.hipSeconds);
            double shoulder = HandPath.step((t - s.start) / s.seconds);
            hipX += hip * (s.to.hipX() - s.from.hipX());
            hipTurn += hip * (s.to.hipTurn() - s.from.hipTurn());
            shoulderX += shoulder * (s.to.shoulderX() - s.from.shoulderX());
            shoulderTurn += shoulder * (s.to.shoulderTurn() - s.from.shoulderTurn());
        }
        return new Trunk(hipX, shoulderX, hipTurn, shoulderTurn);
    }
}
