package bendline.stroke;

import bendline.geometry.Point;
import bendline.scene.Setup;
import bendline.signal.LocalPolynomial;
import bendline.signal.Oscillation;
import bendline.signal.PolynomialFit;
import bendline.trace.FrameTrace;
import bendline.trace.Trace;
import bendline.trace.Tracked;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * What gravity tells of a clip's time: a rig that hangs swings with the period of a pendulum as long as its drop, and a rig
 * that flies is pulled down by 9.81 m/s². Both show at once where a slowed clip is taken for real time, or the reverse.
 */
public final class Gravity {

    /** Standard acceleration of free fall, CGPM 1901, m/s². */
    public static final double STANDARD = 9.80665;

    /**
     * Usual drop and free length where the user gives none, and how far from that people's are. Common practice, no source:
     * drops of 0.7 to 1.8 m, rods of 3.3 to 4.2 m with 2.7 to 3.5 m of them above the upper hand.
     */
    private static final double USUAL_DROP_M = 1.2;

    private static final double USUAL_DROP_SD = 0.4;

    /** Upper hand to tip where the user does not say, metres; common practice, no source. */
    public static final double USUAL_FREE_M = 3.1;

    private static final double USUAL_FREE_SD = 0.15;

    /** A given drop ends where the rig begins, not at its middle; and the tip gives way a little under the swing. */
    private static final double DROP_SD = 0.05;

    private static final double PENDULUM_SD = 0.03;

    /** Where the rod's tip and the rig's weight lie is seen worse than how they move. */
    private static final double SEEN_DROP_SD = 0.08;

    /** How far the tip of a waiting rod may wander, free lengths, and how far from plumb a rig hangs, radians. */
    private static final double STILL = 0.05;

    private static final double NEARLY_PLUMB = Math.toRadians(35);

    /** Least swing that is told from jitter, radians, and how many periods and what share of the movement it must be. */
    private static final double LEAST_SWING = 0.01;

    private static final double LEAST_PERIODS = 1.2;

    /** How much more the rig must move than the tip: a rod that trembles swings the line too, but at the rod's own rate. */
    private static final double OWN_SWING = 3;

    private static final double LEAST_EXPLAINED = 0.7;
    private static final int LONGEST_GAP = 12;
    private static final int LEAST_FRAMES = 12;
    private static final double FRAMES_PER_PERIOD = 6;
    /** Decay over the whole stretch, in powers of e. */
    private static final double[] DECAYS = {0, 0.7, 2};

    /**
     * Drag pulls a climbing rig down too: what pulls it is between one and about two times gravity (a 40 g feeder at 35 m/s, 45°
     * upwards; common practice for the speed, no source).
     */
    private static final double FALL = 1.4;

    private static final double FALL_SD = 0.28;
    private static final int LEAST_FLIGHT = 6;
    private static final double CLEAR = 4;

    /** Frames after the release in which the line may still be held, and how much rougher than the rig's radii a path may be. */
    private static final int AFTER_RELEASE = 2;

    private static final double SMOOTH = 1.5;

    private Gravity() {}

    /** What the rig tells while it hangs, or null where it does not swing clearly for long enough. */
    public static @Nullable Pace hanging(Trace trace, Setup setup) {
        List<FrameTrace> still = waiting(trace);
        if (still.size() < LEAST_FRAMES) {
            return null;
        }
        double[] t = still.stream().mapToDouble(FrameTrace::seconds).toArray();
        double[] angle = still.stream().mapToDouble(Gravity::fromPlumb).toArray();
        Oscillation swing = swing(t, angle);
        double[] tip = sideways(still, FrameTrace::tip);
        double[] rig = sideways(still, FrameTrace::rig);
        if (swing == null || dot(rig, rig) < OWN_SWING * OWN_SWING * dot(tip, tip)) {
            return null;
        }
        Found drop = drop(trace, setup, still);
        double angleFactor = 1 + swing.amplitude() * swing.amplitude() / 16;
        // A tip that follows the rig lifts the point about which the rig swings to above itself.
        double length = drop.value() / (1 - dot(rig, tip) / dot(rig, rig));
        double period = 2 * Math.PI * Math.sqrt(length / STANDARD) * angleFactor;
        double clip = 1 / swing.hz();
        return new Pace(
                clip / period,
                Math.hypot(swing.sdHz() / swing.hz(), Math.hypot(0.5 * drop.sd() / drop.value(), PENDULUM_SD)),
                String.format(
                        Locale.ROOT,
                        "the hanging rig swings once in %.2f s of the clip, a pendulum of %.2f m (%s) once in %.2f s",
                        clip,
                        length,
                        drop.basis(),
                        period));
    }

    /** A swing that is clear enough to be a pendulum's: of angles or lengths, in clip time; null if there is none. */
    static @Nullable Oscillation swing(double[] t, double[] angle) {
        double span = t[t.length - 1] - t[0];
        double step = span / (t.length - 1);
        double[] decays = Arrays.stream(DECAYS).map(d -> d / span).toArray();
        Oscillation swing = Oscillation.of(t, angle, 0.7 / span, 1 / (FRAMES_PER_PERIOD * step), decays);
        boolean clear = swing != null
                && swing.explained() > LEAST_EXPLAINED
                && swing.amplitude() > LEAST_SWING
                && swing.hz() * span > LEAST_PERIODS;
        return clear ? swing : null;
    }

    /**
     * What a flying rig tells, or null where too little of its path is seen.
     *
     * @param releaseSeconds clip time
     */
    public static @Nullable Pace flying(Trace trace, Setup setup, double releaseSeconds) {
        List<FrameTrace> flight = flight(trace, releaseSeconds);
        if (flight.size() < LEAST_FLIGHT) {
            return null;
        }
        double[] t = flight.stream().mapToDouble(FrameTrace::seconds).toArray();
        double[] down = flight.stream().mapToDouble(f -> f.rig().position().y()).toArray();
        double[] sd = flight.stream().mapToDouble(f -> f.rig().sdPx()).toArray();
        PolynomialFit path = LocalPolynomial.fit(t, down, sd, t[0], 3);
        if (path.excess() > SMOOTH) {
            return null;
        }
        Found fall = fall(t, down, sd);
        Scale scale = Scale.of(trace, setup);
        double metres = scale.known() ? scale.metresPerPixel() : USUAL_FREE_M / trace.freeLengthPx();
        double metresSd = scale.known() ? scale.relativeSd() : USUAL_FREE_SD;
        if (!(fall.value() > CLEAR * fall.sd())) {
            return null;
        }
        double seen = fall.value() * metres;
        double variance = sq(FALL_SD) + sq(fall.sd() / fall.value()) + sq(metresSd);
        return new Pace(
                Math.sqrt(FALL * STANDARD / seen),
                0.5 * Math.sqrt(variance),
                String.format(
                        Locale.ROOT,
                        "the flying rig is pulled down by %.3g m/s² of clip time, gravity and drag pull by about %.0f",
                        seen,
                        FALL * STANDARD));
    }

    /**
     * Acceleration of a fall, in the unit of the positions over squared time.
     *
     * @param down positions, growing downwards
     */
    static Found fall(double[] t, double[] down, double[] sd) {
        double middle = (t[0] + t[t.length - 1]) / 2;
        PolynomialFit path = LocalPolynomial.fit(t, down, sd, middle, 2);
        return new Found(
                path.derivative(middle, 2),
                path.sd(middle, 2) * Math.max(1, path.excess()),
                "a parabola through " + t.length + " frames");
    }

    /** Frames of free flight: without a gap, ever farther from the tip, until the rig is lost. */
    private static List<FrameTrace> flight(Trace trace, double releaseSeconds) {
        List<FrameTrace> out = new ArrayList<>();
        double last = 0;
        for (FrameTrace f : trace.frames()) {
            if (f.seconds() <= releaseSeconds || out.isEmpty() && !f.rig().seen()) {
                continue;
            }
            Point tip = f.tip().position();
            Point rig = f.rig().position();
            if (!f.rig().seen() || tip == null || rig.distance(tip) <= last) {
                break;
            }
            last = rig.distance(tip);
            out.add(f);
        }
        return out.size() > AFTER_RELEASE ? out.subList(AFTER_RELEASE, out.size()) : List.of();
    }

    /** The longest stretch in which the tip stands still and the rig hangs under it. */
    private static List<FrameTrace> waiting(Trace trace) {
        List<FrameTrace> longest = List.of();
        List<FrameTrace> run = new ArrayList<>();
        for (FrameTrace f : trace.frames()) {
            if (!f.tip().seen() || !f.rig().seen()) {
                continue;
            }
            boolean goesOn = !run.isEmpty()
                    && f.frame() - run.get(run.size() - 1).frame() <= LONGEST_GAP
                    && f.tip().position().distance(run.get(0).tip().position()) < STILL * trace.freeLengthPx();
            if (!goesOn || Math.abs(fromPlumb(f)) > NEARLY_PLUMB) {
                run = new ArrayList<>();
            }
            if (Math.abs(fromPlumb(f)) <= NEARLY_PLUMB) {
                run.add(f);
            }
            longest = run.size() > longest.size() ? run : longest;
        }
        return longest;
    }

    /** How a point moves to and fro sideways about a steady drift, pixels. */
    private static double[] sideways(List<FrameTrace> frames, Function<FrameTrace, Tracked> point) {
        double[] t = frames.stream().mapToDouble(FrameTrace::seconds).toArray();
        double[] x =
                frames.stream().mapToDouble(f -> point.apply(f).position().x()).toArray();
        double[] one = new double[t.length];
        Arrays.fill(one, 1);
        PolynomialFit drift = LocalPolynomial.fit(t, x, one, t[0], 1);
        return IntStream.range(0, t.length)
                .mapToDouble(i -> x[i] - drift.value(t[i]))
                .toArray();
    }

    private static double dot(double[] a, double[] b) {
        return IntStream.range(0, a.length).mapToDouble(i -> a[i] * b[i]).sum();
    }

    private static double fromPlumb(FrameTrace f) {
        Point line = f.rig().position().minus(f.tip().position());
        return Math.atan2(line.x(), line.y());
    }

    private static Found drop(Trace trace, Setup setup, List<FrameTrace> hanging) {
        Double given = setup.dropM();
        if (given != null) {
            return new Found(given, DROP_SD * given, "the given drop");
        }
        Scale scale = Scale.of(trace, setup);
        if (!scale.known()) {
            return new Found(USUAL_DROP_M, USUAL_DROP_SD * USUAL_DROP_M, "a usual drop; yours is not given");
        }
        double[] px = hanging.stream()
                .mapToDouble(f -> f.rig().position().distance(f.tip().position()))
                .sorted()
                .toArray();
        double drop = px[px.length / 2] * scale.metresPerPixel();
        return new Found(drop, Math.hypot(SEEN_DROP_SD, scale.relativeSd()) * drop, "the drop as seen");
    }

    private static double sq(double x) {
        return x * x;
    }
}
