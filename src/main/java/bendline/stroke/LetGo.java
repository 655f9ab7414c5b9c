package bendline.stroke;

import bendline.signal.ChangePoint;
import bendline.signal.Freed;

/**
 * When the rig leaves the circle of its drop round the tip, sharply: by how the distance moves in the frames just before and after. Up to then
 * it changes slowly, since the camera sees the drop from another side; from then on the rig flies on and the blank springs back, and it
 * changes fast, to either side. {@link Departure} is the coarse way that no few wrong places turn over. How fast is of 24 rushed and dropped and 26
 * other rendered casts and of 110 without pictures (seed 301), on which the gains were measured, too; seed 401 and the benchmark had no say. It
 * matters little: two to five times as much moved the middle error by a tenth of a frame.
 */
final class LetGo {

    /** How long before and after the moments asked the rig is looked at, real seconds, and at least how many frames. */
    private static final double ABOUT_SECONDS = 0.05;

    private static final int ABOUT_FRAMES = 3;

    /** Errors of places go on for so long, real seconds; some frames of a fast clip. */
    private static final double ERRORS_LAST_SECONDS = 0.01;

    /** How near the drop is to what it was before, share: a slack line shortens it, a view from aside changes it. */
    private static final double LIKE_BEFORE = 0.1;

    /** Places before and after that tell a level from a rise. */
    private static final int LEAST = 3;

    /** How fast the distance changes at first, drops a second, and how fast the variance of that grows while the line is tight, drops²/s³. */
    private static final double DRIFT = 1;

    private static final double HELD = 2;

    /** How fast it may change at once when the line is let go, drops a second, and as above while nothing holds it. */
    private static final double KICK = 8;

    private static final double FREE = 4000;

    /** Share of the places that are another thing's, and over how many drops these lie. */
    private static final double STRAYS = 0.05;

    private static final double STRAY_DROPS = 2;

    /** What the line's stretch and a finger that lets it slip leave open, real seconds; a guess. */
    private static final double NEARLY_SECONDS = 0.003;

    private LetGo() {}

    /**
     * The moment, of those between two.
     *
     * @param tight from when the line is tight, real time: the rise of a slack one is no departure
     * @param step usual time between frames, real seconds
     * @param drop about, pixels
     */
    static Found between(double from, double to, double tight, RodSeries rod, double step, double drop) {
        double square = drop * drop;
        double about = Math.max(ABOUT_SECONDS, ABOUT_FRAMES * step);
        RigLine.Distances d = RigLine.distances(rod, Math.max(tight, from - about), to + about);
        ChangePoint left = Freed.of(
                new ChangePoint.Samples(d.times(), d.pixels(), d.sds()),
                new Freed.Course(drop, LIKE_BEFORE * drop, DRIFT * drop, HELD * square, KICK * drop, FREE * square),
                new Freed.Strays(STRAYS, STRAY_DROPS * drop),
                new ChangePoint.Asked(from, to, step, ERRORS_LAST_SECONDS));
        return left.before() < LEAST || left.after() < LEAST
                ? Found.nothing("the rig was seen in too few frames about the moment it left the tip's circle")
                : new Found(
                        left.at(),
                        Math.hypot(left.sd(), NEARLY_SECONDS),
                        "the rig leaves the circle of its drop round the tip, by the frames just before and after");
    }
}
