package bendline.trace;

import bendline.footage.ClipInfo;
import bendline.footage.Footage;
import bendline.footage.Frame;
import bendline.footage.LumaReader;
import bendline.geometry.Point;
import bendline.image.Plane;
import bendline.image.Warp;
import bendline.scene.CameraMotion;
import bendline.scene.Scene;
import bendline.scene.Setup;
import bendline.trace.BlankFitter.Fit;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.DoubleConsumer;
import org.jspecify.annotations.Nullable;

/** Follows grip, blank, tip and rig through a clip; see the package description for how. */
public final class RodTracker {

    /** Frames that are asked where the moving lines meet. */
    private static final int PIVOT_FRAMES = 40;
    /** Curves looked for in a frame, and how many of them are fitted. */
    private static final int CANDIDATES = 6;

    private static final int FITTED = 3;
    /** Share of the frames that must show a blank of one length before a rod is believed in. */
    private static final double ENOUGH_FRAMES = 0.12;

    private final Footage footage;
    private final ClipInfo info;
    private final Setup setup;
    private final Scene scene;
    private final DoubleConsumer progress;

    private RodTracker(Footage footage, ClipInfo info, Setup setup, Scene scene, DoubleConsumer progress) {
        this.footage = footage;
        this.info = info;
        this.setup = setup;
        this.scene = scene;
        this.progress = progress;
    }

    /**
     * Follows the rod.
     *
     * @param progress told the share of the work that is done, 0 to 1
     * @return a trace whose {@link Trace#trouble()} says why, where no rod was found
     */
    public static Trace follow(Footage footage, ClipInfo info, Setup setup, DoubleConsumer progress) {
        if (info.frames() < 8) {
            return nothing(info, still(info), "the clip has only " + info.frames() + " frames; film the whole cast");
        }
        Scene scene = Scene.survey(footage, info, share -> progress.accept(0.25 * share));
        return new RodTracker(footage, info, setup, scene, progress).follow();
    }

    private Trace follow() {
        Point pivot = pivot();
        if (pivot == null) {
            return nothing(info, scene.motion(), "nothing thin moves about a fixed point; film side-on with the whole rod in view");
        }
        List<Look> looks = firstLook(pivot);
        List<Double> lengths = new ArrayList<>();
        for (Look look : looks) {
            if (look.chosen() != null) {
                lengths.add(look.chosen().line().length());
            }
        }
        if (lengths.size() < ENOUGH_FRAMES * looks.size()) {
            return nothing(info, scene.motion(), "no rod could be told from its surroundings; film it against the sky or plain ground");
        }
        RodLength.Estimate length = RodLength.of(lengths);
        looks = secondLook(looks, pivot, length.px());
        List<Fit> sure = looks.stream().map(Look::chosen).filter(f -> f != null).toList();
        if (sure.size() < ENOUGH_FRAMES * looks.size()) {
            return nothing(info, scene.motion(), "what moves has no constant length, so it is not a rod in full view; film the whole rod side-on");
        }
        GripFinder.FreeLength free = freeLength(sure, length.px());
        RigFinder rigs = new RigFinder(info.height(), length.px());
        looks = thirdLook(looks, pivot, length.px(), rigs);
        return new TraceBuilder(info, scene.motion(), length, free).build(looks, rigs.choose(looks));
    }

    private GripFinder.FreeLength freeLength(List<Fit> sure, double lengthPx) {
        if (setup.rodLengthM() != null && setup.freeLengthM() != null) {
            double px = lengthPx * setup.freeLengthM() / setup.rodLengthM();
            return new GripFinder.FreeLength(px, 0.015 * lengthPx, true);
        }
        return GripFinder.of(sure, lengthPx);
    }

    private @Nullable Point pivot() {
        PivotFinder finder = new PivotFinder(info.width(), info.height(), 0.5 * info.height());
        int step = Math.max(1, info.frames() / PIVOT_FRAMES);
        eachFrame(0.25, 0.3, (frame, difference) -> {
            if (frame.index() % step == 0) {
                finder.add(difference.get());
            }
        });
        List<Point> best = finder.best(1);
        return best.isEmpty() ? null : best.get(0);
    }

    private List<Look> firstLook(Point pivot) {
        double reach = info.width() >= info.height() ? 0.8 * info.height() : 0.6 * info.height();
        PolarSearch search = new PolarSearch(0.055 * info.height(), reach);
        BlankFitter fitter = new BlankFitter(info.height(), pivot, Double.NaN);
        List<Look> looks = new ArrayList<>();
        eachFrame(0.3, 0.6, (frame, difference) -> {
            Plane plane = difference.get();
            List<Fit> fits = new ArrayList<>();
            for (PolarSearch.Candidate c : search.find(plane, pivot, CANDIDATES)) {
                Fit fit = fits.size() < FITTED ? fitter.fit(plane, c.curve()) : null;
                if (fit != null) {
                    fits.add(fit);
                }
            }
            looks.add(new Look(frame.seconds(), fits, null));
        });
        return chosen(looks);
    }

    private List<Look> chosen(List<Look> looks) {
        List<List<Fit>> choices = looks.stream().map(Look::choices).toList();
        @Nullable Fit[] path = new PathChooser(choices, info.height()).choose(choices);
        List<Look> out = new ArrayList<>();
        for (int i = 0; i < looks.size(); i++) {
            out.add(looks.get(i).with(path[i]));
        }
        return out;
    }

    /** Again with the rod's length known: gaps in the evidence no longer shorten it. */
    private List<Look> secondLook(List<Look> looks, Point pivot, double lengthPx) {
        BlankFitter fitter = new BlankFitter(info.height(), pivot, lengthPx);
        List<Look> again = new ArrayList<>();
        eachFrame(0.6, 0.8, (frame, difference) -> {
            Plane plane = difference.get();
            List<Fit> fits = new ArrayList<>();
            for (Fit first : looks.get(frame.index()).choices()) {
                Fit fit = fitter.fit(plane, first.line(), 9, 6);
                if (fit != null) {
                    fits.add(fit);
                }
            }
            again.add(new Look(frame.seconds(), fits, null));
        });
        return chosen(again).stream()
                .map(l -> Confidence.sure(l.chosen()) ? l : l.with(null))
                .toList();
    }

    /** Frames that failed or stick out are tried again from where their neighbours say the rod should be. */
    private List<Look> thirdLook(List<Look> looks, Point pivot, double lengthPx, RigFinder rigs) {
        BlankFitter fitter = new BlankFitter(info.height(), pivot, lengthPx);
        List<Look> steady = Confidence.withoutOutliers(looks);
        List<Look> out = new ArrayList<>();
        eachFrame(0.8, 1, (frame, difference) -> {
            Plane plane = difference.get();
            int t = frame.index();
            Look look = steady.get(t);
            if (look.chosen() == null) {
                Neighbours.Prediction p = Neighbours.at(t, steady);
                if (p != null) {
                    double reach = Math.min(40, 10 + 0.5 * p.stepPx());
                    Fit fit = fitter.fit(plane, p.line(), reach, 8, 6);
                    boolean near = fit != null
                            && PathChooser.displacement(fit.line(), p.line()) < Confidence.tolerance(p.stepPx());
                    look = look.with(near && Confidence.usable(fit) ? fit : null);
                }
            }
            rigs.add(plane, look.chosen());
            out.add(look);
        });
        return out;
    }

    /** Runs through the clip, handing out each frame with its difference from the background, computed if asked for. */
    private void eachFrame(double from, double to, BiConsumer<Frame, java.util.function.Supplier<Plane>> use) {
        try (LumaReader reader = footage.lumas()) {
            for (Frame f = reader.next(); f != null; f = reader.next()) {
                Frame frame = f;
                use.accept(frame, () -> scene.background()
                        .difference(Warp.apply(
                                frame.luma(), scene.motion().toReference().get(frame.index()))));
                progress.accept(from + (to - from) * (f.index() + 1) / info.frames());
            }
        }
    }

    private static CameraMotion still(ClipInfo info) {
        return new CameraMotion(
                info.times().stream().map(t -> bendline.geometry.Homography.IDENTITY).toList(), 0, false);
    }

    private static Trace nothing(ClipInfo info, CameraMotion motion, String trouble) {
        List<FrameTrace> frames = new ArrayList<>();
        Tracked none = Tracked.notSeen(null, "no rod was found in the clip");
        for (int i = 0; i < info.frames(); i++) {
            frames.add(new FrameTrace(i, info.times().get(i), none, none, none, null, Double.NaN));
        }
        return new Trace(info.width(), info.height(), frames, motion, Double.NaN, Double.NaN, trouble);
    }
}
