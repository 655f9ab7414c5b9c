package bendline.trace;

import bendline.geometry.Point;
import bendline.trace.BlankFitter.Fit;
import java.util.List;
import java.util.Objects;

/**
 * A reed or a twig in the wind is thin, of one length, and turns about its foot as a rod does about the hands; but it is short in the
 * picture and only sways. A rod that is as short there, filmed from very far, is believed in once it is swung.
 */
final class Sway {

    /**
     * Shorter than this share of the picture's smaller side is short. The one reed that was ever followed is 0.175 of it, the shortest rods
     * of the rendered clips are 0.23: known no better than by these.
     */
    private static final double SHORT = 0.2;

    /** All but a few of the directions of something that only sways lie in so wide a sector. */
    private static final double SECTOR_RAD = Math.toRadians(45);

    private static final double FEW = 0.05;

    private Sway() {}

    /**
     * Whether what was followed is nothing but that.
     *
     * @param freePx its length, pixels
     * @param sidePx the picture's smaller side, pixels
     */
    static boolean only(List<Look> looks, double freePx, double sidePx) {
        if (freePx >= SHORT * sidePx) {
            return false;
        }
        List<Point> chords = looks.stream()
                .map(Look::chosen)
                .filter(Objects::nonNull)
                .map(Sway::chord)
                .toList();
        Point mean = chords.stream().reduce(new Point(0, 0), Point::plus);
        double[] off = chords.stream()
                .mapToDouble(c -> Math.abs(Math.atan2(mean.cross(c), mean.dot(c))))
                .sorted()
                .toArray();
        return off.length == 0 || off[(int) ((1 - FEW) * (off.length - 1))] < SECTOR_RAD / 2;
    }

    private static Point chord(Fit fit) {
        Point chord = fit.line().last().minus(fit.line().first());
        return chord.times(1 / chord.norm());
    }
}
