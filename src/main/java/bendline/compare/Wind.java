package bendline.compare;

/**
 * Wind as written down at the water.
 *
 * @param speedMps metres a second where the angler stood, 0 to 60
 * @param fromDeg where it comes from, seen along the cast: 0 in the face, 90 from the right, 180 from behind, 270 from the left
 */
public record Wind(double speedMps, double fromDeg) {

    /** Slower than this a flag hangs and a flight is hardly changed (Beaufort 0 and 1: up to 1.5 m/s). */
    public static final double CALM_MPS = 1.5;

    private static final double SAME_MPS = 1.0;
    private static final double SAME_DEG = 30;

    /** Checks the ranges. */
    public Wind {
        if (!(speedMps >= 0 && speedMps <= 60)) {
            throw new IllegalArgumentException("wind " + speedMps + " m/s is outside 0 to 60 m/s");
        }
        if (!(fromDeg >= 0 && fromDeg < 360)) {
            throw new IllegalArgumentException("wind from " + fromDeg + " degrees is outside 0 to 359 degrees");
        }
    }

    /** Whether there is next to none. */
    public boolean calm() {
        return speedMps <= CALM_MPS;
    }

    /** Whether a flight would not tell them apart: both calm, or within 1 m/s and 30 degrees. */
    public boolean like(Wind other) {
        double turn = Math.abs((fromDeg - other.fromDeg + 540) % 360 - 180);
        return calm() && other.calm() || Math.abs(speedMps - other.speedMps) <= SAME_MPS && turn <= SAME_DEG;
    }
}
