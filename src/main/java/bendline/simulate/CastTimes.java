package bendline.simulate;

import java.util.Map;
import java.util.TreeMap;

/**
 * The moments of one cast, found in the computed motion at the step of its samples by the definitions that the analysis
 * uses too. Real seconds.
 */
final class CastTimes {

    private interface Series {
        double at(int sample);
    }

    private final Motion motion;
    private final CastScript script;
    private final Motion.Launch launch;
    private final double freeLength;
    private final Map<String, Double> times = new TreeMap<>();

    CastTimes(Motion motion, CastScript script, Motion.Launch launch, double freeLength) {
        this.motion = motion;
        this.script = script;
        this.launch = launch;
        this.freeLength = freeLength;
        find();
    }

    /** Real seconds by the name of the event. */
    Map<String, Double> times() {
        return times;
    }

    double time(String event) {
        return times.get(event);
    }

    private double backward(int i) {
        return motion.rate(i);
    }

    private double forward(int i) {
        return -motion.rate(i);
    }

    private double hand(int i) {
        return motion.handVx(i);
    }

    private double chord(int i) {
        return motion.chord(i) / freeLength;
    }

    private void find() {
        int from = motion.indexAt(script.startSeconds() - 0.1);
        int release = motion.indexAt(launch.t());
        int fastest = highest(this::forward, motion.indexAt(script.pushFrom() - 0.3), release + samples(0.4));
        int back = highest(this::backward, from, fastest);
        double tenth = 0.1 * backward(back);
        times.put("backswingStart", crossing(this::backward, from, back, tenth, true));
        times.put("backswingEnd", crossing(this::backward, back, fastest, tenth, false));
        times.put("rearmost", timeOf(highest(motion::angle, back, fastest)));
        int push = highest(this::hand, back, release + samples(0.3));
        times.put("forwardStart", Math.min(rise(this::forward, back, fastest), rise(this::hand, back, push)));
        times.put("fastestTurn", timeOf(fastest));
        int bend = highest(i -> -chord(i), motion.indexAt(times.get("forwardStart")), release + samples(0.05));
        times.put("peakBend", timeOf(bend));
        int last = motion.size() - 1;
        times.put("stop", crossing(this::forward, fastest, last, 0.2 * forward(fastest), false));
        times.put("release", launch.t());
        times.put("rodStraight", crossing(this::chord, bend, last, 0.995, true));
        int lowest = highest(i -> -motion.angle(i), release, Math.min(last, release + samples(1.0)));
        times.put("tipLowest", timeOf(lowest));
        for (int i = release; i <= last && motion.line(i) != RigLine.State.HELD; i++) {
            if (motion.line(i) == RigLine.State.STOPPED) {
                times.put("clipNod", timeOf(i));
                break;
            }
        }
        times.values().removeIf(t -> Double.isNaN(t));
    }

    private int samples(double seconds) {
        return (int) Math.round(seconds / motion.stepSeconds());
    }

    private double timeOf(int sample) {
        return motion.time(sample);
    }

    private int highest(Series series, int from, int to) {
        int best = from;
        double most = Double.NEGATIVE_INFINITY;
        for (int i = from; i <= Math.min(to, motion.size() - 1); i++) {
            double value = series.at(i);
            if (value > most) {
                most = value;
                best = i;
            }
        }
        return best;
    }

    /** First time from one sample to another at which the series goes through a level; NaN if it never does. */
    private double crossing(Series series, int from, int to, double level, boolean upwards) {
        double sign = upwards ? 1 : -1;
        for (int i = from; i < to; i++) {
            double before = sign * (series.at(i) - level);
            double after = sign * (series.at(i + 1) - level);
            if (before < 0 && after >= 0) {
                return timeOf(i) + motion.stepSeconds() * before / (before - after);
            }
        }
        return Double.NaN;
    }

    /** Last time before its peak at which the series rises through a tenth of the peak. */
    private double rise(Series series, int from, int peak) {
        double level = 0.1 * series.at(peak);
        for (int i = peak; i > from; i--) {
            double before = series.at(i - 1) - level;
            double after = series.at(i) - level;
            if (before < 0 && after >= 0) {
                return timeOf(i - 1) + motion.stepSeconds() * before / (before - after);
            }
        }
        return timeOf(from);
    }
}
