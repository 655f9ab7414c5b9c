package bendline.analysis;

import java.util.List;

/**
 * What a clip is good for: how finely it can be timed and how well the rod could be followed.
 *
 * @param captureRateHz frames per second of real time, median
 * @param timingSeconds 68 % uncertainty to expect of a moment that is read off one series, seconds of clip time
 * @param cameraMoved whether the phone moved by more than a pixel
 * @param largestShiftPx largest shift of the picture centre, pixels
 * @param cameraTrusted whether the background gave enough to measure the camera's motion
 * @param framesLookedAt frames the shares below refer to: those of the casts, or of the whole clip where there is none
 * @param blankSeenShare share of those frames in which the blank was found, 0 to 1
 * @param tipSeenShare share of those frames in which the tip was measured, 0 to 1
 * @param rigSeenShare share of those frames in which the rig was measured, 0 to 1
 * @param tipSdPx median 68 % radius of the tip where it was seen, pixels; NaN if it never was
 * @param says the same in words, one sentence each
 * @param advice what to change when filming next time, one sentence each; empty if nothing
 */
public record Quality(
        double captureRateHz,
        double timingSeconds,
        boolean cameraMoved,
        double largestShiftPx,
        boolean cameraTrusted,
        int framesLookedAt,
        double blankSeenShare,
        double tipSeenShare,
        double rigSeenShare,
        double tipSdPx,
        List<String> says,
        List<String> advice) {

    /** Copies the lists. */
    public Quality {
        says = List.copyOf(says);
        advice = List.copyOf(advice);
    }
}
