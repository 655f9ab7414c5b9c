package bendline.benchmark;

import bendline.benchmark.TraceNoise.Part;
import bendline.geometry.Homography;
import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.scene.CameraMotion;
import bendline.signal.LocalPolynomial;
import bendline.trace.FrameTrace;
import bendline.trace.Trace;
import bendline.trace.Tracked;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;

/** A trace as the tracker would give it of a clip of which only the truth is there: with the errors it made on another. */
final class NoisyFilm {

    private static final double FAST_SECONDS = 0.4;

    /** A tip that smears over so many pixels is placed worse; its error grows with the square root of the smear over this. */
    private static final double SMEAR_PX = 12;

    private final TruthClip truth;
    private final TraceNoise noise;
    private final double slow;
    private final double step;
    private final Random random;
    private final Error tipX;
    private final Error tipY;
    private final Error butt;
    private final Error rigX;
    private final Error rigY;
    private final Error flight;
    private final Error hand;
    private final Polyline straight;

    private final double exposed;

    private NoisyFilm(TruthClip truth, TraceNoise noise, double slow, double exposed, long seed) {
        this.truth = truth;
        this.noise = noise;
        this.slow = slow;
        this.exposed = exposed;
        this.step = truth.frames().get(1).seconds() - truth.frames().get(0).seconds();
        this.random = new Random(seed);
        this.tipX = new Error(noise.tip());
        this.tipY = new Error(noise.tip());
        this.butt = new Error(noise.butt());
        this.rigX = new Error(noise.rig());
        this.rigY = new Error(noise.rig());
        this.flight = new Error(noise.flight());
        this.hand = new Error(noise.hand());
        this.straight = truth.frames().stream()
                .filter(f -> f.blank() != null)
                .max((a, b) -> Double.compare(a.chordRatio(), b.chordRatio()))
                .map(TruthFrame::blank)
                .orElseThrow();
    }

    /**
     * The trace.
     *
     * @param truth of a phone that stands still
     * @param noise the tracker's errors
     * @param slow clip time over real time
     * @param exposed share of the time between frames in which each gathers light, 0 to 1
     */
    static Trace of(TruthClip truth, TraceNoise noise, double slow, double exposed, long seed) {
        return new NoisyFilm(truth, noise, slow, exposed, seed).trace();
    }

    /** Direction of a blank at the grip, radians: a parabola through its lower third. */
    static double direction(Polyline blank) {
        int n = 9;
        double[] s = new double[n];
        double[] x = new double[n];
        double[] y = new double[n];
        double[] one = new double[n];
        for (int i = 0; i < n; i++) {
            s[i] = blank.length() * 0.35 * i / (n - 1);
            Point p = blank.at(s[i]);
            x[i] = p.x();
            y[i] = p.y();
            one[i] = 1;
        }
        return Math.atan2(
                LocalPolynomial.fit(s, y, one, 0, 2).derivative(0, 1),
                LocalPolynomial.fit(s, x, one, 0, 2).derivative(0, 1));
    }

    private Trace trace() {
        List<FrameTrace> frames = new ArrayList<>();
        for (int i = 0; i < truth.frames().size(); i++) {
            frames.add(frame(i));
        }
        CameraMotion still = new CameraMotion(Collections.nCopies(frames.size(), Homography.IDENTITY), 0, true);
        double length = straight.length();
        return new Trace(truth.width(), truth.height(), frames, still, length, 0.004 * length, null);
    }

    private FrameTrace frame(int i) {
        TruthFrame f = truth.frames().get(i);
        Polyline blank = f.blank();
        Point tip = f.tip();
        if (blank == null || tip == null) {
            Tracked none = Tracked.notSeen(null, "nobody is there");
            return new FrameTrace(i, f.seconds(), none, none, none, null, Double.NaN);
        }
        boolean fast = truth.casts().stream()
                .anyMatch(c -> Math.abs(c.events().get("release") - f.seconds()) < FAST_SECONDS * slow);
        for (Error e : List.of(tipX, tipY, butt, rigX, rigY, flight, hand)) {
            e.next(fast, step / slow);
        }
        boolean lost = butt.gap;
        boolean tipSeen = f.tipInView() && !tipX.gap && !lost;
        double smear = Math.sqrt(1 + exposed * Math.hypot(speed(i).x(), speed(i).y()) / SMEAR_PX);
        Point at = tip.plus(new Point(smear * tipX.value(), smear * tipY.value()).plus(tipX.strayed(random)));
        Point grip = blank.first().plus(new Point(hand.value(), 0));
        Polyline bent = bent(
                blank,
                grip,
                at,
                Math.toRadians(butt.value() + butt.strayed(random).x()));
        Tracked rig = rig(f);
        double tipSd = 1.515 * smear * noise.tip().sd() * noise.tip().stated();
        return new FrameTrace(
                i,
                f.seconds(),
                lost
                        ? Tracked.notSeen(null, "lost")
                        : Tracked.seen(
                                bent.first(),
                                1.515 * noise.hand().sd() * noise.hand().stated()),
                tipSeen ? Tracked.seen(bent.last(), Math.max(0.15, tipSd)) : Tracked.notSeen(tip, "lost or outside"),
                rig,
                lost ? null : bent,
                Math.toRadians(Math.max(0.03, noise.butt().sd() * noise.butt().stated())));
    }

    private Tracked rig(TruthFrame f) {
        Point rig = f.rig();
        boolean gap = f.rigHeld() ? rigX.gap : flight.gap;
        if (rig == null || !f.rigInView() || gap) {
            return Tracked.notSeen(null, "lost or outside");
        }
        Part p = noise.rig();
        return Tracked.seen(
                rig.plus(new Point(rigX.value(), rigY.value()).plus(rigX.strayed(random))),
                Math.max(0.15, 1.515 * p.sd() * p.stated()));
    }

    private Point speed(int i) {
        Point a = truth.frames().get(Math.max(0, i - 1)).tip();
        Point b = truth.frames().get(Math.min(truth.frames().size() - 1, i + 1)).tip();
        return a == null || b == null ? new Point(0, 0) : b.minus(a).times(0.5);
    }

    /** The blank with its tip and grip moved and its direction at the grip turned. */
    private static Polyline bent(Polyline truth, Point grip, Point tip, double turned) {
        Point atGrip = grip.minus(truth.first());
        Point atTip = tip.minus(truth.last());
        List<Point> out = new ArrayList<>();
        double length = truth.length();
        for (int k = 0; k <= 24; k++) {
            double u = k / 24.0;
            Point along = truth.tangentAt(u * length);
            Point across = new Point(-along.y(), along.x()).times(turned * length * u * (1 - u) * (1 - u));
            out.add(truth.at(u * length)
                    .plus(across)
                    .plus(atGrip.times((1 - u) * (1 - u)))
                    .plus(atTip.times(u * u)));
        }
        return new Polyline(out);
    }

    /** One coordinate's error as it goes on from frame to frame. */
    private final class Error {

        private final Part part;
        private double drift;
        private double white;
        private boolean gap;
        private boolean stray;
        private Point way = new Point(0, 0);

        Error(Part part) {
            this.part = part;
            this.drift = random.nextGaussian();
        }

        void next(boolean fast, double dt) {
            double keep = Math.exp(-dt / Math.max(1e-3, part.driftSeconds()));
            drift = keep * drift + Math.sqrt(1 - keep * keep) * random.nextGaussian();
            white = random.nextGaussian();
            gap = goesOn(gap, fast ? part.fastGap() : part.calmGap(), part.gapSeconds(), dt);
            boolean before = stray;
            stray = goesOn(stray, fast ? part.fastStray() : part.calmStray(), part.straySeconds(), dt);
            if (stray && !before) {
                double turn = 2 * Math.PI * random.nextDouble();
                double far = part.stray() * Math.exp(0.7 * random.nextGaussian());
                way = new Point(far * Math.cos(turn), far * Math.sin(turn));
            }
        }

        double value() {
            return part.sd() * (Math.sqrt(part.drifting()) * drift + Math.sqrt(1 - part.drifting()) * white);
        }

        /** What a stray adds; it is not still either. */
        Point strayed(Random random) {
            return stray ? way.times(1 + 0.1 * random.nextGaussian()) : new Point(0, 0);
        }

        /** A state that holds a share of the time, in stretches of a mean length. */
        private boolean goesOn(boolean in, double share, double seconds, double dt) {
            if (!(share > 0) || !(seconds > 0)) {
                return false;
            }
            double end = Math.min(1, dt / Math.max(dt, seconds));
            double start = share >= 1 ? 1 : Math.min(1, end * share / (1 - share));
            return in ? random.nextDouble() >= end : random.nextDouble() < start;
        }
    }
}
