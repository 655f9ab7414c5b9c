package bendline.trace;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.image.Plane;
import bendline.image.PlanePool;
import bendline.scene.CameraMotion;
import bendline.scene.Glimpse;
import bendline.trace.BlankFitter.Fit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** A few difference pictures, spread over a clip, from which is learnt where the rod is held and how long it looks. */
final class Scouts {

    /** Places at which the rod may be held that are looked at. */
    private static final int PLACES = 4;

    /** How often the likeliest place is moved to where its curves meet. */
    private static final int MOVES = 2;

    /** Hands at 1.5 m over a free length of 3 m, with some to spare: how far below the hands a tip can be, free lengths. */
    private static final double STEEPEST_DOWN = 0.6;

    /** A curve that ends so near to the edge of the picture may go on outside, shares of the height. */
    private static final double EDGE = 0.012;

    private final int width;
    private final int height;
    private final List<Glimpse> scouts = new ArrayList<>();
    private final Map<Point, List<Optional<Polyline>>> seenFrom = new HashMap<>();
    private final PolarSearch search;
    private final PlanePool pool = new PlanePool();

    /** For pictures of one size, pixels. */
    Scouts(int width, int height) {
        this.width = width;
        this.height = height;
        search = new PolarSearch(0.055 * height, width >= height ? 0.8 * height : 0.6 * height);
    }

    void add(Glimpse scout) {
        scouts.add(scout);
        seenFrom.clear();
    }

    int size() {
        return scouts.size();
    }

    /** Where moving lines meet, the likeliest first. */
    List<Point> pivots() {
        PivotFinder finder = new PivotFinder(width, height, 0.5 * height);
        for (Glimpse scout : scouts) {
            Plane plane = scout.difference().unpacked(pool);
            finder.add(plane);
            pool.giveBack(plane);
        }
        return finder.best(PLACES);
    }

    /** The likeliest place, moved to where its curves say that they are held; null if no curve leads from any. */
    @Nullable
    Hands hands(List<Point> places) {
        Hands likeliest = Hands.likeliest(places.stream().map(this::at).toList());
        for (int round = 0; round < MOVES && likeliest != null; round++) {
            likeliest = Hands.likeliest(List.of(at(likeliest.meeting()), likeliest));
        }
        return likeliest;
    }

    /** What leads out of a place. */
    Hands at(Point place) {
        return new Hands(place, curves(place));
    }

    /** What the pictures show to people. */
    FirstSight sight(CameraMotion motion, @Nullable Hands hands) {
        RodLength.Estimate length = hands == null || hands.curves().isEmpty() ? null : hands.length();
        List<FirstSight.Sight> sights = new ArrayList<>();
        for (int i = 0; i < scouts.size(); i++) {
            Polyline curve = length == null ? null : from(hands.pivot()).get(i).orElse(null);
            boolean rod = curve != null && curve.length() > (1 - RodLength.SAME) * length.along(curve);
            boolean edge = curve != null && atEdge(curve.last());
            sights.add(new FirstSight.Sight(scouts.get(i).seconds(), rod || edge, edge));
        }
        return length == null
                ? new FirstSight(motion, sights, Double.NaN, Double.NaN)
                : new FirstSight(motion, sights, length.freePx(), Math.expm1(2 * length.lean()));
    }

    private boolean atEdge(Point p) {
        double margin = EDGE * height;
        return p.x() < margin || p.y() < margin || p.x() > width - margin || p.y() > height - margin;
    }

    /** The best curves from a place, one or none a picture. */
    private List<Polyline> curves(Point pivot) {
        return from(pivot).stream().flatMap(Optional::stream).toList();
    }

    /** The best curve from a place in each picture, where there is one; looked for once. */
    private List<Optional<Polyline>> from(Point pivot) {
        return seenFrom.computeIfAbsent(
                pivot,
                p -> scouts.parallelStream()
                        .map(scout -> Optional.ofNullable(curve(scout, p)))
                        .toList());
    }

    private @Nullable Polyline curve(Glimpse scout, Point pivot) {
        BlankFitter fitter = new BlankFitter(height, pivot, Double.NaN);
        Plane plane = scout.difference().unpacked(pool);
        Fit fit = null;
        for (PolarSearch.Candidate c : search.find(plane, pivot, 1)) {
            fit = underground(c.curve()) ? null : fitter.fit(plane, c.curve(), 14, 9, 6);
        }
        pool.giveBack(plane);
        return fit == null ? null : fit.line();
    }

    /** Whether a curve leads so steeply down that a rod held at chest height would be in the ground: a leg does. */
    static boolean underground(Polyline curve) {
        return curve.last().y() - curve.first().y() > STEEPEST_DOWN * curve.length();
    }
}
