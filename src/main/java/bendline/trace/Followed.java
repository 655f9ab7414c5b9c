package bendline.trace;

import bendline.footage.ClipInfo;
import bendline.geometry.Point;
import bendline.scene.CameraMotion;
import bendline.scene.Mark;
import bendline.scene.Mark.Part;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * What was followed without marks, and the difference pictures it was followed in, so that marks can be laid over it without
 * a second look at the clip.
 *
 * @param found one a frame, as found before tips were put right by the rod's length; coordinates that begin at {@code origin}
 * @param looks the same with tips put right
 * @param hands where a body's hand holds the rod, by frame, the same coordinates; empty where nobody was followed yet
 * @param rigs what may be the rig in each frame; null where no rod was found
 * @param length how long the rod looks; null where none was found
 * @param paint of the tip
 * @param near about where the hands are
 * @param origin top left of the part of the reference picture that was looked at
 * @param store the difference pictures; null where no rod was found
 * @param trouble why no rod was found, or null
 */
record Followed(
        ClipInfo info,
        CameraMotion motion,
        List<Look> found,
        List<Look> looks,
        Map<Integer, Point> hands,
        @Nullable RigFinder rigs,
        RodLength.@Nullable Estimate length,
        Paint paint,
        Point near,
        Point origin,
        @Nullable DifferenceStore store,
        @Nullable String trouble)
        implements AutoCloseable {

    /** Tips that are put right show the length better. */
    private static final int ROUNDS = 2;

    /** A rod that, drawn on, passes the hand farther off than this is another thing, free lengths. How much of its tip is cut is no matter. */
    private static final double IN_HAND = 0.15;

    private static final int DRAWN_POINTS = 12;

    /** No rod was found. */
    static Followed nothing(ClipInfo info, CameraMotion motion, String trouble) {
        Point none = new Point(0, 0);
        return new Followed(
                info, motion, List.of(), List.of(), Map.of(), null, null, Paint.UNKNOWN, none, none, null, trouble);
    }

    /** Looks with tips put right by the rod's length and the hands' way. */
    static List<Look> putRight(List<Look> found, Point near, RodLength.Estimate length, Map<Integer, Point> hands) {
        return TipAnchor.steadied(Kinks.removed(HiddenTips.told(found, near, length, hands), length), length);
    }

    /** Of each frame's curves one that the hand there can hold, where there is one: hands of a fast stroke are known less well. */
    private List<Look> heldBy(Map<Integer, Point> hands, RodLength.Estimate length) {
        List<Look> out = new ArrayList<>(found);
        hands.forEach((t, hand) -> {
            Look look = found.get(t);
            BlankFitter.Fit chosen = look.chosen();
            if (chosen != null && !holds(hand, chosen, length)) {
                look.choices().stream()
                        .filter(f -> Confidence.sure(f) && holds(hand, f, length))
                        .findFirst()
                        .ifPresent(other -> out.set(t, look.with(other)));
            }
        });
        return out;
    }

    /** Where nothing was found that the hand can hold, it is looked for from the hand. */
    private List<Look> searched(List<Look> looks, Map<Integer, Point> hands, RodLength.Estimate length) {
        List<Integer> asked = hands.keySet().stream()
                .filter(t -> {
                    BlankFitter.Fit chosen = looks.get(t).chosen();
                    return chosen == null || !holds(hands.get(t), chosen, length);
                })
                .toList();
        return new HandSearch(Objects.requireNonNull(store)::get, info.height(), length, paint)
                .searched(looks, asked, hands);
    }

    private Regained regained(RodLength.Estimate rod) {
        BlankFitter fitter = new BlankFitter(info.height(), near, rod.freePx()).painted(paint);
        return new Regained(Objects.requireNonNull(store)::get, fitter, near, rod);
    }

    /** Whether a hand holds the rod that a curve shows; one that shows the tip's paint is the rod, wherever the hand is thought to be. */
    private static boolean holds(Point hand, BlankFitter.Fit fit, RodLength.Estimate length) {
        if (fit.faint().paint().told()) {
            return true;
        }
        double free = length.along(fit.line());
        return ToTheHand.drawn(fit.line(), free, DRAWN_POINTS).distanceTo(hand) < IN_HAND * free;
    }

    /** The same with the rod as long as the hands on it say, tips put right by that; itself where they do not tell. */
    Followed held(List<Grasp> grasps) {
        Followed now = this;
        for (int round = 0; round < ROUNDS && trouble == null; round++) {
            RodLength.Estimate told = HeldLength.of(now.trace(List.of()), grasps);
            if (told == null) {
                return now;
            }
            Map<Integer, Point> hands = HandPath.of(OtherFist.without(grasps, found, told, origin), found, origin);
            List<Look> right =
                    regained(told).filled(putRight(searched(heldBy(hands, told), hands, told), near, told, hands));
            right = SmoothSwing.steadied(right, told);
            now = new Followed(info, motion, found, right, hands, rigs, told, paint, near, origin, store, trouble);
        }
        return now;
    }

    /** The trace with marks obeyed. */
    Trace trace(List<Mark> marks) {
        if (trouble != null) {
            return untraced(info, motion, trouble);
        }
        RodLength.Estimate rod = Objects.requireNonNull(length);
        DifferenceStore planes = Objects.requireNonNull(store);
        Map<Integer, Pin> pins = Pin.of(marks, info, motion, origin);
        BlankFitter fitter = new BlankFitter(info.height(), near, rod.freePx()).painted(paint);
        List<Look> corrected = pins.isEmpty() ? looks : new Corrector(planes::get, fitter, rod).corrected(looks, pins);
        List<Tracked> chosen = Objects.requireNonNull(rigs)
                .choose(corrected, pins, new RigAgain(planes::get, planes.width(), planes.height(), rod.freePx()));
        Trace trace = new TraceBuilder(info, motion, rod, origin)
                .heldIn(hands.keySet())
                .build(corrected, chosen);
        return obeyed(trace, corrected, pins, origin);
    }

    /** The trace with what the marks say put in word for word. */
    static Trace obeyed(Trace trace, List<Look> looks, Map<Integer, Pin> pins, Point origin) {
        List<FrameTrace> frames = new ArrayList<>(trace.frames());
        pins.forEach((t, pin) -> frames.set(t, obeyed(frames.get(t), looks.get(t), pin, origin)));
        return trace.with(frames);
    }

    private static FrameTrace obeyed(FrameTrace frame, Look look, Pin pin, Point origin) {
        BlankFitter.Fit fit = pin.placesRod() ? look.chosen() : null;
        return new FrameTrace(
                frame.frame(),
                frame.seconds(),
                told(frame.grip(), pin.grip(), pin.hides(Part.GRIP), origin),
                told(frame.tip(), pin.tip(), pin.hides(Part.TIP), origin),
                told(frame.rig(), pin.rig(), pin.hides(Part.RIG), origin),
                fit == null ? frame.blank() : fit.line().map(origin::plus),
                frame.buttAngleSd(),
                pin.tip() == null ? frame.acrossSdPx() : Pin.SD_PX);
    }

    private static Tracked told(Tracked followed, @Nullable Point place, boolean hidden, Point origin) {
        if (place != null) {
            return Tracked.seen(place.plus(origin), Pin.SD_PX);
        }
        return hidden ? Tracked.notSeen(followed.position(), "you marked it as hidden") : followed;
    }

    /** A trace in which no rod was found. */
    static Trace untraced(ClipInfo info, CameraMotion motion, String trouble) {
        List<FrameTrace> frames = new ArrayList<>();
        Tracked none = Tracked.notSeen(null, "no rod was found in the clip");
        for (int i = 0; i < info.frames(); i++) {
            frames.add(new FrameTrace(i, info.times().get(i), none, none, none, null, Double.NaN));
        }
        return new Trace(info.width(), info.height(), frames, motion, Double.NaN, Double.NaN, trouble);
    }

    @Override
    public void close() {
        if (store != null) {
            store.close();
        }
    }
}
