package bendline.analysis;

import bendline.footage.ClipInfo;
import bendline.stroke.Stroke;
import bendline.trace.FrameTrace;
import bendline.trace.Trace;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** Says what a clip is good for, from how it was filmed and from how well the rod could be followed. */
final class ClipAppraiser {

    /** Standard deviation of a moment that is only known to lie within one step: a uniform distribution, 1/√12. */
    static final double STEP_SD = 1 / Math.sqrt(12);

    /** A shift of the picture centre above this counts as a moving phone, pixels. */
    static final double STILL_PX = 1;

    /** Below this rate the forward stroke, a few tenths of a second, has too few frames to be timed finely. */
    private static final double WANTED_RATE_HZ = 100;

    /** Below this length the blank's curve is only a few pixels deep when it bends by a tenth. */
    private static final double WANTED_BLANK_PX = 250;

    /** Below this share of frames gaps fall into the stroke. */
    private static final double WANTED_SHARE = 0.9;

    Quality appraise(ClipInfo info, Trace trace, List<Stroke> strokes) {
        List<FrameTrace> frames = framesOfInterest(trace, strokes);
        double factor = info.slowMotion().factor();
        double step = info.medianStepSeconds();
        Quality bare = new Quality(
                step > 0 ? factor / step : Double.NaN,
                step > 0 ? step * STEP_SD : Double.NaN,
                trace.motion().trusted() && trace.motion().largestShiftPx() > STILL_PX,
                trace.motion().largestShiftPx(),
                trace.motion().trusted(),
                frames.size(),
                share(frames.stream().filter(f -> f.blank() != null).count(), frames),
                share(frames.stream().filter(f -> f.tip().seen()).count(), frames),
                share(frames.stream().filter(f -> f.rig().seen()).count(), frames),
                medianTipSd(frames),
                List.of(),
                List.of());
        return new Quality(
                bare.captureRateHz(),
                bare.timingSeconds(),
                bare.cameraMoved(),
                bare.largestShiftPx(),
                bare.cameraTrusted(),
                bare.framesLookedAt(),
                bare.blankSeenShare(),
                bare.tipSeenShare(),
                bare.rigSeenShare(),
                bare.tipSdPx(),
                says(bare, info, trace, strokes),
                advice(bare, trace, strokes));
    }

    private static List<FrameTrace> framesOfInterest(Trace trace, List<Stroke> strokes) {
        if (strokes.isEmpty()) {
            return trace.frames();
        }
        return trace.frames().stream()
                .filter(f -> strokes.stream().anyMatch(s -> f.frame() >= s.firstFrame() && f.frame() <= s.lastFrame()))
                .toList();
    }

    private static double share(long part, List<FrameTrace> all) {
        return all.isEmpty() ? 0 : (double) part / all.size();
    }

    private static double medianTipSd(List<FrameTrace> frames) {
        double[] sds = frames.stream()
                .filter(f -> f.tip().seen())
                .mapToDouble(f -> f.tip().sdPx())
                .toArray();
        Arrays.sort(sds);
        return sds.length == 0 ? Double.NaN : sds[sds.length / 2];
    }

    private static List<String> says(Quality q, ClipInfo info, Trace trace, List<Stroke> strokes) {
        List<String> out = new ArrayList<>();
        if (strokes.isEmpty()) {
            out.add(noCast(trace));
        }
        out.add(timing(q, info));
        out.add(camera(q));
        if (trace.foundRod()) {
            out.add(followed(q, strokes.isEmpty()));
            out.add(words("From the hand to the tip the blank is %.0f px long in the picture.", trace.freeLengthPx()));
        }
        return out;
    }

    private static String noCast(Trace trace) {
        return trace.foundRod()
                ? "A rod was followed, but it is never swung back and then driven forward, so no cast is reported."
                : "No cast is reported: " + sentenceEnd(trace.trouble());
    }

    private static String sentenceEnd(String text) {
        return text.endsWith(".") ? text : text + ".";
    }

    private static String timing(Quality q, ClipInfo info) {
        if (Double.isNaN(q.captureRateHz())) {
            return "The clip has a single frame, so nothing in it can be timed.";
        }
        double factor = info.slowMotion().factor();
        double realMs = 1000 / q.captureRateHz();
        String played = factor == 1 ? "" : words(", played %.3g times slower than life", factor);
        return words(
                "Filmed at %.0f frames a second%s: one picture every %.1f ms, so a moment read off the frames is good to"
                        + " about ± %.1f ms. How long each picture was exposed is not in the file; blur counts as"
                        + " uncertainty of the tip.",
                q.captureRateHz(), played, realMs, realMs * STEP_SD);
    }

    private static String camera(Quality q) {
        if (!q.cameraTrusted()) {
            return "The background gave too little to tell whether the phone moved; if it did, angles and speeds carry that"
                    + " movement.";
        }
        return q.cameraMoved()
                ? words(
                        "The phone moved, by up to %.0f px; the movement was measured on the background and taken out.",
                        q.largestShiftPx())
                : "The phone stood still.";
    }

    private static String followed(Quality q, boolean wholeClip) {
        String accuracy = Double.isNaN(q.tipSdPx())
                ? ""
                : words(" Where the tip is seen it is good to about ± %.1f px.", q.tipSdPx());
        return words(
                "Of the %d frames of %s the blank was found in %s, the tip in %s and the rig in %s.%s",
                q.framesLookedAt(),
                wholeClip ? "the clip" : "the cast",
                percent(q.blankSeenShare()),
                percent(q.tipSeenShare()),
                percent(q.rigSeenShare()),
                accuracy);
    }

    private static List<String> advice(Quality q, Trace trace, List<Stroke> strokes) {
        List<String> out = new ArrayList<>();
        if (strokes.isEmpty()) {
            out.add(
                    "Film one whole cast from the side, square to the direction of the cast, from before the backswing until"
                            + " the rig is well on its way.");
            out.add(
                    "Leave room round the rod: the whole angler at the bottom, and at least half a rod length of sky above"
                            + " and behind.");
            out.add(
                    "If there is a cast in the clip, point the tool at the rod: click grip and tip on one frame, or give"
                            + " --mark-grip, --mark-tip and --at.");
        }
        if (q.captureRateHz() < WANTED_RATE_HZ) {
            out.add(
                    "Set the phone to 120 or 240 frames a second if it can: the forward stroke is over in a few tenths of"
                            + " a second.");
        }
        if (q.cameraMoved() || !q.cameraTrusted()) {
            out.add("Rest the phone on something that doesn't move: a tripod, a bank stick with a clamp, a bag.");
        }
        if (trace.foundRod() && trace.freeLengthPx() < WANTED_BLANK_PX) {
            out.add("Come nearer or film at a higher resolution: the rod is small in the picture.");
        }
        if (trace.foundRod() && q.tipSeenShare() < WANTED_SHARE) {
            out.add("Keep the tip in the picture all the way and choose a side with plain sky behind it.");
        }
        return out;
    }

    private static String percent(double share) {
        return words("%.0f %%", 100 * share);
    }

    private static String words(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
