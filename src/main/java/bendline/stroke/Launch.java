package bendline.stroke;

import bendline.signal.LocalPolynomial;
import bendline.signal.PolynomialFit;
import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * How the rig starts its flight, from its first frames in the air.
 *
 * @param speedPx pixels per real second
 * @param angleDeg above level
 */
record Launch(Found speedPx, Found angleDeg) {

    private static final double GRAVITY = 9.81;

    /** Longest piece of flight that is looked at, real seconds: over it the air takes a few percent of the speed. */
    private static final double LONGEST_SECONDS = 0.2;

    private static final double LONGEST_GAP_SECONDS = 0.07;

    /** What is left of the whip's turn in a picture taken right at the release. */
    private static final double CLEAR_FRAMES = 0.35;

    private static final int LEAST_FRAMES = 3;

    /** What a camera that is not quite square to the cast does to directions. */
    private static final double CAMERA_DEG = 0.7;

    /** Air drag on a feeder or lead at casting speed, share of its speed lost in a second; a wide guess for the uncertainty. */
    private static final double DRAG_PER_SECOND = 0.25;

    static Launch of(RodSeries rod, double step, Found release, Scale scale) {
        if (!release.known()) {
            Found none = Found.nothing("needs the moment of release");
            return new Launch(none, none);
        }
        int[] flight = flight(rod, step, release.value());
        if (flight.length < LEAST_FRAMES) {
            Found none = Found.nothing(
                    "the rig was seen in " + flight.length + " frames of its flight, " + LEAST_FRAMES + " are needed");
            return new Launch(none, none);
        }
        return measured(rod, flight, release.value(), scale);
    }

    private static Launch measured(RodSeries rod, int[] flight, double at, Scale scale) {
        double[] t = IntStream.of(flight).mapToDouble(i -> rod.time()[i]).toArray();
        double fall = scale.known() ? 0.5 * GRAVITY / scale.metresPerPixel() : 0;
        double[] x = new double[t.length];
        double[] y = new double[t.length];
        double[] sd = new double[t.length];
        for (int k = 0; k < t.length; k++) {
            int i = flight[k];
            x[k] = rod.rigX()[i];
            y[k] = rod.rigY()[i] + fall * (t[k] - at) * (t[k] - at);
            sd[k] = Math.max(0.2, rod.rigSd()[i] / Math.sqrt(2));
        }
        PolynomialFit fx = LocalPolynomial.fit(t, x, sd, at, 1);
        PolynomialFit fy = LocalPolynomial.fit(t, y, sd, at, 1);
        double vx = fx.derivative(at, 1);
        double vy = fy.derivative(at, 1);
        double speed = Math.hypot(vx, vy);
        double sdX = fx.sd(at, 1) * fx.excess();
        double sdY = fy.sd(at, 1) * fy.excess();
        double along = Math.hypot(vx * sdX, vy * sdY) / speed;
        double across = Math.hypot(vy * sdX, vx * sdY) / speed;
        double middle = 0.5 * (t[t.length - 1] - at);
        String basis = "the rig's path in its first " + t.length + " frames of flight, "
                + (scale.known() ? "gravity taken out" : "gravity left in, since no length in metres is known");
        double slowed = DRAG_PER_SECOND * middle;
        double gravityDeg = scale.known() ? 0 : 1.5 * middle / 0.1;
        return new Launch(
                new Found(speed * (1 + slowed), Math.hypot(along, slowed * speed), basis),
                new Found(
                        Math.toDegrees(Math.atan2(vy, vx)),
                        Math.hypot(Math.hypot(Math.toDegrees(across / speed), CAMERA_DEG), gravityDeg),
                        basis));
    }

    /** The frames of the first piece of flight in which the rig is seen, without a long gap. */
    private static int[] flight(RodSeries rod, double step, double release) {
        int[] seen = IntStream.range(0, rod.size())
                .filter(i -> rod.time()[i] >= release + CLEAR_FRAMES * step
                        && rod.time()[i] <= release + LONGEST_SECONDS
                        && !Double.isNaN(rod.rigX()[i]))
                .toArray();
        int n = 0;
        double last = release;
        while (n < seen.length && rod.time()[seen[n]] - last <= Math.max(LONGEST_GAP_SECONDS, 2.5 * step)) {
            last = rod.time()[seen[n]];
            n++;
        }
        return Arrays.copyOf(seen, n);
    }
}
