package bendline.report;

import bendline.analysis.ClipAnalysis;
import bendline.footage.ClipInfo;

/**
 * Which frames the marked clip shows: all about the pushes; elsewhere, where little is fast, thirty a second of a clip that plays
 * more than sixty, so that coding it does not take much longer than it lasts. A clip that plays fewer is shown frame by frame.
 */
final class ShownFrames {

    /** Frames a second that two processors keep up with, for all of a clip. */
    private static final double FAST_RATE = 60;

    /** Frames a second that are enough where nothing is fast: what phones film at unless told otherwise. */
    private static final double CALM_RATE = 30;

    /** A clip's rate may miss its name by as much, as a share: 119.88 for 120. */
    private static final double SHORT_OF = 0.02;

    /** Real time before the push and after the rod is straight in which all are shown too; more than {@link StrokePace} slows. */
    private static final double ROOM_SECONDS = 0.25;

    private final ClipInfo info;
    private final StrokeTimes strokes;
    private final int every;

    ShownFrames(ClipAnalysis analysis) {
        this.info = analysis.info();
        this.strokes = new StrokeTimes(analysis, ROOM_SECONDS);
        double rate = 1 / Math.max(1e-3, info.medianStepSeconds());
        this.every = rate > (1 + SHORT_OF) * FAST_RATE ? (int) Math.floor((1 + SHORT_OF) * rate / CALM_RATE) : 1;
    }

    /** Whether a frame is shown; the first and the last always are. */
    boolean hold(int frame) {
        return frame % every == 0
                || frame == info.frames() - 1
                || strokes.hold(info.times().get(frame));
    }
}
