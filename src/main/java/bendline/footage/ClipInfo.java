package bendline.footage;

import java.util.List;

/**
 * What is known of a clip once it has been decoded from end to end.
 *
 * @param width upright, square pixels
 * @param height upright, square pixels
 * @param frames decoded frames
 * @param durationSeconds first to last frame plus one step, clip time
 * @param rotationDegrees clockwise turn that was applied to bring the stored picture upright: 0, 90, 180 or 270
 * @param mirrored whether the stored picture was mirrored and has been put right
 * @param slowMotion clip time against real time
 * @param times clip time of each frame, seconds, strictly increasing
 * @param notes repairs and oddities, one sentence each, for the user
 */
public record ClipInfo(
        int width,
        int height,
        int frames,
        double durationSeconds,
        int rotationDegrees,
        boolean mirrored,
        SlowMotion slowMotion,
        List<Double> times,
        List<String> notes) {

    /** Copies the lists. */
    public ClipInfo {
        times = List.copyOf(times);
        notes = List.copyOf(notes);
    }

    /** The same with another relation of clip time to real time. */
    public ClipInfo with(SlowMotion other) {
        return new ClipInfo(width, height, frames, durationSeconds, rotationDegrees, mirrored, other, times, notes);
    }

    /** The same with other notes. */
    public ClipInfo with(List<String> others) {
        return new ClipInfo(
                width, height, frames, durationSeconds, rotationDegrees, mirrored, slowMotion, times, others);
    }

    /** Median step between frames, seconds of clip time. */
    public double medianStepSeconds() {
        double[] steps = new double[Math.max(0, times.size() - 1)];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = times.get(i + 1) - times.get(i);
        }
        java.util.Arrays.sort(steps);
        return steps.length == 0 ? 0 : steps[steps.length / 2];
    }

    /** The frame shown at a clip time: the last one that starts at or before it. */
    public int frameAt(double seconds) {
        int i = java.util.Collections.binarySearch(times, seconds);
        return Math.max(0, i >= 0 ? i : -i - 2);
    }
}
