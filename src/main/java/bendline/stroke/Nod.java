package bendline.stroke;

import bendline.signal.RobustLine;
import java.util.Locale;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** The tip is pulled when the line comes tight on the clip, seconds after the release. */
final class Nod {

    /** Earliest moment after the release at which a cast worth clipping up for can have come to the clip, real seconds. */
    private static final double EARLIEST_SECONDS = 1.2;

    private static final double LEAST_WATCHED_SECONDS = 0.5;
    private static final int LEAST_FRAMES = 20;

    /** Stretch from which the tip's own swing is foretold, and how long before the moment in question it ends. */
    private static final double BASELINE_SECONDS = 0.5;

    private static final double GAP_SECONDS = 0.03;

    /** A pull is there for at least this long. */
    private static final double LASTS_SECONDS = 0.03;

    private static final double LEAST_PULL = Math.toRadians(1.5);
    private static final double STRAYS = 5;

    /** A tight line bends the rod at least so far within {@link #RISE_SECONDS}; a rig that lands lets the tip spring by less. */
    private static final double LEAST_BEND = Math.toRadians(3);

    /** Part of a pull that the butt may seem to have turned: its direction is known less well. */
    private static final double BUTT_SHARE = 0.6;

    /** Longest time from the first of a pull to its greatest: half a swing of a soft rod. */
    private static final double RISE_SECONDS = 0.12;

    /** Part of the greatest pull up to which its rise is steep enough to be drawn back to where it began. */
    private static final double RISING_SHARE = 0.7;

    /** A rod that its hands move bends too: no nod is looked for while the butt turns faster than this. */
    private static final double QUIET_RATE = Math.toRadians(40);

    private static final double RATE_SECONDS = 0.1;

    private final double[] time;
    private final double[] butt;
    private final double[] chord;

    private Nod(double[] time, double[] butt, double[] lag) {
        this.time = time;
        this.butt = butt;
        this.chord = new double[time.length];
        for (int i = 0; i < time.length; i++) {
            chord[i] = butt[i] + lag[i];
        }
    }

    /**
     * Looks for the pull.
     *
     * @param rod the cast's frames and all that follow it
     * @param release real seconds
     */
    static Found find(RodSeries rod, double release) {
        double end = rod.time()[rod.size() - 1];
        if (end < release + EARLIEST_SECONDS + LEAST_WATCHED_SECONDS) {
            return Found.nothing(String.format(
                    Locale.ROOT,
                    "the clip ends %.1f s after the release, before a rig can come to the clip: film on until the line is tight",
                    end - release));
        }
        int[] watched = IntStream.range(0, rod.size())
                .filter(i ->
                        rod.time()[i] >= release + EARLIEST_SECONDS - BASELINE_SECONDS && !Double.isNaN(rod.lag()[i]))
                .toArray();
        if (watched.length < LEAST_FRAMES) {
            return Found.nothing("the tip was not followed for long enough after the release");
        }
        Nod nod = new Nod(pick(watched, rod.time()), pick(watched, rod.angle()), pick(watched, rod.lag()));
        for (int k = nod.first(release + EARLIEST_SECONDS); k < watched.length; k++) {
            RestingTip rest = nod.restBefore(k);
            if (rest != null && nod.pulledFrom(k, rest)) {
                return nod.begun(k, rest);
            }
        }
        return Found.nothing(String.format(
                Locale.ROOT,
                "the tip was watched until %.1f s after the release and was not seen to be pulled",
                nod.time[watched.length - 1] - release));
    }

    private static double[] pick(int[] at, double[] series) {
        return IntStream.of(at).mapToDouble(i -> series[i]).toArray();
    }

    /** First frame at a time or after it. */
    private int first(double seconds) {
        int k = 0;
        while (k < time.length && time[k] < seconds) {
            k++;
        }
        return k;
    }

    private int[] baseline(int k) {
        return IntStream.range(first(time[k] - BASELINE_SECONDS), first(time[k] - GAP_SECONDS))
                .toArray();
    }

    private @Nullable RestingTip restBefore(int k) {
        int[] before = baseline(k);
        double[] t = pick(before, time);
        return RestingTip.enough(t) ? RestingTip.of(t, pick(before, chord)) : null;
    }

    /**
     * Whether the line from hand to tip, which is known best, leaves its course, and does so because the rod bends: most of it must
     * be missing in the butt's own course.
     */
    private boolean pulledFrom(int k, RestingTip rest) {
        int to = Math.max(k + 2, first(time[k] + LASTS_SECONDS));
        if (to > time.length) {
            return false;
        }
        double mean = 0;
        for (int i = k; i < to; i++) {
            mean += pull(i, rest) / (to - k);
            if (pull(i, rest) < 0.5 * LEAST_PULL) {
                return false;
            }
        }
        if (mean < Math.max(LEAST_PULL, STRAYS * rest.scatter() / Math.sqrt(to - k))) {
            return false;
        }
        return quiet(k) && bends(k, rest);
    }

    private boolean bends(int k, RestingTip rest) {
        int most = k;
        for (int i = k; i < time.length && time[i] <= time[k] + RISE_SECONDS; i++) {
            most = pull(i, rest) > pull(most, rest) ? i : most;
        }
        int from = Math.max(k, first(time[most] - LASTS_SECONDS));
        int to = first(time[most] + LASTS_SECONDS);
        double pulled = IntStream.range(from, to)
                .mapToDouble(i -> pull(i, rest))
                .average()
                .orElseThrow();
        double turned = turned(k, from, to);
        return pulled - turned > LEAST_BEND && Math.abs(turned) < BUTT_SHARE * pulled;
    }

    /** How far the butt turned forward out of its own course, radians. */
    private double turned(int k, int from, int to) {
        int[] before = baseline(k);
        RobustLine course = RobustLine.fit(pick(before, time), pick(before, butt));
        return IntStream.range(from, to)
                .mapToDouble(i -> course.intercept() + course.slope() * time[i] - butt[i])
                .average()
                .orElseThrow();
    }

    private boolean quiet(int k) {
        int[] about = IntStream.range(first(time[k] - RATE_SECONDS), first(time[k] + RATE_SECONDS))
                .toArray();
        return about.length > 2
                && Math.abs(RobustLine.fit(pick(about, time), pick(about, butt)).slope()) < QUIET_RATE;
    }

    private double pull(int i, RestingTip rest) {
        return rest.at(time[i]) - chord[i];
    }

    /**
     * Where the pull began. It is seen only once it stands out, so its rise is drawn back to nothing: as a straight line, as if the
     * line jerked, and as a parabola, as if it tightened evenly. The two enclose it, anywhere between them being as likely.
     */
    private Found begun(int k, RestingTip rest) {
        double most = 0;
        for (int i = k; i < time.length && time[i] <= time[k] + RISE_SECONDS; i++) {
            most = Math.max(most, pull(i, rest));
        }
        int to = k + 1;
        while (to + 1 < time.length
                && pull(to + 1, rest) < RISING_SHARE * most
                && time[to + 1] <= time[k] + RISE_SECONDS) {
            to++;
        }
        double jerk = drawnBack(k, to, rest, 1);
        double even = drawnBack(k, to, rest, 0.5);
        double frame = time[k] - time[Math.max(0, k - 1)];
        double earliest = time[k] - GAP_SECONDS - 2 * frame;
        double value = Math.min(time[k], Math.max(earliest, 0.5 * (jerk + even)));
        return new Found(
                value,
                Math.hypot(jerk - even, Math.max(frame, 0.005)) / Math.sqrt(12),
                "the tip is pulled forward out of its rest while the butt is still");
    }

    /** Where the straight line through a power of the pull meets nothing; the first frame where there is no rise. */
    private double drawnBack(int from, int to, RestingTip rest, double power) {
        double n = to - from + 1;
        double st = 0;
        double sy = 0;
        double stt = 0;
        double sty = 0;
        for (int i = from; i <= to; i++) {
            double t = time[i] - time[from];
            double y = Math.pow(Math.max(0, pull(i, rest)), power);
            st += t;
            sy += y;
            stt += t * t;
            sty += t * y;
        }
        double slope = (n * sty - st * sy) / (n * stt - st * st);
        return slope > 0 ? time[from] + (st - sy / slope) / n : time[from];
    }
}
