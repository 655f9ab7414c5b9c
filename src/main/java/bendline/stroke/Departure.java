package bendline.stroke;

import bendline.signal.ChangePoint;
import bendline.signal.Onset;

/**
 * When the rig leaves the circle of its drop round the tip, by all places about that time together. Up to then its distance from the tip
 * is the drop; from then on the square of the distance is nearly a parabola in time, since nothing pulls any more and both go on with
 * hardly changing speeds. Less sharp than {@link LetGo} and
 * blind to a rig that leaves inwards, but no few wrong places turn it over.
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
        RigLine.Distances d = RigLine.distances(rod, Math.max(tight, from - about), to + about);
        ChangePoint left = Onset.of(
                squares(d),
                new Onset.Level(drop * drop, 2 * LIKE_BEFORE * drop * drop),
                new ChangePoint.Asked(from, to, step, ERRORS_LAST_SECONDS));
        return left.before() < LEAST || left.after() < LEAST
                ? Found.nothing("the rig was seen in too few frames about the moment it left the tip's circle")
                : new Found(
                        left.at(),
                        Math.hypot(left.sd(), NEARLY_SECONDS),
                        "the rig leaves the circle of its drop round the tip, by all places about that time together");
    }

    private static ChangePoint.Samples squares(RigLine.Distances d) {
        double[] squares = new double[d.times().length];
        double[] sds = new double[squares.length];
        for (int i = 0; i < squares.length; i++) {
            squares[i] = d.pixels()[i] * d.pixels()[i];
            sds[i] = 2 * d.pixels()[i] * d.sds()[i];
        }
        return new ChangePoint.Samples(d.times(), squares, sds);
    }
}
