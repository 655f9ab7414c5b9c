package bendline.footage;

/**
 * How a clip is written.
 *
 * @param nominalRate frames per second that the header states, 1–1000; the true times are those given with each frame
 * @param bitsPerSecond the most the clip may take on average at its nominal rate, 50 000–200 000 000; a plain scene takes
 *     less, because quality stops rising at a quantiser where nothing can be seen of it
 * @param displayRotationDegrees clockwise turn a player is told to apply: 0, 90, 180 or 270
 * @param captureRate frames per second to tag as the capture rate the way Android phones do; 0 for no tag
 * @param keyframeEvery frames from one whole picture to the next, 1–1000
 * @param swift for somebody who waits: two groups of pictures are encoded side by side, which takes the memory of their frames
 */
public record ClipWriterSettings(
        double nominalRate,
        int bitsPerSecond,
        int displayRotationDegrees,
        double captureRate,
        int keyframeEvery,
        boolean swift) {

    /** Checks the ranges. */
    public ClipWriterSettings {
        require(nominalRate >= 1 && nominalRate <= 1000, "nominal rate 1 to 1000 frames per second", nominalRate);
        require(bitsPerSecond >= 50_000 && bitsPerSecond <= 200_000_000, "50000 to 200000000 bits/s", bitsPerSecond);
        require(
                displayRotationDegrees >= 0 && displayRotationDegrees < 360 && displayRotationDegrees % 90 == 0,
                "rotation 0, 90, 180 or 270 degrees",
                displayRotationDegrees);
        require(
                captureRate == 0 || (captureRate >= 1 && captureRate <= 10_000),
                "capture rate 0 or 1 to 10000",
                captureRate);
        require(keyframeEvery >= 1 && keyframeEvery <= 1000, "a keyframe every 1 to 1000 frames", keyframeEvery);
    }

    /** Not in haste. */
    public ClipWriterSettings(
            double nominalRate, int bitsPerSecond, int displayRotationDegrees, double captureRate, int keyframeEvery) {
        this(nominalRate, bitsPerSecond, displayRotationDegrees, captureRate, keyframeEvery, false);
    }

    /** The same for somebody who waits. */
    public ClipWriterSettings inHaste() {
        return new ClipWriterSettings(
                nominalRate, bitsPerSecond, displayRotationDegrees, captureRate, keyframeEvery, true);
    }

    /** Upright, no capture tag, a keyframe every half second. */
    public static ClipWriterSettings of(double nominalRate, int bitsPerSecond) {
        return new ClipWriterSettings(nominalRate, bitsPerSecond, 0, 0, Math.max(1, (int) Math.round(nominalRate / 2)));
    }

    private static void require(boolean holds, String allowed, Number got) {
        if (!holds) {
            throw new IllegalArgumentException("allowed is " + allowed + ", got " + got);
        }
    }
}
