package bendline.report;

import bendline.analysis.ClipAnalysis;
import bendline.footage.ClipInfo;

/**
 * Which frames the marked clip shows: all about the strokes; elsewhere, where little happens, every second of a clip of 120
 * frames a second, every fourth of 240, and so on, so that coding them does not take longer than it is worth. A clip that plays
 * at less than that is shown frame by frame.
 */
final class ShownFrames {

    /** Frames a second that are enough where nothing is fast, as on most screens. */
    private static final double CALM_RATE = 60;

    /** A clip's rate may fall short of its name by as much: 119.88 for 120. */
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
        this.every = (int) Math.max(1, Math.floor(rate / CALM_RATE + SHORT_OF));
    }

    /** Whether a frame is shown; the first and the last always are. */
    boolean hold(int frame) {
        return frame % every == 0
                || frame == info.frames() - 1
                || strokes.hold(info.times().get(frame));
    }
}
