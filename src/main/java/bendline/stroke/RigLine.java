package bendline.stroke;

import bendline.signal.ChangePoint;
import java.util.Arrays;
import java.util.stream.IntStream;

/** What the distance between tip and rig tells: the drop, and how far apart the two are from frame to frame. */
final class RigLine {

    /** Share of the largest distances whose middle is taken for the drop: a slack line only shortens the distance. */
    private static final double TIGHT_SHARE = 0.3;

    private static final int LEAST_FRAMES = 8;

    /** Least uncertainty of a distance, pixels. */
    private static final double LEAST_PX = 1;

    private RigLine() {}

    /** Distances tip to rig, pixels, of the frames between two moments, real time, that show both. */
    static ChangePoint.Samples distances(RodSeries rod, double from, double to) {
        int[] seen = IntStream.range(0, rod.size())
                .filter(i -> rod.time()[i] >= from && rod.time()[i] <= to && Double.isFinite(distance(rod, i)))
                .toArray();
        return new ChangePoint.Samples(
                Arrays.stream(seen).mapToDouble(i -> rod.time()[i]).toArray(),
                Arrays.stream(seen).mapToDouble(i -> distance(rod, i)).toArray(),
                Arrays.stream(seen)
                        .mapToDouble(i -> Math.max(LEAST_PX, distanceSd(rod, i)))
                        .toArray());
    }

    /** Distance tip to rig in a frame, pixels; NaN where one of them is not seen. */
    static double distance(RodSeries rod, int i) {
        return Math.hypot(rod.rigX()[i] - rod.tipX()[i], rod.rigY()[i] - rod.tipY()[i]);
    }

    /** 68 % uncertainty of {@link #distance}. */
    static double distanceSd(RodSeries rod, int i) {
        return Math.hypot(rod.rigSd()[i], rod.tipSd()[i]) / Math.sqrt(2);
    }

    /** Length of the line between tip and rig before the release, pixels; NaN where too little was seen. */
    static double drop(RodSeries rod, double from, double to) {
        double[] d = IntStream.range(0, rod.size())
                .filter(i -> rod.time()[i] >= from && rod.time()[i] <= to)
                .mapToDouble(i -> distance(rod, i))
                .filter(Double::isFinite)
                .sorted()
                .toArray();
        if (d.length < LEAST_FRAMES) {
            return Double.NaN;
        }
        double[] top = Arrays.copyOfRange(d, (int) Math.floor(d.length * (1 - TIGHT_SHARE)), d.length);
        return top[top.length / 2];
    }
}
