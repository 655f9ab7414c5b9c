package bendline.simulate;

import java.util.Map;
import java.util.TreeMap;

/** What can be measured on one cast, from its motion; names carry the unit, durations are real. */
final class CastMeasures {

    /** Over which the line's pull is averaged: what an angler feels, and two steps between frames of 30 a second. */
    static final double[] PULL_SECONDS = {0.04, 2.0 / 30};

    private CastMeasures() {}

    static Map<String, Double> of(Motion motion, CastTimes cast, Motion.Launch launch, RodSpec rod, RigSpec rig) {
        Map<String, Double> m = new TreeMap<>();
        double forwardStart = cast.time("forwardStart");
        double forward = launch.t() - forwardStart;
        double backswing = cast.time("backswingEnd") - cast.time("backswingStart");
        m.put("backswingSeconds", backswing);
        m.put("forwardSeconds", forward);
        m.put("settleSeconds", forwardStart - cast.time("backswingEnd"));
        m.put("tempo", backswing / forward);
        Motion.Moment start = motion.at(forwardStart);
        Motion.Moment release = motion.at(launch.t());
        m.put("layBackDeg", Math.toDegrees(motion.at(cast.time("rearmost")).angle()));
        m.put("sweepDeg", Math.toDegrees(start.angle() - release.angle()));
        m.put("buttAngleAtReleaseDeg", Math.toDegrees(release.angle()));
        m.put("smallestChordRatio", motion.at(cast.time("peakBend")).chordRatio(rod.freeLengthM()));
        m.put("rigSpeedAtForwardStartMps", Math.hypot(start.rigVx(), start.rigVy()));
        m.put("slackShareOfForward", slackShare(motion, forwardStart, launch.t(), rig));
        m.put("peakTipSpeedMps", peakTipSpeed(motion, forwardStart, launch.t()));
        load(m, motion, forwardStart, launch.t(), rod);
        m.put("launchSpeedMps", launch.speed());
        m.put("launchAngleDeg", Math.toDegrees(launch.angle()));
        for (double after : new double[] {0.15, 0.25, 0.5, 0.8}) {
            double drop = Math.toDegrees(
                    release.angle() - motion.at(launch.t() + after).angle());
            m.put("buttDropAfter" + Math.round(after * 1000) + "msDeg", drop);
        }
        m.replaceAll((name, value) -> Math.round(value * 1e6) / 1e6);
        return m;
    }

    /** Share of the forward stroke in which the line pulls less than a fifth of the rig's weight. */
    private static double slackShare(Motion motion, double from, double to, RigSpec rig) {
        double little = 0.2 * rig.massKg() * RodChain.GRAVITY;
        int first = motion.indexAt(from);
        int last = motion.indexAt(to);
        int slack = 0;
        for (int i = first; i < last; i++) {
            slack += motion.tension(i) < little ? 1 : 0;
        }
        return (double) slack / Math.max(1, last - first);
    }

    /** Pull of the line and energy of the bend: the largest up to the release, and what is left of the energy then. */
    private static void load(Map<String, Double> m, Motion motion, double from, double to, RodSpec rod) {
        double pull = 0;
        double energy = 0;
        for (int i = motion.indexAt(from); i <= motion.indexAt(to); i++) {
            pull = Math.max(pull, motion.tension(i));
            // Every tenth sample, half a millisecond or so: the energy changes far slower.
            if (i % 10 == 0) {
                energy = Math.max(energy, BendEnergy.of(motion.sample(i), rod));
            }
        }
        m.put("peakLinePullN", pull);
        for (double over : PULL_SECONDS) {
            m.put("peakMeanLinePull" + Math.round(1000 * over) + "msN", largestMean(motion, from, to, over));
        }
        m.put("peakElasticJ", energy);
        m.put("elasticAtReleaseJ", BendEnergy.of(motion.at(to), rod));
    }

    /** Largest mean pull of the line over any stretch of that many seconds between two times; of all of them where that is less. */
    static double largestMean(Motion motion, double from, double to, double over) {
        int first = motion.indexAt(from);
        int last = motion.indexAt(to);
        int n = Math.max(1, Math.min(last - first, (int) Math.round(over / motion.stepSeconds())));
        double sum = 0;
        double most = 0;
        for (int i = first; i < last; i++) {
            sum += motion.tension(i) - (i - n >= first ? motion.tension(i - n) : 0);
            most = i - first + 1 >= n ? Math.max(most, sum / n) : most;
        }
        return most;
    }

    private static double peakTipSpeed(Motion motion, double from, double to) {
        double most = 0;
        for (int i = motion.indexAt(from); i <= motion.indexAt(to); i++) {
            most = Math.max(most, motion.tipSpeed(i));
        }
        return most;
    }
}
