package bendline.stroke;

import bendline.signal.Onset;
import java.util.Arrays;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;

/**
 * When the rig leaves the circle of its drop round the tip, by all places about that time together. Up to then its distance from the tip
 * is the drop; from then on the square of the distance is nearly a parabola in time, since nothing pulls any more and both go on with
 * hardly changing speeds. Less sharp than the frame in which it is first off the circle, but no few wrong places turn it over.
 */
final class Departure {

    /** How long before and after the moments asked the rig is looked at, real seconds, and at least how many frames. */
    private static final double ABOUT_SECONDS = 0.05;

    private static final int ABOUT_FRAMES = 3;

    /** Errors of places go on for so long, real seconds; some frames of a fast clip. */
    private static final double ERRORS_LAST_SECONDS = 0.01;

    /** How near the drop is to what it was before, share: a slack line shortens it, a view from aside changes it. */
    private static final double LIKE_BEFORE = 0.1;

    /** Places before and after that tell a level from a rise. */
    private static final int LEAST = 3;

    /**
     * By how much a parabola may be off, real seconds: the blank straightens and the line shrinks in the first hundredth of a second. 10 ms
     * on the second simulator's hurried cast with hardly any errors.
     */
    private static final double NEARLY_SECONDS = 0.005;

    /** Least uncertainty of a distance, pixels. */
    private static final double LEAST_PX = 1;

    private Departure() {}

    /**
     * The moment, of those between two.
     *
     * @param tight from when the line is tight, real time: the rise of a slack one is no departure
     * @param step usual time between frames, real seconds
     * @param drop about, pixels
     */
    static Found between(double from, double to, double tight, RodSeries rod, double step, double drop) {
        double about = Math.max(ABOUT_SECONDS, ABOUT_FRAMES * step);
        int[] seen = IntStream.range(0, rod.size())
                .filter(i -> rod.time()[i] >= Math.max(tight, from - about) && rod.time()[i] <= to + about)
                .filter(i -> Double.isFinite(RigLine.distance(rod, i)))
                .toArray();
        Onset.Samples squares = new Onset.Samples(
                each(seen, i -> rod.time()[i]),
                each(seen, i -> RigLine.distance(rod, i) * RigLine.distance(rod, i)),
                each(seen, i -> 2 * RigLine.distance(rod, i) * Math.max(LEAST_PX, RigLine.distanceSd(rod, i))));
        Onset onset = Onset.of(
                squares,
                new Onset.Level(drop * drop, 2 * LIKE_BEFORE * drop * drop),
                new Onset.Asked(from, to, step, ERRORS_LAST_SECONDS));
        return onset.before() < LEAST || onset.after() < LEAST
                ? Found.nothing("the rig was seen in too few frames about the moment it left the tip's circle")
                : new Found(
                        onset.at(),
                        Math.hypot(onset.sd(), NEARLY_SECONDS),
                        "the rig leaves the circle of its drop round the tip, by all frames about that time together");
    }

    private static double[] each(int[] frames, IntToDoubleFunction value) {
        return Arrays.stream(frames).mapToDouble(value).toArray();
    }
}
