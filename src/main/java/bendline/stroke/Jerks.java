package bendline.stroke;

import bendline.signal.SmoothCurve;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Where a slack line came tight in the forward stroke. The pull then lasts for half a swing of the blank's end on the line, a hundredth
 * of a second or two, and goes between two frames; what can be seen is how slack the line was and how fast rig and tip parted.
 */
final class Jerks {

    /** A line shorter than its drop by less than this share is taut: errors of reading, stretch, the view. */
    private static final double SLACK = 0.06;

    private static final double CERTAIN = 2.5;

    /** Of the distances of the stroke, the one that is the drop. */
    private static final double DROP_QUANTILE = 0.85;

    /**
     * Newtons of a jerk for each m/s at which rig and tip part: √(k·m) of a line of k = 300 to 1,500 N/m (a metre of monofilament or
     * of braid) and the 10 to 20 g with which a blank's end answers; good to a factor of two. Common practice, no source.
     */
    private static final double NEWTONS_A_MPS = 3.5;

    /** For so long after the line comes tight the pull is another than frames show, real seconds, or two frames. */
    private static final double LASTS_SECONDS = 0.025;

    /** Where frames are this close a jerk lies in three of them and is read as any other pull, real seconds. */
    private static final double WATCHED_SECONDS = 0.0025;

    /** A line is not slack for so short a time to either side; a tip or a rig read wrongly is, real seconds. */
    private static final double SLIP_SECONDS = 0.009;

    /** Shortest time over which the speed of parting is taken: the error of two places over less is a speed of its own, real seconds. */
    private static final double SPEED_SECONDS = 0.012;

    /**
     * One of them.
     *
     * @param from before it came tight, real time
     * @param to when the jerk is over
     * @param slack by how much the line was shorter than its drop, over the drop
     * @param partingMps how fast rig and tip parted
     */
    record Jerk(double from, double to, double slack, double partingMps) {

        /** What such a jerk comes to, newtons, to a factor of two. */
        double newtons() {
            return NEWTONS_A_MPS * partingMps;
        }
    }

    private final double[] t;
    private final double[] far;
    private final double[] sd;
    private final double step;

    private Jerks(double[] t, double[] far, double[] sd, double step) {
        this.t = t;
        this.far = far;
        this.sd = sd;
        this.step = step;
    }

    /**
     * @param arcs in metres
     * @param from forward start, real time
     * @param to release
     * @param step usual real time between frames
     */
    static List<Jerk> of(List<BendArc> arcs, double from, double to, double step) {
        List<BendArc> seen = seen(arcs, from, to);
        if (seen.size() < 4 || step < WATCHED_SECONDS) {
            return List.of();
        }
        double[] far = seen.stream()
                .mapToDouble(a ->
                        a.rig() == null ? Double.NaN : a.rig().distance(a.line().last()))
                .toArray();
        double[] t = seen.stream().mapToDouble(BendArc::realSeconds).toArray();
        SmoothCurve calm = new SmoothCurve(t, far, new double[t.length]).runningMedian(SLIP_SECONDS);
        return new Jerks(
                        t,
                        Arrays.stream(t).map(calm::at).toArray(),
                        seen.stream().mapToDouble(a -> a.sd() * Math.sqrt(2)).toArray(),
                        step)
                .find();
    }

    private static List<BendArc> seen(List<BendArc> arcs, double from, double to) {
        return arcs.stream()
                .filter(a -> a.whole() && a.rig() != null && a.realSeconds() >= from && a.realSeconds() <= to)
                .toList();
    }

    /** Share of the frames of a stretch in which the line was seen from tip to rig; 0 where the stretch is not known. */
    static double watched(List<BendArc> arcs, double from, double to, double step) {
        double frames = Math.max(1, Math.floor((to - from) / step));
        return Double.isNaN(frames) ? 0 : Math.min(1, seen(arcs, from, to).size() / frames);
    }

    private List<Jerk> find() {
        double[] sorted = Arrays.stream(far).sorted().toArray();
        double drop = sorted[(int) (DROP_QUANTILE * (sorted.length - 1))];
        List<Jerk> out = new ArrayList<>();
        int tight = 0;
        for (int i = 1; i < t.length; i++) {
            double slack = 0;
            for (int k = tight; k < i; k++) {
                boolean certain = drop - far[k] > CERTAIN * sd[k];
                slack = Math.max(slack, certain ? 1 - far[k] / drop : 0);
            }
            if (far[i] > drop * (1 - SLACK)) {
                if (slack > SLACK) {
                    out.add(jerk(tight, i, slack));
                }
                tight = i;
            }
        }
        return out;
    }

    /** The frame in which the line comes tight shows only part of the speed: the fastest of those before it counts too. */
    private Jerk jerk(int from, int to, double slack) {
        double fastest = 0;
        int first = Math.max(from, to - Math.max(2, (int) Math.ceil(LASTS_SECONDS / step)));
        for (int k = first; k < to; k++) {
            int since = k;
            while (since > from && t[k + 1] - t[since] < SPEED_SECONDS) {
                since--;
            }
            fastest = Math.max(fastest, (far[k + 1] - far[since]) / (t[k + 1] - t[since]));
        }
        double lasts = Math.max(LASTS_SECONDS, 2 * step);
        return new Jerk(t[Math.max(first, to - 2)], t[to] + lasts, slack, fastest);
    }
}
