package bendline.stroke;

import bendline.signal.ChangePoint;
import bendline.signal.Freed;
import bendline.signal.Onset;

/**
 * When the rig leaves the circle of its drop round the tip, by its distance from the tip in the frames about that time, in two ways: sharply,
 * to either side of the circle, or coarsely, but so that no few wrong places turn it over.
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
     * How fast the distance changes at first, drops a second, and how fast the variance of that grows while the line is tight, drops²/s³. These
     * and the next two are of 24 rushed and dropped and 26 other rendered casts and of 110 without pictures (seed 301), on which the gains were
     * measured, too; seed 401 and the benchmark had no say. They matter little: two to five times as much moved the middle error by a tenth of a
     * frame.
     */
    private static final double DRIFT = 1;

    private static final double HELD = 2;

    /** How fast it may change at once when the line is let go, drops a second, and as above while nothing holds it. */
    private static final double KICK = 8;

    private static final double FREE = 4000;

    /** Share of the places that are another thing's, and over how many drops these lie. */
    private static final double STRAYS = 0.05;

    private static final double STRAY_DROPS = 2;

    /** What the line's stretch and a finger that lets it slip leave open, real seconds; a guess. */
    private static final double FINGER_SECONDS = 0.003;

    /**
     * By how much a parabola may be off, real seconds: the blank straightens and the line shrinks in the first hundredth of a second. 10 ms
     * on the second simulator's hurried cast with hardly any errors.
     */
    private static final double PARABOLA_SECONDS = 0.005;

    private final RodSeries rod;
    private final double step;
    private final double tight;
    private final double drop;

    /**
     * @param rod the cast's frames
     * @param step usual time between frames, real seconds
     * @param tight from when the line is tight, real time: the rise of a slack one is no departure
     * @param drop about, pixels
     */
    Departure(RodSeries rod, double step, double tight, double drop) {
        this.rod = rod;
        this.step = step;
        this.tight = tight;
        this.drop = drop;
    }

    /**
     * Sharply, of the moments between two: up to it the distance changes slowly, since the camera sees the drop from another side; from then
     * on the rig flies on and the blank springs back, and it changes fast, outwards or inwards first.
     */
    Found sharply(double from, double to) {
        double square = drop * drop;
        Freed.Course course =
                new Freed.Course(drop, LIKE_BEFORE * drop, DRIFT * drop, HELD * square, KICK * drop, FREE * square);
        ChangePoint left =
                Freed.of(distances(from, to), course, new Freed.Strays(STRAYS, STRAY_DROPS * drop), asked(from, to));
        return found(left, FINGER_SECONDS, "by the frames just before and after");
    }

    /**
     * Coarsely, of the moments between two: up to it the distance is the drop; from then on its square is nearly a parabola in time, since
     * nothing pulls any more and both go on with hardly changing speeds. Blind to a rig that leaves inwards.
     */
    Found coarsely(double from, double to) {
        Onset.Level level = new Onset.Level(drop * drop, 2 * LIKE_BEFORE * drop * drop);
        ChangePoint left = Onset.of(squares(distances(from, to)), level, asked(from, to));
        return found(left, PARABOLA_SECONDS, "by all places about that time together");
    }

    private ChangePoint.Samples distances(double from, double to) {
        double about = Math.max(ABOUT_SECONDS, ABOUT_FRAMES * step);
        return RigLine.distances(rod, Math.max(tight, from - about), to + about);
    }

    private ChangePoint.Asked asked(double from, double to) {
        return new ChangePoint.Asked(from, to, step, ERRORS_LAST_SECONDS);
    }

    private static Found found(ChangePoint left, double nearlySeconds, String how) {
        return left.before() < LEAST || left.after() < LEAST
                ? Found.nothing("the rig was seen in too few frames about the moment it left the tip's circle")
                : new Found(
                        left.at(),
                        Math.hypot(left.sd(), nearlySeconds),
                        "the rig leaves the circle of its drop round the tip, " + how);
    }

    private static ChangePoint.Samples squares(ChangePoint.Samples distances) {
        double[] squares = new double[distances.times().length];
        double[] sds = new double[squares.length];
        for (int i = 0; i < squares.length; i++) {
            double d = distances.values()[i];
            squares[i] = d * d;
            sds[i] = 2 * d * distances.sds()[i];
        }
        return new ChangePoint.Samples(distances.times(), squares, sds);
    }
}
