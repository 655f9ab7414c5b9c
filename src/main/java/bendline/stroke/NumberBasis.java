package bendline.stroke;

/** What the numbers of {@link Numbers} rest on, and why one may be missing. */
final class NumberBasis {

    private NumberBasis() {}

    static String of(Quantity q) {
        return switch (q) {
            case BACKSWING_SECONDS -> "backswingStart to backswingEnd";
            case SETTLE_SECONDS -> "backswingEnd to forwardStart";
            case FORWARD_SECONDS -> "forwardStart to release";
            case TEMPO -> "backswing time over forward time";
            case PEAK_BEND_LAG -> "peakBend to release";
            case STOP_TO_RELEASE -> "stop to release; negative where the line goes before the rod stops";
            case REARMOST_DEG, RELEASE_ANGLE_DEG ->
                "the blank's direction at the grip, smoothed, in the picture's plane";
            case SWEEP_DEG -> "butt angle at forwardStart minus butt angle at release";
            case PEAK_BACK_RATE, PEAK_FORWARD_RATE -> "rate of the smoothed butt angle";
            case COMPRESSION -> "1 − chord ratio at peakBend";
            case TIP_LAG_DEG -> "direction grip to tip against the butt's, forwardStart to release";
            case COMPRESSION_AT_QUARTER, COMPRESSION_AT_HALF, COMPRESSION_AT_THREE_QUARTERS ->
                "1 − chord ratio when the butt has turned through that share of the sweep";
            case EARLY_LOAD, HALF_LOAD -> "compression at that share of the sweep over the compression at peakBend";
            case LOAD_SWEEP_SHARE ->
                "butt angle when the compression last rises through a quarter of its deepest, which is half of the bend";
            case HELD_ANGLE_DEG -> "butt angle at the release or the stop, whichever is later";
            case FALL_150, FALL_250, FALL_500 ->
                "held angle minus the butt angle at that time after the release, real time";
            case FALL_RATE -> "largest forward rate after the stop";
            case DROP_STARTS -> "butt angle first 5° under the held angle, counted from the release";
            default -> "";
        };
    }

    static String why(Quantity q, StrokeReader.Readings all) {
        if (!all.release().known()) {
            switch (q) {
                case REARMOST_DEG,
                        PEAK_BACK_RATE,
                        PEAK_FORWARD_RATE,
                        COMPRESSION,
                        BACKSWING_SECONDS,
                        SETTLE_SECONDS -> {}
                default -> {
                    return "needs the moment of release: " + all.release().basis();
                }
            }
        }
        return switch (q) {
            case BACKSWING_SECONDS, TEMPO -> "the backswing was not followed from its start to its end";
            case SETTLE_SECONDS -> "the end of the backswing or the start of the forward stroke was not followed";
            case DROP_STARTS ->
                "the rod did not fall by 5° within 1.0 s after the release, or was not followed so long";
            case FALL_150, FALL_250, FALL_500, FALL_RATE -> "the rod was not followed so long after the release";
            case COMPRESSION, PEAK_BEND_LAG, EARLY_LOAD, HALF_LOAD ->
                "the rod was not followed well enough there, or its tip not while it may have been bent deepest";
            default -> "the rod was not followed well enough there";
        };
    }
}
