package bendline.analysis;

import bendline.footage.ClipInfo;
import bendline.scene.Setup;
import bendline.stroke.Gravity;
import bendline.trace.FirstSight;
import bendline.trace.FirstSight.Sight;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * What a clip is good for, told before the long work begins, from its rate and from a few pictures.
 *
 * @param says one sentence each
 * @param advice what to change when filming next time, one sentence each; empty if nothing
 */
public record FirstLook(List<String> says, List<String> advice) {

    /** How fast the tip of a hard cast goes, m/s: what a rig needs that flies about 80 m. Common practice, no source. */
    private static final double TIP_SPEED = 30;

    /** How long a forward stroke takes, s; common practice, no source. */
    private static final double STROKE_SECONDS = 0.35;

    /** An exposure that phones use in bright light, s. */
    private static final double BRIGHT = 1.0 / 1000;

    /** Pictures of one stroke below which fine timing is lost. */
    private static final double FEW_PICTURES = 25;

    /**
     * How much longer on one side than on the other still counts as square: a rod of 3 m seen from 10 m, 30° off, is nearer on one
     * side by that; 20° make a tenth, and a few pictures err by nearly as much.
     */
    private static final double SQUARE = 0.15;

    private static final double MOSTLY = 0.6;

    /** Copies the lists. */
    public FirstLook {
        says = List.copyOf(says);
        advice = List.copyOf(advice);
    }

    static FirstLook of(ClipInfo info, FirstSight sight, Setup setup) {
        List<String> says = new ArrayList<>();
        List<String> advice = new ArrayList<>();
        timing(info, sight, setup, says, advice);
        camera(sight, says, advice);
        rod(sight, says, advice);
        square(sight, says, advice);
        return new FirstLook(says, advice);
    }

    private static void timing(ClipInfo info, FirstSight sight, Setup setup, List<String> says, List<String> advice) {
        double rate = info.slowMotion().factor() / info.medianStepSeconds();
        double pictures = rate * STROKE_SECONDS;
        String blur = "";
        if (!Double.isNaN(sight.freePx())) {
            Double free = setup.freeLengthM();
            double pxPerSecond = TIP_SPEED * sight.freePx() / (free == null ? Gravity.USUAL_FREE_M : free);
            blur = words(
                    " A tip at %.0f m/s smears over up to %.0f px in dull light and about %.0f px at 1/1000 s.",
                    TIP_SPEED, pxPerSecond / rate, pxPerSecond * Math.min(BRIGHT, 1 / rate));
        }
        says.add(words(
                "%d×%d, %.1f s, captured at %.0f pictures a second (%s): a forward stroke is about %.0f pictures, a moment is"
                        + " good to about ± %.0f ms.%s",
                info.width(),
                info.height(),
                info.durationSeconds(),
                rate,
                info.slowMotion().told() || info.slowMotion().factor() != 1
                        ? info.slowMotion().basis()
                        : "as played",
                pictures,
                1000 / rate * ClipAppraiser.STEP_SD,
                blur));
        if (pictures < FEW_PICTURES) {
            advice.add("Set the phone to 120 or 240 pictures a second.");
        }
    }

    private static void camera(FirstSight sight, List<String> says, List<String> advice) {
        if (!sight.motion().trusted()) {
            says.add("Whether the phone moved can't be told from this background.");
            advice.add("Put the phone on something that doesn't move, with something still in view behind the angler.");
        } else if (sight.motion().largestShiftPx() > ClipAppraiser.STILL_PX) {
            says.add(words(
                    "The phone moved by up to %.0f px; that is measured and taken out.",
                    sight.motion().largestShiftPx()));
            advice.add("Put the phone on something that doesn't move.");
        } else {
            says.add("The phone stood still.");
        }
    }

    private static void rod(FirstSight sight, List<String> says, List<String> advice) {
        long seen = sight.sights().stream().filter(Sight::rod).count();
        List<Sight> edge = sight.sights().stream().filter(Sight::atEdge).toList();
        if (Double.isNaN(sight.freePx()) || seen == 0) {
            says.add(words(
                    "In the %d pictures looked at no rod shows clearly.",
                    sight.sights().size()));
            advice.add(
                    "Film side-on against sky or plain ground with the whole rod in view; or mark grip and tip on one frame.");
            return;
        }
        says.add(words(
                "The rod shows in %d of %d pictures looked at, %.0f px from hand to tip%s.",
                seen,
                sight.sights().size(),
                sight.freePx(),
                edge.isEmpty()
                        ? ", and nowhere touches the edge"
                        : words(
                                ", and reaches the edge of the picture in %d of them, first at %.2f s",
                                edge.size(), edge.get(0).seconds())));
        if (!edge.isEmpty()) {
            advice.add("Stand farther back, or turn the phone, so that the tip stays in the picture all the way.");
        }
        if (seen < MOSTLY * sight.sights().size()) {
            advice.add("Choose a plainer background, or light from behind the phone: the rod is lost in parts.");
        }
    }

    private static void square(FirstSight sight, List<String> says, List<String> advice) {
        double longer = sight.longerRight();
        if (Double.isNaN(longer)) {
            return;
        }
        if (Math.abs(longer) < SQUARE) {
            says.add(
                    "The rod is as long on one side as on the other to within a seventh, so the phone stood within about 30° of square; nearer"
                            + " than that a few pictures don't tell.");
            return;
        }
        String side = longer > 0 ? "right" : "left";
        says.add(words(
                "The rod looks %.0f %% longer pointing %s, so there it comes nearer, or is hidden in part on the other side:"
                        + " the phone was probably not square to the cast.",
                100 * Math.abs(longer), side));
        // Whoever stands too far to the right sees the right nearer.
        String back = longer > 0 ? "left" : "right";
        advice.add(
                "Move along the bank to the " + back + ", still looking at the angler, until the phone stands square.");
    }

    private static String words(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
