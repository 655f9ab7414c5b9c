package bendline.stroke;

import bendline.geometry.Point;
import bendline.signal.LeastSquares;
import java.util.stream.IntStream;

/**
 * How the plane of the cast is seen by a phone that does not stand square to it: a rod that points to the nearer side looks
 * longer. To first order the straight rod's length goes with its direction as {@code 1 + a·cos + b·sin}, and a place as far from
 * the hand as the rod is long is seen that much too large.
 *
 * @param a how much longer a rod looks that points forward, share
 * @param b the same for one that points up
 * @param lengthPx length of the rod where neither counts, pixels
 * @param usualPx length that the scale is taken from, pixels
 * @param sd 68 % uncertainty of a and b
 */
record PlaneView(double a, double b, double lengthPx, double usualPx, double sd) {

    private static final double STRAIGHT = 0.985;
    private static final int LEAST_FRAMES = 30;

    /** Directions must differ by so much, radians, for the two to be told from each other and from the length. */
    private static final double LEAST_SPAN = Math.toRadians(50);

    private static final int ROUNDS = 4;
    private static final double FAR = 3;

    /** No phone stands further off than this and still sees a cast, share. */
    private static final double MOST = 0.2;

    /**
     * How far away phones stand, in free lengths of the rod, for what is foreshortened by their standing askew. Derived: a lens of
     * 65° to 70° across sees two rods' lengths from the height of the hand from 3 to 4 of them away.
     */
    private static final double DISTANCE = 3.5;

    /** How well a phone can be taken to stand square where the rod does not tell: some 8°, share. */
    private static final double UNKNOWN_SD = 0.04;

    /** From the frames in which the whole rod is seen to be straight. */
    static PlaneView of(RodSeries rod, double freeLengthPx) {
        PlaneView square = new PlaneView(0, 0, freeLengthPx, freeLengthPx, UNKNOWN_SD);
        int[] use = IntStream.range(0, rod.size())
                .filter(i -> rod.chord()[i] > STRAIGHT && !Double.isNaN(rod.gripX()[i] + rod.angle()[i]))
                .toArray();
        double[] keep = null;
        for (int round = 0; round < ROUNDS; round++) {
            if (use.length < LEAST_FRAMES || span(rod, use) < LEAST_SPAN) {
                return square;
            }
            keep = LeastSquares.solve(rows(rod, use), lengths(rod, use));
            use = near(rod, use, keep);
        }
        if (keep == null || use.length < LEAST_FRAMES) {
            return square;
        }
        double a = keep[1] / keep[0];
        double b = keep[2] / keep[0];
        boolean sound = Math.hypot(a, b) <= MOST && Math.abs(keep[0] / freeLengthPx - 1) <= MOST;
        return sound ? new PlaneView(a, b, keep[0], freeLengthPx, 0.4 * UNKNOWN_SD) : square;
    }

    /** A place as seen from square, pixels of the usual scale, by its offset from the hand, x forward, y up. */
    Point square(Point fromHand) {
        double grows = (a * fromHand.x() + b * fromHand.y()) / lengthPx;
        double turned = Math.min(0.5, Math.abs(a) * DISTANCE);
        double scale = usualPx / lengthPx / (1 + grows);
        return new Point(fromHand.x() * scale / Math.sqrt(1 - turned * turned), fromHand.y() * scale);
    }

    private static double[][] rows(RodSeries rod, int[] use) {
        return IntStream.of(use)
                .mapToObj(i -> new double[] {1, Math.cos(rod.angle()[i]), Math.sin(rod.angle()[i])})
                .toArray(double[][]::new);
    }

    private static double[] lengths(RodSeries rod, int[] use) {
        return IntStream.of(use)
                .mapToDouble(i ->
                        Math.hypot(rod.tipX()[i] - rod.gripX()[i], rod.tipY()[i] - rod.gripY()[i]) / rod.chord()[i])
                .toArray();
    }

    private static int[] near(RodSeries rod, int[] use, double[] fit) {
        double[][] rows = rows(rod, use);
        double[] y = lengths(rod, use);
        double[] off = new double[use.length];
        for (int k = 0; k < off.length; k++) {
            off[k] = Math.abs(y[k] - rows[k][0] * fit[0] - rows[k][1] * fit[1] - rows[k][2] * fit[2]);
        }
        double[] sorted = off.clone();
        java.util.Arrays.sort(sorted);
        double limit = FAR * 1.4826 * sorted[sorted.length / 2] + 1e-6;
        return IntStream.range(0, use.length)
                .filter(k -> off[k] <= limit)
                .map(k -> use[k])
                .toArray();
    }

    private static double span(RodSeries rod, int[] use) {
        double[] angles =
                IntStream.of(use).mapToDouble(i -> rod.angle()[i]).sorted().toArray();
        return angles[(int) (0.95 * (angles.length - 1))] - angles[(int) (0.05 * (angles.length - 1))];
    }
}
