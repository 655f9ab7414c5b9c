package bendline.stroke;

import java.util.stream.IntStream;

/**
 * Between which two frames the rig left the circle of its drop round the tip.
 *
 * @param on the last frame in which both were seen before it
 * @param off the first frame off the circle
 * @param drop the distance before, pixels
 */
record OffCircle(int on, int off, double drop) {

    /** How long before it is clear of the circle a rig may be inside it, real seconds. */
    private static final double INWARDS_SECONDS = 0.1;

    /**
     * How long it may take from inside to clear of it or to the next frame inside, real seconds, and frames besides: what stays on the
     * circle for longer had not left it. Two rendered casts at 240 frames a second took 8 and 12 ms.
     */
    private static final double CROSSES_SECONDS = 0.015;

    private static final int CROSSES_FRAMES = 2;

    /** How far inside it must be, share of the drop: in two frames so far or in one twice as far, for a small slip of one frame is no departure. */
    private static final double INSIDE = 0.05;

    /** Over how long the drop is taken just before a frame, real seconds, and at least how many frames. */
    private static final double BEFORE_SECONDS = 0.04;

    private static final double BEFORE_FRAMES = 5.5;

    /** So many uncertainties of a distance are room for its errors. */
    private static final double ROOM_SDS = 2.5;

    /** Frames that tell a middle. */
    private static final int LEAST = 3;

    /** How far the drop before the release may differ from the usual one. */
    private static final double LIKE_USUAL = 0.2;

    /**
     * The same, earlier if the rig had left inwards. A blank that unloads while the rod is already dropped springs towards the rig first: the
     * distance shrinks by a quarter or more, and the rig crosses the circle only then, up to a tenth of a second after it was let go.
     *
     * @param tight from when the line is tight, real time
     * @param from from when the blank is fully loaded, real time
     * @param usual the drop before the cast, pixels
     * @param step usual time between frames, real seconds
     */
    OffCircle inwards(RodSeries rod, double tight, double from, double usual, double step) {
        double[] time = rod.time();
        int first = off;
        int frames = 0;
        for (int k = off - 1; k >= 0 && time[k] >= Math.max(from, time[off] - INWARDS_SECONDS); k--) {
            double level = before(k, rod, tight, usual, step);
            double room = Math.max(INSIDE * level, ROOM_SDS * RigLine.distanceSd(rod, k));
            double inside = level - RigLine.distance(rod, k);
            if (inside > room) {
                if (time[first] - time[k] > CROSSES_SECONDS + CROSSES_FRAMES * step) {
                    break;
                }
                first = k;
                frames += inside > 2 * room ? 2 : 1;
            }
        }
        int last = first - 1;
        while (last >= 0 && Double.isNaN(RigLine.distance(rod, last))) {
            last--;
        }
        boolean close = last >= 0 && time[first] - time[last] <= ReleaseFinder.LONGEST_GAP_SECONDS;
        return frames >= 2 && close ? new OffCircle(last, first, before(first, rod, tight, usual, step)) : this;
    }

    /** The drop as it looks just before a frame. */
    private static double before(int i, RodSeries rod, double tight, double usual, double step) {
        double from = Math.max(tight, rod.time()[i] - Math.max(BEFORE_SECONDS, BEFORE_FRAMES * step));
        double[] d = IntStream.range(0, i)
                .filter(k -> rod.time()[k] >= from)
                .mapToDouble(k -> RigLine.distance(rod, k))
                .filter(Double::isFinite)
                .sorted()
                .toArray();
        double middle = d.length < LEAST ? usual : d[d.length / 2];
        return Math.abs(middle / usual - 1) < LIKE_USUAL ? middle : usual;
    }
}
