package bendline.stroke;

import bendline.geometry.Point;
import bendline.scene.Setup.Side;
import bendline.signal.LocalPolynomial;
import bendline.signal.PolynomialFit;
import bendline.signal.RobustLine;
import bendline.trace.Trace;
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

    /** What a camera that is tilted, and a rod of which one does not know how it lies to the camera, leave open in a direction. */
    private static final double CAMERA_DEG = 0.7;

    /**
     * What is left of a view askew after it was squared by how the rod's length goes with its direction, share of a length. Of fourteen casts
     * in rendered clips, seen up to 16° askew, speeds are within 4.5 % in two of three instead of 7 %, and no longer nearly all too small; angles
     * within 1.2° instead of 1.4°, some to either side. Before the hand was told by the body the traced length erred by direction as much as a
     * view askew makes it, and squaring made angles worse.
     */
    private static final double VIEW_SD = 0.02;

    /** What a phone that is taken to stand square leaves open: some 8°, share of a length. */
    private static final double ASKEW_SD = 0.04;

    /** How far the flight goes from the hand, in rod lengths: by so much what is not known of the view counts more. */
    private static final double REACH = 1.5;

    /**
     * Air drag and the running line's pull on a feeder or lead at casting speed, share of its speed lost in a second, with a wide
     * guess for the uncertainty. Derived: ρ·CdA·v/(2m) with 6.5 cm², 80 g and 35 m/s gives 0.17, a pull of 0.25 N another 0.09.
     */
    private static final double DRAG_PER_SECOND = 0.27;

    private static final double DRAG_SD_PER_SECOND = 0.1;

    /**
     * How far from its last place before the release a flight, drawn back to that time, may lie, share of the way that it makes from then to the
     * first frame of the flight: on the circle it still turned. Of 25 flights in rendered clips 23 were off by 0.02 to 0.12, two of other things by
     * 1.5 and 7.7; a rig that set off at full speed only at the release would be off by somewhat more than a half.
     */
    private static final double ROUND = 0.7;

    /** How long before the release that place may be, real seconds. */
    private static final double LONGEST_BEFORE_SECONDS = 0.05;

    /** A rig that lies further than this many uncertainties off its path is another thing. */
    private static final double STRAY = 4;

    static Launch of(StrokeReader.Readings all) {
        Found release = all.release();
        if (!release.known()) {
            Found none = Found.nothing("needs the moment of release");
            return new Launch(none, none);
        }
        CastPlane plane = all.plane();
        Track track = Track.of(all.rod(), plane, all.trace().freeLengthPx());
        int[] flight = onThePath(track, flight(track, all.step(), release.value()));
        if (flight.length < LEAST_FRAMES) {
            Found none = Found.nothing("the rig was seen in too few frames of its flight: " + flight.length
                    + ", needed are " + LEAST_FRAMES);
            return new Launch(none, none);
        }
        if (!goesOnFrom(track, flight, release)) {
            Found none = Found.nothing(
                    "what was seen in flight does not go on from where the rig was just before the release");
            return new Launch(none, none);
        }
        return measured(track, flight, release.value(), all.scale(), viewSd(plane, all.trace()));
    }

    /** A length that is itself less sure, as where no hand on the rod is known, tells no view better than that. */
    static double viewSd(CastPlane plane, Trace trace) {
        double length = trace.freeLengthSdPx() / trace.freeLengthPx();
        return plane.told() ? Math.min(ASKEW_SD, Math.max(VIEW_SD, length)) : ASKEW_SD;
    }

    /**
     * Where the rig was seen, as a phone square to the cast would have.
     *
     * @param time real seconds
     * @param x forward, pixels in which the rod has its usual length; NaN where it was not seen
     * @param y up
     * @param sd 68 % radius
     */
    private record Track(double[] time, double[] x, double[] y, double[] sd) {

        /** @param plane in rod lengths */
        static Track of(RodSeries rod, CastPlane plane, double rodPx) {
            double sign = rod.side() == Side.RIGHT ? 1 : -1;
            double[] x = new double[rod.size()];
            double[] y = new double[rod.size()];
            for (int i = 0; i < x.length; i++) {
                Point at = plane.metres(new Point(sign * rod.rigX()[i], -rod.rigY()[i]));
                x[i] = sign * at.x() * rodPx;
                y[i] = at.y() * rodPx;
            }
            return new Track(rod.time(), x, y, rod.rigSd());
        }
    }

    private static Launch measured(Track track, int[] flight, double at, Scale scale, double viewSd) {
        double[] t = IntStream.of(flight).mapToDouble(i -> track.time[i]).toArray();
        double fall = scale.known() ? 0.5 * GRAVITY / scale.metresPerPixel() : 0;
        double[] x = new double[t.length];
        double[] y = new double[t.length];
        double[] sd = new double[t.length];
        for (int k = 0; k < t.length; k++) {
            int i = flight[k];
            x[k] = track.x[i];
            y[k] = track.y[i] + fall * (t[k] - at) * (t[k] - at);
            sd[k] = Math.max(0.2, track.sd[i] / Math.sqrt(2));
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
        String basis = "the rig's path in its first " + t.length
                + " frames of flight, the phone's angle undone as far as the rod tells it, "
                + (scale.known() ? "gravity taken out" : "gravity left in, since no length in metres is known");
        double slowed = DRAG_PER_SECOND * middle;
        double viewed = REACH * 2 * viewSd;
        double gravityDeg = scale.known() ? 0 : 1.5 * middle / 0.1;
        return new Launch(
                new Found(
                        speed * (1 + slowed),
                        Math.hypot(along, speed * Math.hypot(viewed, DRAG_SD_PER_SECOND * middle)),
                        basis),
                new Found(
                        Math.toDegrees(Math.atan2(vy, vx)),
                        Math.hypot(
                                Math.hypot(Math.toDegrees(across / speed), CAMERA_DEG),
                                Math.hypot(gravityDeg, Math.toDegrees(0.5 * viewed))),
                        basis));
    }

    /** The frames that lie on one path: a line through the middle of them all, from which strays are left out. */
    private static int[] onThePath(Track track, int[] flight) {
        if (flight.length <= LEAST_FRAMES) {
            return flight;
        }
        RobustLine x = line(track, flight, track.x);
        RobustLine y = line(track, flight, track.y);
        return IntStream.of(flight)
                .filter(i -> Math.hypot(track.x[i] - x.at(track.time[i]), track.y[i] - y.at(track.time[i]))
                        <= STRAY * (Math.hypot(x.scatter(), y.scatter()) + track.sd[i]))
                .toArray();
    }

    /**
     * Whether a flight, drawn back, begins near where the rig was when it was last seen before the release: else another thing was followed.
     * In between the rig was on its way round the tip, which leaves the line it flies off along by the square of the time. Nothing can be
     * said where it was not seen shortly before.
     */
    private static boolean goesOnFrom(Track track, int[] flight, Found release) {
        int last = IntStream.range(0, track.time.length)
                .filter(i -> track.time[i] < release.value() - release.sd() && !Double.isNaN(track.x[i]))
                .max()
                .orElse(-1);
        if (last < 0 || release.value() - track.time[last] > LONGEST_BEFORE_SECONDS) {
            return true;
        }
        RobustLine x = line(track, flight, track.x);
        RobustLine y = line(track, flight, track.y);
        double at = track.time[last];
        double off = Math.hypot(track.x[last] - x.at(at), track.y[last] - y.at(at));
        double speed = Math.hypot(x.slope(), y.slope());
        double since = track.time[flight[0]] - at;
        return off <= ROUND * speed * since + STRAY * track.sd[last];
    }

    private static RobustLine line(Track track, int[] flight, double[] places) {
        return RobustLine.fit(
                IntStream.of(flight).mapToDouble(i -> track.time[i]).toArray(),
                IntStream.of(flight).mapToDouble(i -> places[i]).toArray());
    }

    /** The frames of the first piece of flight in which the rig is seen, without a long gap. */
    private static int[] flight(Track track, double step, double release) {
        int[] seen = IntStream.range(0, track.time.length)
                .filter(i -> track.time[i] >= release + CLEAR_FRAMES * step
                        && track.time[i] <= release + LONGEST_SECONDS
                        && !Double.isNaN(track.x[i]))
                .toArray();
        int n = 0;
        double last = release;
        while (n < seen.length && track.time[seen[n]] - last <= Math.max(LONGEST_GAP_SECONDS, 2.5 * step)) {
            last = track.time[seen[n]];
            n++;
        }
        return Arrays.copyOf(seen, n);
    }
}
