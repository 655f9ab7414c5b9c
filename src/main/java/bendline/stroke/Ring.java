package bendline.stroke;

import bendline.signal.Oscillation;
import java.util.stream.IntStream;

/** How fast the bare rod rings after the release: a damped swing of the tip about the butt's direction. */
final class Ring {

    private static final double FROM_SECONDS = 0.06;
    private static final double TO_SECONDS = 0.9;
    private static final double LOWEST_HZ = 1.5;
    private static final double HIGHEST_HZ = 12;
    private static final double[] DECAYS = {0.5, 2, 5, 10};

    /** Share of the tip's movement that the swing must explain. */
    private static final double LEAST_EXPLAINED = 0.6;

    /**
     * How far the ring of a cast lies from that of a rod held in a vice and bent a little, over its value: hands give, wide swings are
     * slower, the air brakes. Two thirds of twenty simulated casts lay within it, most of them on the slow side.
     */
    private static final double SWING_SD = 0.04;

    private static final double LEAST_PERIODS = 1.5;
    private static final double FRAMES_PER_PERIOD = 3.5;
    private static final int LEAST_FRAMES = 12;

    private Ring() {}

    static Found of(RodSeries rod, double step, double release) {
        int[] seen = IntStream.range(0, rod.size())
                .filter(i -> rod.time()[i] >= release + FROM_SECONDS
                        && rod.time()[i] <= release + TO_SECONDS
                        && !Double.isNaN(rod.lag()[i]))
                .toArray();
        if (seen.length < LEAST_FRAMES) {
            return Found.nothing("the tip was seen in too few frames after the release");
        }
        double[] t =
                IntStream.of(seen).mapToDouble(i -> rod.time()[i] - release).toArray();
        double[] y = IntStream.of(seen).mapToDouble(i -> rod.lag()[i]).toArray();
        double span = t[t.length - 1] - t[0];
        double highest = Math.min(HIGHEST_HZ, 1 / (FRAMES_PER_PERIOD * step));
        double lowest = Math.max(LOWEST_HZ, LEAST_PERIODS / span);
        Oscillation swing = Oscillation.of(t, y, lowest, highest, DECAYS);
        if (swing == null || swing.explained() < LEAST_EXPLAINED) {
            return Found.nothing("no clear ringing of the tip was seen after the release");
        }
        return new Found(
                swing.hz(),
                Math.hypot(Math.max(2 * swing.sdHz(), 0.02 / span), SWING_SD * swing.hz()),
                "a damped swing fitted to the tip in " + t.length + " frames after the release");
    }
}
