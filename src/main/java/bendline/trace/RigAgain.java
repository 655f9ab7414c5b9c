package bendline.trace;

import bendline.geometry.Point;
import bendline.image.Area;
import bendline.image.Plane;
import bendline.signal.LeastSquares;
import bendline.trace.BlankFitter.Fit;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * Rigs that were missed for a few frames before a background that they hardly differ from: the frames just before and after say where to
 * look, and there much less will do, if nothing else like it is near.
 *
 * @param planes part of a frame's difference from what lies behind, noise units
 * @param width columns of a whole difference
 * @param height rows
 * @param rodPx hand to tip along the blank, pixels
 */
record RigAgain(Parts planes, int width, int height, double rodPx) {

    /** Part of a frame's difference from what lies behind. */
    interface Parts {

        /** The part of a frame inside an area, whose corner becomes the origin. */
        Plane part(int frame, Area area);
    }

    /** Strength from which a pixel counts here, noise units; half of what counts elsewhere. */
    private static final float FAINT = 3;

    /** Frames about one that tell where it should be, and in how many to either side it must have been seen. */
    private static final Foretold.Window WINDOW = new Foretold.Window(0.1, 3, 60);

    private static final int ASIDE = 2;

    /** How far from there it may be, rod lengths and pixels, and how far about that has to be clear, pixels. */
    private static final double NEAR = 0.012;

    private static final double NEAR_PX = 4;
    private static final int ABOUT_PX = 24;

    /** Most things of any kind in that place. */
    private static final int MOST_THINGS = 6;

    /** Nearer to the blank than this it may be a piece of that, pixels. */
    private static final double CLEAR_PX = 15;

    /**
     * What is found, by frame.
     *
     * @param rigs where it was seen, one a frame, coordinates of the planes
     */
    Map<Integer, Blob> found(List<Tracked> rigs, List<Look> looks) {
        Map<Integer, Blob> out = new TreeMap<>();
        for (int t = 0; t < rigs.size(); t++) {
            Point expected = rigs.get(t).seen() ? null : expected(t, rigs, looks);
            Blob blob = expected == null || onBlank(expected, looks.get(t).chosen()) ? null : near(t, expected);
            if (blob != null) {
                out.put(t, blob);
            }
        }
        return out;
    }

    private static boolean onBlank(Point place, @Nullable Fit rod) {
        return rod == null || rod.line().distanceTo(place) < CLEAR_PX;
    }

    private @Nullable Blob near(int t, Point expected) {
        int left = (int) expected.x() - ABOUT_PX;
        int top = (int) expected.y() - ABOUT_PX;
        int size = 2 * ABOUT_PX + 1;
        if (left < 0 || top < 0 || left + size > width || top + size > height) {
            return null;
        }
        Plane part = planes.part(t, new Area(left, top, size, size));
        List<Blob> things = new BlobFinder(rodPx, FAINT).find(part, null);
        if (things.size() > MOST_THINGS) {
            return null;
        }
        Point corner = new Point(left, top);
        Point here = expected.minus(corner);
        return things.stream()
                .filter(b -> b.centre().distance(here) < NEAR_PX + NEAR * rodPx && b.lengthPx() < ABOUT_PX)
                .min(Comparator.comparingDouble(b -> b.centre().distance(here)))
                .map(b -> new Blob(b.centre().plus(corner), b.mass(), b.lengthPx(), b.widthPx()))
                .orElse(null);
    }

    private static @Nullable Point expected(int t, List<Tracked> rigs, List<Look> looks) {
        List<Integer> near = WINDOW.about(t, looks, i -> rigs.get(i).seen() ? i : null);
        long before = near.stream().filter(i -> i < t).count();
        if (before < ASIDE || near.size() - before < ASIDE) {
            return null;
        }
        double now = looks.get(t).seconds();
        double[] away =
                near.stream().mapToDouble(i -> looks.get(i).seconds() - now).toArray();
        double[] x = near.stream().mapToDouble(i -> rigs.get(i).position().x()).toArray();
        double[] y = near.stream().mapToDouble(i -> rigs.get(i).position().y()).toArray();
        double[] weight = near.stream().mapToDouble(i -> 1 / rigs.get(i).sdPx()).toArray();
        return new Point(LeastSquares.parabola(away, x, weight)[0], LeastSquares.parabola(away, y, weight)[0]);
    }
}
