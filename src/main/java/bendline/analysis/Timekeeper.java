package bendline.analysis;

import bendline.footage.ClipInfo;
import bendline.footage.SlowMotion;
import bendline.scene.Setup;
import bendline.stroke.EventKind;
import bendline.stroke.Gravity;
import bendline.stroke.Pace;
import bendline.stroke.Stroke;
import bendline.trace.Trace;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Holds the clip's time against gravity: takes the slow-motion factor from how the rig moves where nothing else tells it, says
 * where the two agree and raises an alarm where they can't both be right.
 */
final class Timekeeper {

    /** Rates at which phones capture slow motion, frames a second. */
    private static final double[] CAPTURE_RATES = {60, 120, 240, 480, 960};

    /** A clue this many uncertainties away contradicts; within so many it agrees. */
    private static final double CONTRADICTS = 3;

    private static final double AGREES = 2;

    /** A clue less certain than this may raise an alarm but not set the factor: half way to the next factor is 0.35. */
    private static final double SURE = 0.15;

    /** Phones slow down but don't speed up: a swing too quick for real time is something else, such as a rod that trembles. */
    private static final double SLOWED = 1.4;

    private Timekeeper() {}

    /** The clip with a factor taken from the hanging rig, if the file and the user say nothing and it plays clearly too slowly. */
    static ClipInfo inferred(ClipInfo info, Trace trace, Setup setup) {
        SlowMotion stated = info.slowMotion();
        Pace pace = trace.foundRod() ? Gravity.hanging(trace, setup) : null;
        if (stated.told() || pace == null || pace.away(stated.factor()) < CONTRADICTS || pace.relativeSd() > SURE) {
            return info;
        }
        Double factor = nearest(pace, info.medianStepSeconds());
        return factor == null
                ? info
                : info.with(new SlowMotion(factor, "inferred: " + said(pace) + "; the nearest capture rate of phones"));
    }

    private static @Nullable Double nearest(Pace pace, double step) {
        Double best = null;
        for (double rate : CAPTURE_RATES) {
            double factor = rate * step;
            boolean nearer = best == null || pace.away(factor) < pace.away(best);
            if (factor > 1 && pace.away(factor) < AGREES && nearer) {
                best = factor;
            }
        }
        return best;
    }

    /** The clip with a word on whether what the rig does agrees with its time. */
    static ClipInfo checked(ClipInfo info, Trace trace, Setup setup, List<Stroke> strokes) {
        if (!trace.foundRod()) {
            return info;
        }
        double stated = info.slowMotion().factor();
        List<Pace> clues = Stream.concat(
                        Stream.ofNullable(Gravity.hanging(trace, setup)),
                        strokes.stream()
                                .map(s -> s.event(EventKind.RELEASE).seconds())
                                .filter(t -> t != null)
                                .limit(1)
                                .flatMap(t -> Stream.ofNullable(Gravity.flying(trace, setup, t))))
                .toList();
        List<String> notes = new ArrayList<>(info.notes());
        for (Pace clue : clues) {
            boolean possible = clue.factor() > stated || stated > SLOWED;
            if (possible && clue.away(stated) > CONTRADICTS) {
                notes.add(String.format(
                        Locale.ROOT,
                        "Check the slow-motion factor: it is taken as %.3g, but %s. If the rod and drop lengths are right, give"
                                + " --slow-motion; until then speeds and durations may be wrong by as much.",
                        stated,
                        said(clue)));
            } else if (clue.away(stated) < AGREES) {
                notes.add(String.format(
                        Locale.ROOT, "The clip's time fits gravity: %s; it is taken as %.3g.", said(clue), stated));
            }
        }
        return info.with(notes);
    }

    private static String said(Pace pace) {
        return String.format(
                Locale.ROOT,
                "%s, which makes a factor of %.2g ± %.1g",
                pace.clue(),
                pace.factor(),
                pace.factor() * pace.relativeSd());
    }
}
