package bendline.stroke;

/**
 * The stroke's smoothed series, one entry per frame of the stretch. Arrays are shared, do not write to them. Entries are
 * NaN where nothing was measured near. Angles follow the butt-angle convention: 0 forward and level, π/2 up, π level behind.
 *
 * @param firstFrame decoded frame of entry 0
 * @param clipSeconds clip time of each entry
 * @param realSeconds real time of each entry, from the same zero
 * @param buttAngleRad butt angle
 * @param buttAngleSd its 68 % uncertainty
 * @param buttRate rate of the butt angle, rad/s of real time, positive backwards (angle growing)
 * @param chordRatio distance grip to tip over free length
 * @param chordRatioSd its 68 % uncertainty
 * @param tipSpeedPx tip speed, reference pixels per second of real time
 * @param tipSpeed tip speed, m/s; NaN throughout where the scale is unknown
 */
public record Kinematics(
        int firstFrame,
        double[] clipSeconds,
        double[] realSeconds,
        double[] buttAngleRad,
        double[] buttAngleSd,
        double[] buttRate,
        double[] chordRatio,
        double[] chordRatioSd,
        double[] tipSpeedPx,
        double[] tipSpeed) {

    /** Number of entries. */
    public int size() {
        return clipSeconds.length;
    }
}
