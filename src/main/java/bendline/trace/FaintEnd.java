package bendline.trace;

import bendline.geometry.Polyline;
import bendline.geometry.PolynomialCurve;
import bendline.image.Plane;

/**
 * What goes on faintly beyond the place where a blank seems to end. Beside a dark blank a tip painted in a light colour hardly
 * counts, against a bright sky all the less; and so does line that leads on from the tip. Which of them it is one frame can't tell,
 * see {@link Paint}.
 */
final class FaintEnd {

    /** Outer share of a blank that tells how it goes on: more of it bends in more ways than a parabola. */
    private static final double OUTER_SHARE = 0.4;

    private static final int POINTS = 30;

    /** How far to look, pixels. */
    private static final double FARTHEST_PX = 150;

    /** How far from the way on, pixels. */
    private static final double BESIDE_PX = 3;

    /** Strength from which a station speaks for more, noise units; a tenth of what the rest of the blank shows may be less. */
    private static final double LEVEL = 3;

    /** A station counts no more than so many levels, and so many missing stations are the end. */
    private static final double MOST = 2.5;

    private static final double GAP = 8;

    /** Inside the end it is the blank itself that is seen, pixels. */
    private static final double END_PX = 3;

    private FaintEnd() {}

    /**
     * How far it goes on, pixels; 0 where it does not.
     *
     * @param line up to where the blank seems to end, pixels
     * @param blurPx width of its picture there
     */
    static double beyond(Plane difference, Polyline line, double blurPx) {
        Polyline outer = line.reversed().cut(OUTER_SHARE * line.length()).reversed();
        PolynomialCurve curve = PolynomialCurve.through(outer.resampled(POINTS), 2);
        double perStation = 2 * Strip.STEP_PX / outer.length();
        double widest = 1.5 * blurPx + 2.5;
        int stations = (int) (FARTHEST_PX / Strip.STEP_PX);
        Strip strip = new Strip(
                difference,
                curve,
                1 - END_PX / Strip.STEP_PX * perStation,
                perStation,
                stations,
                BESIDE_PX,
                i -> widest,
                0);
        double sum = 0;
        double best = 0;
        int end = 0;
        for (int i = 0; i < stations && sum > best - GAP * LEVEL; i++) {
            double q = 0;
            for (float s : strip.strength[i]) {
                q = Math.max(q, s);
            }
            sum += Math.min(q, MOST * LEVEL) - LEVEL;
            if (sum >= best) {
                best = sum;
                end = i;
            }
        }
        return Math.max(0, end * Strip.STEP_PX - END_PX);
    }
}
