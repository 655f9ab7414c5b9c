package bendline.trace;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A place that may be where the rod is held, and the curves that were scouted from there. Lines meet in other places too, such
 * as the tip of a resting rod that rings; but only from the hands do curves of one length lead in many directions and meet there.
 *
 * @param pivot reference picture, pixels
 * @param curves from near the pivot outwards, one or none a scouted frame
 */
record Hands(Point pivot, List<Polyline> curves) {

    /** Width of a sector: a swing over the top crosses a dozen or so. */
    private static final double SECTOR_RAD = Math.toRadians(10);

    /** Inner share of a curve that points to the hands however much the tip is bent. */
    private static final double INNER_SHARE = 0.4;

    /** Lines that pass the meeting point farther off than this share of the length are likely no rod's. */
    private static final double PASSES = 0.12;

    /** Share of the length within which curves that are held at a place meet there: hands wander about twice as far. */
    private static final double BESIDE = 0.15;

    /** The place from which curves of one length lead in many directions and near which they meet; null if there is none. */
    static @Nullable Hands likeliest(List<Hands> places) {
        return places.stream()
                .filter(h -> !h.curves().isEmpty())
                .max(Comparator.comparingDouble(Hands::score))
                .orElse(null);
    }

    /** How long the curves are. */
    RodLength.Estimate length() {
        return RodLength.of(curves);
    }

    /**
     * Sectors into which curves of one length lead, times the share of the curves that are of this length; the less the farther
     * off they meet. A place beside the rod sees it too, but as curves that all lead past it on their way to the hands.
     */
    double score() {
        double off = meeting().distance(pivot) / (BESIDE * length().freePx());
        return sectors(same()) * length().agreement() / (1 + off * off);
    }

    /**
     * Where the curves' inner parts, drawn on, pass nearest to one another. Directions count alike however often the rod was
     * seen in them. The pivot itself if the curves don't tell.
     */
    Point meeting() {
        List<Polyline> rods = same();
        if (sectors(rods) < 3) {
            return pivot;
        }
        double scale = PASSES * length().freePx();
        Point at = pivot;
        for (int round = 0; round < 8; round++) {
            double xx = 0;
            double xy = 0;
            double yy = 0;
            double bx = 0;
            double by = 0;
            for (Polyline rod : rods) {
                Point normal = normal(rod);
                double offset = normal.dot(rod.first());
                double away = (normal.dot(at) - offset) / scale;
                double w = 1 / (1 + away * away) / crowd(rod, rods);
                xx += w * normal.x() * normal.x();
                xy += w * normal.x() * normal.y();
                yy += w * normal.y() * normal.y();
                bx += w * normal.x() * offset;
                by += w * normal.y() * offset;
            }
            double det = xx * yy - xy * xy;
            if (det < 1e-3 * (xx + yy) * (xx + yy)) {
                return pivot;
            }
            at = new Point((yy * bx - xy * by) / det, (xx * by - xy * bx) / det);
        }
        return at;
    }

    private List<Polyline> same() {
        double usual = length().freePx() * RodLength.INTO_HAND;
        return curves.stream()
                .filter(c -> Math.abs(c.length() - usual) < RodLength.SAME * usual)
                .toList();
    }

    private static long crowd(Polyline rod, List<Polyline> rods) {
        return rods.stream().filter(r -> sector(r) == sector(rod)).count();
    }

    private static long sectors(List<Polyline> rods) {
        return rods.stream().mapToInt(Hands::sector).distinct().count();
    }

    private static Point normal(Polyline rod) {
        Point d = rod.at(INNER_SHARE * rod.length()).minus(rod.first());
        return new Point(-d.y() / d.norm(), d.x() / d.norm());
    }

    private static int sector(Polyline rod) {
        Point d = rod.at(INNER_SHARE * rod.length()).minus(rod.first());
        return (int) Math.floor(d.angle() / SECTOR_RAD);
    }
}
