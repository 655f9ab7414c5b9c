package bendline.stroke;

import bendline.rod.Stiffness;
import bendline.signal.DrivenPath;
import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * The largest mean pull of the line on the rig over some hundredths of a second, told by the rig alone: what its momentum gains in that
 * time, its weight taken out (impulse and momentum, textbook). A jerk counts with its impulse, which the places before and after it
 * show, not with its height, which they don't.
 *
 * @param over time over which the mean is taken, real seconds
 * @param newtons the largest; NaN where nothing is told
 * @param sd its 68 % uncertainty by the places alone
 * @param from where that time begins, real time
 * @param gap longest time of the forward stroke in which the rig was not seen, real seconds
 */
record MeanPull(double over, double newtons, double sd, double from, double gap) {

    /** What an angler feels as one pull, real seconds. */
    static final double SECONDS = 0.04;

    /** Frames farther apart show no shorter time, in steps. */
    static final double STEPS = 2;

    private static final MeanPull NONE = new MeanPull(Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN);

    /**
     * A rig is thrown with up to forty times its weight over most of a stroke; a jerk of a line that comes tight lasts some milliseconds
     * and may be as large (metres a second squared, seconds). Common practice, no source.
     */
    private static final DrivenPath.Habit HABIT = new DrivenPath.Habit(150, 0.04, 140, 0.005);

    /** A line that turns by a radian and a third in the time makes up so much: half the angle over its sine. */
    private static final double MOST_TURNED = 1.08;

    /** What strays of the rig's places leave open, a share of the pull: with it 18 of 25 told on 35 rendered clips were within. */
    private static final double STRAYS = 0.03;

    /** Cells of one mean. */
    private static final int CELLS = 20;

    private static final int DRAWS = 100;

    /** What steadies both ends, real seconds. */
    private static final double LEAD_SECONDS = 0.15;

    private static final double TAIL_SECONDS = 0.12;

    /** Least uncertainty of a moment, real seconds. */
    private static final double LEAST_SECONDS = 5e-4;

    /** Time over which the mean is taken at a step between frames, real seconds. */
    static double over(double step) {
        return Math.max(SECONDS, STEPS * step);
    }

    /** @param kg the rig as cast; null where it was not told */
    static MeanPull of(StrokeReader.Readings all, int firstFrame, @Nullable Double kg) {
        double from = all.moments().forwardStart();
        if (kg == null || !all.scale().known() || !all.release().known() || Double.isNaN(from)) {
            return NONE;
        }
        double free = all.scale().metresPerPixel() * all.trace().freeLengthPx();
        RigPath path = RigPath.of(all, all.plane().inMetres(free), firstFrame);
        return of(
                path, kg, new Stretch(from, all.release().value(), all.release().sd(), over(all.step())));
    }

    /**
     * Where the largest is looked for.
     *
     * @param from forward start, real time
     * @param to release
     * @param toSd its 68 % uncertainty
     * @param over time over which the mean is taken
     */
    record Stretch(double from, double to, double toSd, double over) {}

    static MeanPull of(RigPath path, double kg, Stretch s) {
        double step = s.over / CELLS;
        double begin = s.from - LEAD_SECONDS;
        int[] seen = IntStream.range(0, path.realSeconds().length)
                .filter(i -> path.realSeconds()[i] >= begin && path.realSeconds()[i] <= s.to + TAIL_SECONDS)
                .filter(i -> Double.isFinite(path.x()[i]))
                .toArray();
        int first = (int) Math.ceil(LEAD_SECONDS / step);
        int last = (int) Math.floor((s.to - begin) / step + 1e-9);
        if (seen.length < 4 || last - first < CELLS) {
            return NONE;
        }
        // After the release nothing pulls.
        double sd = Math.max(LEAST_SECONDS, s.toSd);
        DrivenPath.Cells cells = DrivenPath.Cells.until(begin, step, s.to, sd);
        DrivenPath driven = new DrivenPath(places(path, seen, begin), cells, HABIT);
        int early = Math.max(first + CELLS, (int) Math.floor((s.to - sd - begin) / step));
        int late = Math.min(cells.share().length, (int) Math.floor((s.to + sd - begin) / step));
        double moved = 0.5 * kg * (most(driven.mean(), first, late) - most(driven.mean(), first, early));
        return largest(driven, first, last, kg).at(cells, s.over, moved, gap(path, seen, s));
    }

    private static DrivenPath.Places places(RigPath path, int[] seen, double begin) {
        double[] t = Arrays.stream(seen).mapToDouble(i -> path.realSeconds()[i]).toArray();
        double[] fallen = Arrays.stream(t)
                .map(u -> 0.5 * Stiffness.GRAVITY * (u - begin) * (u - begin))
                .toArray();
        return new DrivenPath.Places(
                t,
                Arrays.stream(seen).mapToDouble(i -> path.x()[i]).toArray(),
                IntStream.range(0, t.length)
                        .mapToDouble(k -> path.y()[seen[k]] + fallen[k])
                        .toArray(),
                Arrays.stream(seen).mapToDouble(i -> path.sd()[i]).toArray());
    }

    private static double gap(RigPath path, int[] seen, Stretch s) {
        double before = s.from;
        double longest = 0;
        for (int i : seen) {
            double t = path.realSeconds()[i];
            if (t > s.from && t < s.to) {
                longest = Math.max(longest, t - before);
                before = t;
            }
        }
        return Math.max(longest, s.to - before);
    }

    private record Largest(double newtons, double sd, int cell) {

        MeanPull at(DrivenPath.Cells cells, double over, double moved, double gap) {
            return new MeanPull(over, newtons, Math.hypot(sd, moved), cells.time(cell), gap);
        }
    }

    /**
     * Likely courses of the pull are rougher than it is, so that the middle of their largest means is too large; the likeliest course is
     * smoother, and its largest mean too small. Between the two, and as unsure as they lie apart.
     */
    private static Largest largest(DrivenPath driven, int first, int last, double kg) {
        double[] turned = turned(driven.mean(), first, last);
        double[] likely = new double[DRAWS];
        Random random = new Random(1);
        Arrays.setAll(likely, k -> kg * most(means(driven.draw(random), first, last), turned)[1]);
        double[] sorted = likely.clone();
        Arrays.sort(sorted);
        double rough = 0.5 * (sorted[DRAWS / 2 - 1] + sorted[DRAWS / 2]);
        double[] smooth = most(means(driven.mean(), first, last), turned);
        double apart = Math.abs(rough - kg * smooth[1]);
        return new Largest(
                0.5 * (rough + kg * smooth[1]), Math.hypot(Spread.of(likely), apart / 2), first + (int) smooth[0]);
    }

    private static double most(double[][] a, int first, int last) {
        return most(means(a, first, last), turned(a, first, last))[1];
    }

    /** Where the product of two series is largest, and that. */
    private static double[] most(double[] a, double[] b) {
        double[] out = {0, 0};
        for (int i = 0; i < a.length; i++) {
            if (a[i] * b[i] > out[1]) {
                out[0] = i;
                out[1] = a[i] * b[i];
            }
        }
        return out;
    }

    /** Size of the mean acceleration over each stretch of cells. */
    private static double[] means(double[][] a, int first, int last) {
        return IntStream.rangeClosed(first, last - CELLS)
                .mapToDouble(i -> Math.hypot(sum(a[0], i), sum(a[1], i)) / CELLS)
                .toArray();
    }

    /** The pull turns with the line: mean of its size over the size of its mean, in each stretch of cells. */
    private static double[] turned(double[][] a, int first, int last) {
        double[] size = IntStream.range(0, a[0].length)
                .mapToDouble(i -> Math.hypot(a[0][i], a[1][i]))
                .toArray();
        double[] means = means(a, first, last);
        return IntStream.range(0, means.length)
                .mapToDouble(i -> Math.min(MOST_TURNED, sum(size, first + i) / CELLS / means[i]))
                .toArray();
    }

    private static double sum(double[] a, int from) {
        double sum = 0;
        for (int i = from; i < from + CELLS; i++) {
            sum += a[i];
        }
        return sum;
    }

    /**
     * Its uncertainty with the mass, the scale and a doubt of either in it.
     *
     * @param lengthSd uncertainty of lengths in metres over their value
     * @param doubt see {@link LoadCurve}
     */
    double sdWith(double lengthSd, double doubt) {
        double told = Math.hypot(Math.hypot(RigPull.MASS_SD, lengthSd), doubt / LoadReader.LENGTH_POWER);
        return Math.hypot(sd, Math.hypot(told, STRAYS) * newtons);
    }

    /** The middle of that time. */
    double middle() {
        return from + over / 2;
    }

    boolean known() {
        return Double.isFinite(newtons);
    }
}
