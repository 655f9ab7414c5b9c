package bendline.stroke;

import java.util.Arrays;
import java.util.List;

/**
 * How far the pulls that the rig tells lie from those that the bend tells, over all frames of a stroke that show both. In a single
 * frame either may be another thing; that all of them differ by one factor says that a length, a weight or the stiffness was told
 * wrongly.
 */
final class RigAgainstBend {

    /** Weaker pulls are mostly the blank's own weight, newtons, and the rig must be surer than this share. */
    private static final double LEAST_N = 4;

    private static final double SURE = 0.25;
    private static final int LEAST_FRAMES = 5;

    private RigAgainstBend() {}

    /**
     * One frame.
     *
     * @param bend newtons
     * @param rig newtons
     * @param rigSd its 68 % uncertainty
     */
    record Pair(double bend, double rig, double rigSd) {}

    /** The distance as a power of e, less what the frames scatter by; 0 where too few frames show both. */
    static double off(List<Pair> pairs) {
        double[] logs = pairs.stream()
                .filter(p -> p.rig > LEAST_N && p.rigSd < SURE * p.rig)
                .mapToDouble(p -> Math.log(Math.max(p.bend, 0.05 * p.rig) / p.rig))
                .sorted()
                .toArray();
        if (logs.length < LEAST_FRAMES) {
            return 0;
        }
        double middle = logs[logs.length / 2];
        double[] away =
                Arrays.stream(logs).map(x -> Math.abs(x - middle)).sorted().toArray();
        // Neighbouring frames err alike, so that their number does not make the middle surer.
        return Math.max(0, Math.abs(middle) - away[away.length / 2]);
    }
}
