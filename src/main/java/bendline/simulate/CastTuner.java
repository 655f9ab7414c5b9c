package bendline.simulate;

import java.util.ArrayList;
import java.util.List;

/**
 * Shifts the start of the push by some hundredths of a second until the cast comes off, as a practised angler does
 * without thinking: with a fixed script a light rig on a slack line may be caught at the wrong end of its swing and fly
 * into the ground.
 */
final class CastTuner {

    private static final double[] SHIFTS = {0, 0.05, -0.05, 0.1, -0.1, 0.16, -0.16, 0.22};

    /** Seconds shown after the last release. */
    private static final double AFTER = 1.6;

    private CastTuner() {}

    /**
     * The scenario with each cast's settle shifted so that the rig flies forward and up at a fair speed, and its end set to
     * shortly after the last cast.
     */
    static Scenario tunedAndTrimmed(Scenario scenario) {
        Scenario now = scenario;
        for (int i = 0; i < scenario.casts().size(); i++) {
            if (!scenario.casts().get(i).putDown()) {
                now = tuned(now, i);
            }
        }
        return now.lasting(end(now));
    }

    private static double end(Scenario s) {
        if (s.casts().isEmpty()) {
            return 4;
        }
        CastScript last = s.casts().get(s.casts().size() - 1);
        if (last.putDown()) {
            return last.overSeconds() + 0.4;
        }
        Motion motion = CastRun.compute(s.rod(), s.rig(), s.casts(), s.statureM(), last.overSeconds(), s.seed());
        return Math.ceil(10 * (motion.launches().get(s.casts().size() - 1).t() + AFTER)) / 10;
    }

    private static Scenario tuned(Scenario scenario, int cast) {
        Scenario best = scenario;
        double least = Double.POSITIVE_INFINITY;
        for (double shift : SHIFTS) {
            Scenario shifted = shifted(scenario, cast, shift);
            double fault = fault(shifted, cast);
            if (fault < least) {
                least = fault;
                best = shifted;
            }
            if (fault == 0) {
                break;
            }
        }
        return best;
    }

    private static Scenario shifted(Scenario s, int cast, double shift) {
        List<CastScript> casts = new ArrayList<>(s.casts());
        CastScript c = casts.get(cast);
        casts.set(cast, c.withSettle(Math.max(-0.45, c.settleSeconds() + shift)));
        return s.withCasts(casts);
    }

    /** 0 for a cast that comes off; grows with how far speed, direction and moment of release are out. */
    private static double fault(Scenario s, int cast) {
        CastScript c = s.casts().get(cast);
        double until = c.pushFrom() + c.feelSeconds() + c.turnDelaySeconds() + c.turnSeconds() + 0.3;
        Motion motion = CastRun.compute(s.rod(), s.rig(), s.casts(), s.statureM(), until, s.seed());
        for (Motion.Launch launch : motion.launches()) {
            if (launch.cast() == cast) {
                double direction = Math.toDegrees(launch.angle());
                Motion.Moment m = motion.at(launch.t());
                double toTurn = Math.toDegrees(m.angle()) - c.stopAngleDeg();
                return outside(launch.speed(), 25, 48) / 5
                        + outside(direction, 26, 50) / 8
                        + outside(toTurn, -90, 3) / 2;
            }
        }
        return 100;
    }

    private static double outside(double v, double least, double most) {
        return Math.max(0, Math.max(least - v, v - most));
    }
}
