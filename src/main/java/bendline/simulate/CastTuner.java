package bendline.simulate;

import java.util.ArrayList;
import java.util.List;

/**
 * Shifts the start of the push by some hundredths of a second until the cast comes off, as a practised angler does
 * without thinking: with a fixed script a light rig on a slack line may be caught at the wrong end of its swing and fly
 * into the ground.
 */
final class CastTuner {

    private static final double[] SHIFTS = {0, 0.05, -0.05, 0.1, -0.1, 0.16, -0.16, 0.22, 0.32, 0.44, 0.58};

    /** Seconds shown after the last release. */
    private static final double AFTER = 1.6;

    /** Waiting longer than this would make a rushed cast an unhurried one. */
    private static final double LONGEST_WHEN_RUSHED = 0.22;

    private CastTuner() {}

    /**
     * The scenario with each cast's settle shifted so that the rig flies forward and up at a fair speed, and its end set to
     * shortly after the last cast.
     */
    static Scenario tunedAndTrimmed(Scenario scenario) {
        if (scenario.casts().isEmpty()) {
            return scenario.lasting(4);
        }
        List<CastScript> casts = new ArrayList<>(scenario.casts());
        CastRun run =
                new CastRun(scenario.rod(), scenario.rig(), scenario.casts(), scenario.statureM(), scenario.seed());
        double end = 0;
        for (int i = 0; i < casts.size(); i++) {
            CastScript script = casts.get(i);
            if (script.putDown()) {
                end = script.overSeconds() + 0.4;
                break;
            }
            Tried best = best(run, casts, i);
            casts = best.casts;
            run = best.run;
            end = best.launched + AFTER;
        }
        return scenario.withCasts(casts).lasting(Math.ceil(10 * end) / 10);
    }

    /** One shift tried out: the casts with it, the run up to its release, when that was, how far it is from a good cast. */
    private record Tried(List<CastScript> casts, CastRun run, double launched, double fault) {}

    private static Tried best(CastRun run, List<CastScript> casts, int cast) {
        CastScript script = casts.get(cast);
        // All shifts share what comes before the earliest push.
        CastRun shared = run.fork(casts);
        shared.runTo(script.pushFrom() - 0.2, cast);
        Tried best = null;
        for (double shift : SHIFTS) {
            if (script.rushedFlat() != Severity.NONE && shift > LONGEST_WHEN_RUSHED) {
                break;
            }
            if (runsIntoTheNext(casts, cast, shift)) {
                continue;
            }
            Tried tried = attempt(shared, casts, cast, shift);
            if (best == null || tried.fault < best.fault) {
                best = tried;
            }
            if (best.fault == 0) {
                break;
            }
        }
        return best;
    }

    private static CastScript shifted(CastScript cast, double shift) {
        return cast.withSettle(Math.max(-0.45, cast.settleSeconds() + shift));
    }

    private static boolean runsIntoTheNext(List<CastScript> casts, int cast, double shift) {
        double over = shifted(casts.get(cast), shift).overSeconds() + Scenario.BETWEEN_CASTS;
        return cast + 1 < casts.size() && casts.get(cast + 1).startSeconds() < over;
    }

    private static Tried attempt(CastRun shared, List<CastScript> casts, int cast, double shift) {
        List<CastScript> shifted = new ArrayList<>(casts);
        CastScript c = shifted(casts.get(cast), shift);
        shifted.set(cast, c);
        CastRun run = shared.fork(shifted);
        double until = c.pushFrom() + c.feelSeconds() + c.turnDelaySeconds() + c.turnSeconds() + 0.4;
        Motion.Launch launch = run.runTo(until, cast);
        if (launch == null) {
            throw new IllegalStateException("cast " + (cast + 1) + " never let go of the line; change its script");
        }
        double toTurn = Math.toDegrees(run.buttAngle()) - c.stopAngleDeg();
        double fault = outside(launch.speed(), 25, 48) / 5
                + outside(Math.toDegrees(launch.angle()), 26, 50) / 8
                + outside(toTurn, -90, 3) / 2;
        return new Tried(shifted, run, launch.t(), fault);
    }

    private static double outside(double v, double least, double most) {
        return Math.max(0, Math.max(least - v, v - most));
    }
}
