package bendline.report;

import bendline.analysis.ClipAnalysis;

/** When each frame is shown where the strokes play slower than the rest. */
final class StrokePace {

    /** Real time before the push and after the rod is straight that is slowed too. */
    private static final double ROOM_SECONDS = 0.15;

    private final double slower;
    private final StrokeTimes strokes;

    /** @param slower how many times, from 1 */
    StrokePace(ClipAnalysis analysis, double slower) {
        this.slower = slower;
        this.strokes = new StrokeTimes(analysis, ROOM_SECONDS);
    }

    double slower() {
        return slower;
    }

    /** Whether the clip is slowed at a clip time. */
    boolean slowAt(double seconds) {
        return slower > 1 && strokes.hold(seconds);
    }

    /** When the frame of a clip time is shown. */
    double shownAt(double seconds) {
        return seconds + (slower - 1) * strokes.over(seconds);
    }
}
