package bendline.benchmark;

import bendline.trace.FrameTrace;
import bendline.trace.Trace;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;

/**
 * Traces against the truth, one clip or several pooled frame by frame. A tip counts as wrong beyond {@link #WRONG_PX}.
 *
 * @param frames every frame of every clip
 */
public record TraceScore(List<FrameScore> frames) {

    /** A point further off than this is wrong, pixels. */
    public static final double WRONG_PX = 20;

    /** Copies the list. */
    public TraceScore {
        frames = List.copyOf(frames);
    }

    /**
     * @throws IllegalArgumentException if clip and truth do not belong together
     */
    public static TraceScore of(Trace trace, TruthClip truth) {
        List<FrameScore> out = new ArrayList<>();
        for (FrameTrace f : trace.frames()) {
            out.add(FrameScore.of(
                    trace, f.frame(), truth.at(f.seconds()), truth.frames().get(0)));
        }
        return new TraceScore(out);
    }

    /** Several clips pooled. */
    public static TraceScore pooled(List<TraceScore> scores) {
        return new TraceScore(scores.stream().flatMap(s -> s.frames().stream()).toList());
    }

    /** Tip error where the tip is in view and called seen. */
    public Spread tip() {
        return spread(f -> f.truth().tipInView() && f.traced().tip().seen(), FrameScore::tipError);
    }

    /** Of the frames in which the tip is in view: called seen. */
    public Tally tipSeen() {
        return tally(f -> f.truth().tipInView(), f -> f.traced().tip().seen());
    }

    /** Of the frames in which the tip is in view: not called seen, or wrong. */
    public Tally tipLostOrWrong() {
        return tally(f -> f.truth().tipInView(), f -> !f.traced().tip().seen() || f.tipError() > WRONG_PX);
    }

    /** Of the frames in which the tip is in view and called seen: wrong. */
    public Tally tipWrongAmongSeen() {
        return tally(f -> f.truth().tipInView() && f.traced().tip().seen(), f -> f.tipError() > WRONG_PX);
    }

    /** Of the frames in which the tip is out of view: called seen all the same. */
    public Tally tipInvented() {
        return tally(f -> !f.truth().tipInView(), f -> f.traced().tip().seen());
    }

    /** Of the tips in view and called seen: within their stated radius. */
    public Tally tipWithinSd() {
        return tally(
                f -> f.truth().tipInView() && f.traced().tip().seen(),
                f -> f.tipError() <= f.traced().tip().sdPx());
    }

    /** Rig error before the release, where the rig is in view and called seen. */
    public Spread rig() {
        return spread(f -> rigBefore(f) && f.traced().rig().seen(), FrameScore::rigError);
    }

    /** Of the frames before the release with the rig in view: called seen. */
    public Tally rigSeenBefore() {
        return tally(TraceScore::rigBefore, f -> f.traced().rig().seen());
    }

    /** Of all frames with the rig in view: called seen. */
    public Tally rigSeen() {
        return tally(f -> f.truth().rigInView(), f -> f.traced().rig().seen());
    }

    /** Of the frames in which the rig is out of the picture: called seen all the same. */
    public Tally rigInvented() {
        return tally(f -> !f.truth().rigInView(), f -> f.traced().rig().seen());
    }

    /** Of the rigs in view before the release and called seen: wrong. */
    public Tally rigWrongAmongSeen() {
        return tally(f -> rigBefore(f) && f.traced().rig().seen(), f -> f.rigError() > WRONG_PX);
    }

    /** Of the rigs in view and called seen: within their stated radius. */
    public Tally rigWithinSd() {
        return tally(
                f -> f.truth().rigInView() && f.traced().rig().seen(),
                f -> f.rigError() <= f.traced().rig().sdPx());
    }

    /** Mean distance between the blanks, one value a frame, where the blank was traced and the tip is in view. */
    public Spread blank() {
        return spread(f -> f.truth().tipInView(), FrameScore::blankDistance);
    }

    /** Of the frames with the tip in view: blank traced. */
    public Tally blankTraced() {
        return tally(f -> f.truth().tipInView(), f -> f.traced().blank() != null);
    }

    /** Error of the upper hand, seen or guessed. */
    public Spread grip() {
        return spread(f -> true, FrameScore::gripError);
    }

    /** Absolute error of the chord ratio where the tip is in view and called seen. */
    public Spread compression() {
        return spread(f -> f.truth().tipInView() && f.traced().tip().seen(), f -> Math.abs(f.chordError()));
    }

    /** Absolute error of the blank's direction at the grip in the picture, degrees. */
    public Spread butt() {
        return spread(f -> true, f -> Math.abs(f.buttErrorDeg()));
    }

    /** Of the traced directions at the grip: within their stated uncertainty. */
    public Tally buttWithinSd() {
        return tally(
                f -> !Double.isNaN(f.buttErrorDeg()),
                f -> Math.abs(f.buttErrorDeg()) <= Math.toDegrees(f.traced().buttAngleSd()));
    }

    /** Error of the camera motion. */
    public Spread camera() {
        return spread(f -> true, FrameScore::cameraError);
    }

    private static boolean rigBefore(FrameScore f) {
        return f.truth().rigInView() && f.truth().rigHeld();
    }

    private Spread spread(Predicate<FrameScore> which, ToDoubleFunction<FrameScore> error) {
        return new Spread(frames.stream().filter(which).mapToDouble(error).toArray());
    }

    private Tally tally(Predicate<FrameScore> among, Predicate<FrameScore> hit) {
        Tally out = Tally.NONE;
        for (FrameScore f : frames) {
            if (among.test(f)) {
                out = out.plus(hit.test(f));
            }
        }
        return out;
    }

    /** Everything in one line. */
    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "tip med %.2f p95 %.2f lost/wrong %.1f%% seen %.1f%% wrong-of-seen %.1f%% invented %.1f%% in-sd %.0f%%"
                        + " | blank mean %.2f med %.2f p95 %.2f | rig med %.2f p95 %.2f seen-before %.1f%% seen %.1f%%"
                        + " wrong %.1f%% in-sd %.0f%% | grip med %.1f | chord med %.4f p95 %.4f"
                        + " | butt med %.2f° p95 %.2f° in-sd %.0f%% | camera med %.2f p95 %.2f",
                tip().median(),
                tip().p95(),
                percent(tipLostOrWrong()),
                percent(tipSeen()),
                percent(tipWrongAmongSeen()),
                percent(tipInvented()),
                percent(tipWithinSd()),
                blank().mean(),
                blank().median(),
                blank().p95(),
                rig().median(),
                rig().p95(),
                percent(rigSeenBefore()),
                percent(rigSeen()),
                percent(rigWrongAmongSeen()),
                percent(rigWithinSd()),
                grip().median(),
                compression().median(),
                compression().p95(),
                butt().median(),
                butt().p95(),
                percent(buttWithinSd()),
                camera().median(),
                camera().p95());
    }

    private static double percent(Tally tally) {
        return 100 * tally.share();
    }
}
