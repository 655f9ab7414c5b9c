package bendline.footage;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** Puts together what is known of a clip once its last frame has been seen. */
final class Survey {

    /** Steps longer than this many usual ones are holes: at least one frame is missing. */
    private static final double HOLE = 1.75;
    /** A clip's header that promises more than this many times what is there is wrong, rather than the file cut. */
    private static final double ABSURD = 20;

    private Survey() {}

    static ClipInfo of(Container container, UprightSize size, List<Double> times, List<String> soFar) {
        List<String> notes = new ArrayList<>(soFar);
        double step = usualStep(times);
        double duration = times.get(times.size() - 1) + step;
        notes.addAll(unevenness(times, step));
        notes.addAll(headerClaims(container, times.size(), duration));
        notes.addAll(shape(container, size));
        return new ClipInfo(
                size.width(),
                size.height(),
                times.size(),
                duration,
                size.turn().clockwiseDegrees(),
                size.turn().mirrored(),
                SlowMotionTag.of(container).read(step),
                times,
                notes);
    }

    private static double usualStep(List<Double> times) {
        double[] steps = steps(times);
        return steps[steps.length / 2];
    }

    private static double[] steps(List<Double> times) {
        double[] steps = new double[times.size() - 1];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = times.get(i + 1) - times.get(i);
        }
        Arrays.sort(steps);
        return steps;
    }

    private static List<String> unevenness(List<Double> times, double step) {
        int holes = 0;
        int longest = 0;
        for (int i = 0; i + 1 < times.size(); i++) {
            double here = times.get(i + 1) - times.get(i);
            holes += here > HOLE * step ? 1 : 0;
            longest = here > times.get(longest + 1) - times.get(longest) ? i : longest;
        }
        List<String> notes = new ArrayList<>();
        if (holes > 0) {
            notes.add(String.format(
                    Locale.ROOT,
                    "Frames are missing in %d place%s; the longest hole is %.3f s after %.2f s, and nothing is known of"
                            + " what happened in it.",
                    holes,
                    holes == 1 ? "" : "s",
                    times.get(longest + 1) - times.get(longest),
                    times.get(longest)));
        }
        double[] steps = steps(times);
        double small = steps[steps.length / 10];
        double large = steps[steps.length - 1 - steps.length / 10];
        if (large > 1.2 * small) {
            notes.add(String.format(
                    Locale.ROOT,
                    "The frames come at uneven steps (mostly %.0f to %.0f ms); each is used at its own time.",
                    1000 * small,
                    1000 * large));
        }
        return notes;
    }

    private static List<String> headerClaims(Container container, int frames, double duration) {
        double stated = container.statedSeconds();
        double missing = stated - duration;
        if (missing < 0.05 * stated || missing < 0.2) {
            return List.of();
        }
        if (stated > ABSURD * duration) {
            return List.of(String.format(
                    Locale.ROOT,
                    "The header claims %.0f s, which is wrong; the pictures last %.2f s.",
                    stated,
                    duration));
        }
        String counted = container.statedFrames() > frames
                ? String.format(Locale.ROOT, "%d of %d frames, ", frames, container.statedFrames())
                : "";
        return List.of(String.format(
                Locale.ROOT,
                "The file ends early: %s%.2f of %.2f s could be read; copy it from the phone again if the cast is cut.",
                counted,
                duration,
                stated));
    }

    private static List<String> shape(Container container, UprightSize size) {
        List<String> notes = new ArrayList<>();
        if (size.turn().mirrored()) {
            notes.add("The clip is stored mirrored and tagged so; it was put the right way round by the tag, so check"
                    + " that left and right are as they were.");
        }
        if (size.turn().isNone() && container.titledTurn() > 0) {
            notes.add(String.format(
                    Locale.ROOT,
                    "Only the track's title speaks of a turn by %d degrees, which players ignore; if the picture lies on"
                            + " its side, give that turn when you start.",
                    container.titledTurn()));
        }
        if (size.divisor() > 1) {
            notes.add(String.format(
                    Locale.ROOT,
                    "The pictures are larger than are worked on and were reduced to 1/%d of their width and height.",
                    size.divisor()));
        }
        return notes;
    }
}
