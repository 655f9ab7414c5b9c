package bendline.trace;

import bendline.footage.Footage;
import bendline.footage.Frame;
import bendline.footage.LumaReader;
import bendline.geometry.Homography;
import bendline.geometry.Point;
import bendline.image.Area;
import bendline.image.Plane;
import bendline.image.PlanePool;
import bendline.scene.Backdrop;
import bendline.scene.Scene;
import bendline.trace.BlankFitter.Fit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.function.DoubleConsumer;
import java.util.function.IntPredicate;

/** Finds what may be the rod in each frame by itself: thin curves out of the pivot, fitted. Frames are looked at side by side. */
final class RodLooks {

    /** Frames held at once: enough for every processor to have some while memory stays small. */
    static final int BATCH = Math.min(16, 4 * Runtime.getRuntime().availableProcessors());

    /** Curves looked for in a frame, and how many of them are fitted. */
    private static final int CANDIDATES = 5;

    private static final int FITTED = 3;

    /** How far from a curve a fit looks in its first round, and in the next, pixels. */
    private static final double FIRST_PX = 14;

    private static final double NEXT_PX = 7;

    /** How far from the pivot the tip may be, in free lengths: the hands wander about the pivot. */
    private static final double REACH = 1.25;

    /** Where the search begins, shares of the picture's height: nearer to the pivot are hands. */
    private static final double HANDS = 0.055;

    /**
     * What was learnt of the rod from a few frames.
     *
     * @param near about where the hands are, pixels of the area
     * @param length how long it looks
     * @param area that it stays in, with its rig
     */
    record Rod(Point near, RodLength.Estimate length, Area area) {}

    private final Footage footage;
    private final Scene scene;
    private final int frames;
    private final DoubleConsumer progress;
    private final Rod rod;
    private final PolarSearch search;
    private final BlankFitter fitter;
    private final PlanePool pool = new PlanePool();

    /**
     * @param frames how many the clip has
     * @param heightPx the picture's
     * @param progress told the share of all work that is done
     */
    RodLooks(Footage footage, Scene scene, int frames, int heightPx, Rod rod, DoubleConsumer progress) {
        this.footage = footage;
        this.scene = scene;
        this.frames = frames;
        this.progress = progress;
        this.rod = rod;
        this.search = new PolarSearch(HANDS * heightPx, REACH * rod.length().freePx());
        this.fitter = new BlankFitter(heightPx, rod.near(), rod.length().freePx());
    }

    /** What the glimpses show, by frame. */
    SortedMap<Integer, Look> glimpsed() {
        SortedMap<Integer, Look> looks = new TreeMap<>();
        scene.glimpses().parallelStream()
                .map(g -> {
                    Plane plane = g.difference().unpacked(rod.area(), pool);
                    Look look = at(plane, g.seconds());
                    pool.giveBack(plane);
                    return Map.entry(g.frame(), look);
                })
                .forEachOrdered(e -> looks.put(e.getKey(), e.getValue()));
        return looks;
    }

    /**
     * What wanted frames show, by frame.
     *
     * @param store takes their differences
     * @param from share of all work before this
     * @param to share after it
     */
    SortedMap<Integer, Look> decoded(
            Backdrop whole, IntPredicate wanted, DifferenceStore store, double from, double to) {
        Backdrop backdrop = whole.cut(rod.area());
        SortedMap<Integer, Look> looks = new TreeMap<>();
        eachBatch(
                wanted,
                from,
                to,
                batch -> batch.parallelStream()
                        .map(frame -> {
                            Homography map = scene.motion().toReference().get(frame.index());
                            Plane plane = backdrop.difference(frame, map, rod.area(), pool);
                            Look look = at(plane, frame.seconds());
                            store.put(frame.index(), plane);
                            pool.giveBack(plane);
                            return Map.entry(frame.index(), look);
                        })
                        .forEachOrdered(e -> looks.put(e.getKey(), e.getValue())));
        return looks;
    }

    private Look at(Plane difference, double seconds) {
        List<Fit> fits = new ArrayList<>();
        for (PolarSearch.Candidate c : search.find(difference, rod.near(), CANDIDATES)) {
            boolean asked = fits.size() < FITTED && !Scouts.underground(c.curve());
            Fit fit = asked ? fitter.fit(difference, c.curve(), FIRST_PX, NEXT_PX) : null;
            if (fit != null && Regained.held(fit, rod.near(), rod.length())) {
                fits.add(fit);
            }
        }
        return new Look(seconds, fits, null);
    }

    /** Wanted frames a few at a time, so that they can be looked at side by side; none may be kept. */
    private void eachBatch(IntPredicate wanted, double from, double to, Consumer<List<Frame>> use) {
        List<Frame> batch = new ArrayList<>();
        try (LumaReader reader = footage.tinted()) {
            for (Frame frame = reader.next(wanted); frame != null; frame = reader.next(wanted)) {
                batch.add(frame);
                if (batch.size() == BATCH) {
                    use.accept(batch);
                    batch.forEach(reader::giveBack);
                    batch.clear();
                }
                progress.accept(from + (to - from) * (frame.index() + 1) / frames);
            }
        }
        if (!batch.isEmpty()) {
            use.accept(batch);
        }
    }
}
