package bendline.trace;

import bendline.footage.ClipInfo;
import bendline.footage.Footage;
import bendline.geometry.Point;
import bendline.image.Area;
import bendline.image.Plane;
import bendline.image.PlanePool;
import bendline.scene.Backdrop;
import bendline.scene.Cover;
import bendline.scene.Glimpse;
import bendline.scene.Scene;
import bendline.scene.Setup;
import bendline.trace.BlankFitter.Fit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.function.DoubleConsumer;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** Follows grip, blank, tip and rig through a clip; see the package description for how. */
public final class RodTracker {

    /** Share of the frames that must show a blank of one length before a rod is believed in. */
    private static final double ENOUGH_FRAMES = 0.12;
    /** Share of the scouted curves that must be of one length. */
    private static final double ENOUGH_AGREEMENT = 0.45;
    /** How far from the pivot the rig is looked for, in visible lengths. */
    private static final double RIG_REACH = 1.6;

    /** Frames a second of the clip, and in all, that are looked at before it is decided whether a better background is needed. */
    private static final double FIRST_LOOKS_PER_SECOND = 20;

    private static final int FEWEST_FIRST_LOOKS = 60;

    /**
     * Share of these that will do where they are there anyway. With half or two thirds of them three clips were followed as with all, with a
     * sixth the background of a long one was worse.
     */
    private static final double DENSE = 0.4;

    /** Share of the work that a survey is, where it is done on the way. */
    private static final double SURVEYED = 0.25;

    /** Pictures from which is learnt where the rod is held and how long it is. */
    private static final int MOST_SCOUTS = 32;

    private final Footage footage;
    private final ClipInfo info;
    private final Scene scene;
    private final Setup setup;
    private final DoubleConsumer progress;

    private RodTracker(Footage footage, ClipInfo info, Scene scene, Setup setup, DoubleConsumer progress) {
        this.footage = footage;
        this.info = info;
        this.scene = scene;
        this.setup = setup;
        this.progress = progress;
    }

    /**
     * Follows the rod.
     *
     * @param progress told the share of the work that is done, 0 to 1
     * @return a trace whose {@link Trace#trouble()} says why, where no rod was found
     */
    public static Trace follow(Footage footage, ClipInfo info, Setup setup, DoubleConsumer progress) {
        Scene scene = Scene.survey(footage, share -> progress.accept(SURVEYED * share));
        DoubleConsumer rest = share -> progress.accept(SURVEYED + (1 - SURVEYED) * share);
        try (TraceSession session = TraceSession.open(footage, info, scene, setup, rest, sight -> {})) {
            return session.trace();
        }
    }

    /**
     * Follows the rod without looking at marks.
     *
     * @param setup whose lengths are used where they are told
     * @param first told once, before the rod is followed, what a few pictures show
     * @return to be closed by the caller
     */
    static Followed follow(
            Footage footage,
            ClipInfo info,
            Scene scene,
            Setup setup,
            DoubleConsumer progress,
            Consumer<FirstSight> first) {
        return new RodTracker(footage, info, scene, setup, progress).follow(first);
    }

    private Followed follow(Consumer<FirstSight> first) {
        Scouts scouts = scouts();
        List<Point> pivots = scouts.pivots();
        Hands hands = pivots.isEmpty() ? null : scouts.hands(pivots);
        first.accept(scouts.sight(scene.motion(), hands));
        if (pivots.isEmpty()) {
            return nothing("nothing thin moves about a fixed point; film side-on with the whole rod in view");
        }
        if (hands == null || hands.curves().size() < ENOUGH_FRAMES * scouts.size()) {
            return nothing("no rod could be told from its surroundings; film it against the sky or plain ground");
        }
        Point pivot = hands.pivot();
        RodLength.Estimate length = hands.length();
        if (length.agreement() < ENOUGH_AGREEMENT) {
            return nothing(
                    "what moves has no constant length, so it is not a rod in full view; film the whole rod side-on");
        }
        Area area = around(pivot, RIG_REACH * length.freePx());
        Point origin = new Point(area.left(), area.top());
        Point near = pivot.minus(origin);
        RodLooks look = new RodLooks(
                footage, scene, info.frames(), info.height(), new RodLooks.Rod(near, length, area), progress);
        DifferenceStore store = new DifferenceStore();
        try {
            int step = step(info);
            boolean dense = scene.glimpses().size() * step >= DENSE * info.frames();
            SortedMap<Integer, Look> seen = new TreeMap<>();
            if (!dense) {
                seen.putAll(look.decoded(scene.backdrop(), t -> t % step == 0, store, 0, 0.1));
            }
            List<Cover> covers = covers(dense ? look.glimpsed() : seen, length, origin);
            progress.accept(0.1);
            if (covers.isEmpty()) {
                Set<Integer> before = Set.copyOf(seen.keySet());
                seen.putAll(look.decoded(scene.backdrop(), t -> !before.contains(t), store, 0.1, 0.5));
                covers = covers(seen, length, origin);
            }
            if (!covers.isEmpty()) {
                Backdrop behind = scene.behind(footage, info, covers, share -> progress.accept(0.5 + 0.05 * share));
                seen = look.decoded(behind, t -> true, store, 0.55, 0.85);
            }
            List<Look> looks = chosen(List.copyOf(seen.values()), 1, length);
            Paint paint = Paint.of(looks, length);
            RodLength.Estimate rod = paint.with(length, looks);
            return followed(paint.shown(looks), near, rod, paint, origin, store);
        } catch (RuntimeException e) {
            store.close();
            throw e;
        }
    }

    /** Every so manieth frame is enough to tell whether a better background is needed, and what it is made of. */
    static int step(ClipInfo info) {
        int bySeconds = (int) Math.round(1 / (FIRST_LOOKS_PER_SECOND * info.medianStepSeconds()));
        return Math.max(1, Math.min(bySeconds, info.frames() / FEWEST_FIRST_LOOKS));
    }

    /** What a better background is made of, where one is needed and there is enough. */
    private List<Cover> covers(SortedMap<Integer, Look> looks, RodLength.Estimate length, Point origin) {
        double step = (double) info.frames() / looks.size();
        List<Look> first = chosen(List.copyOf(looks.values()), step, length);
        List<Integer> frames = List.copyOf(looks.keySet());
        return Uncovered.needed(first) ? Uncovered.covers(first, frames, length, origin) : List.of();
    }

    private Followed followed(
            List<Look> found, Point near, RodLength.Estimate length, Paint paint, Point origin, DifferenceStore store) {
        long shown = found.stream().filter(l -> l.chosen() != null).count();
        if (shown < Math.max(8, ENOUGH_FRAMES * found.size())) {
            store.close();
            return nothing("the rod shows in too few frames to follow it; film it against the sky or plain ground");
        }
        RigFinder rigs = new RigFinder(length.freePx(), setup.dropShare());
        List<Look> looks = HiddenTips.told(found, near, length);
        looks = Kinks.removed(TipAnchor.steadied(looks, length), length);
        BlankFitter fitter = new BlankFitter(info.height(), near, length.freePx()).painted(paint);
        Regained regained = new Regained(store::get, fitter, near, length);
        List<Look> sure = Confidence.withoutOutliers(lookAgain(looks, regained, store, rigs));
        List<Look> raw = new ArrayList<>();
        for (int t = 0; t < found.size(); t++) {
            Fit fit = sure.get(t).chosen();
            raw.add(fit != null && fit == looks.get(t).chosen() ? found.get(t) : sure.get(t));
        }
        looks = regained.filled(Followed.putRight(sure, near, length, Map.of()));
        looks = SmoothSwing.steadied(looks, length);
        if (Sway.only(looks, length.freePx(), Math.min(info.width(), info.height()))) {
            store.close();
            return nothing("what moves is short and only sways, as a reed does; film the whole rod, from nearer");
        }
        return new Followed(info, scene.motion(), raw, looks, Map.of(), rigs, length, paint, near, origin, store, null);
    }

    private Followed nothing(String trouble) {
        return Followed.nothing(info, scene.motion(), trouble);
    }

    private Scouts scouts() {
        Scouts out = new Scouts(info.width(), info.height());
        List<Glimpse> glimpses = scene.glimpses();
        int n = Math.min(MOST_SCOUTS, glimpses.size());
        for (int k = 0; k < n; k++) {
            out.add(glimpses.get((int) ((k + 0.5) * glimpses.size() / n)));
        }
        return out;
    }

    private Area around(Point pivot, double reach) {
        int left = even(Math.max(0, pivot.x() - reach));
        int top = even(Math.max(0, pivot.y() - reach));
        int right = even(Math.min(info.width(), pivot.x() + reach));
        int bottom = even(Math.min(info.height(), pivot.y() + reach));
        return new Area(left, top, right - left, bottom - top);
    }

    /** Colour planes have half the size, so areas are cut at even pixels. */
    private static int even(double x) {
        return 2 * (int) (x / 2);
    }

    /** @param step frames from one look to the next, which the rod may have moved on by */
    private List<Look> chosen(List<Look> looks, double step, RodLength.Estimate length) {
        List<List<Fit>> choices = looks.stream().map(Look::choices).toList();
        @Nullable Fit[] path = new PathChooser(choices, step * info.height(), length.freePx()).choose(choices);
        List<Look> out = new ArrayList<>();
        for (int i = 0; i < looks.size(); i++) {
            out.add(looks.get(i).with(Confidence.sure(path[i]) ? path[i] : null));
        }
        return out;
    }

    /** Frames that failed or stick out are tried again from where their neighbours say the rod should be. */
    private List<Look> lookAgain(List<Look> looks, Regained regained, DifferenceStore store, RigFinder rigs) {
        List<Look> steady = Confidence.withoutOutliers(looks);
        PlanePool pool = new PlanePool();
        List<Look> out = new ArrayList<>();
        for (int from = 0; from < steady.size(); from += RodLooks.BATCH) {
            int to = Math.min(steady.size(), from + RodLooks.BATCH);
            IntStream.range(from, to)
                    .parallel()
                    .mapToObj(t -> {
                        Look look = steady.get(t);
                        Look again = look.chosen() == null ? look.with(regained.at(t, steady)) : look;
                        Plane plane = store.get(t, pool);
                        List<Blob> things = rigs.things(plane, again.chosen());
                        pool.giveBack(plane);
                        return Map.entry(again, things);
                    })
                    .forEachOrdered(e -> {
                        out.add(e.getKey());
                        rigs.add(e.getValue());
                    });
            progress.accept(0.85 + 0.15 * to / steady.size());
        }
        return out;
    }
}
