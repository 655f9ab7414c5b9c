package bendline.report;

import bendline.analysis.CastAnalysis;
import bendline.analysis.ClipAnalysis;
import bendline.analysis.Quality;
import bendline.footage.ClipInfo;
import bendline.footage.ClipWriter;
import bendline.footage.ClipWriterSettings;
import bendline.footage.SlowMotion;
import bendline.geometry.Homography;
import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.scene.CameraMotion;
import bendline.scene.Setup;
import bendline.scene.Setup.Side;
import bendline.stroke.Bend;
import bendline.stroke.BendArc;
import bendline.stroke.Event;
import bendline.stroke.EventKind;
import bendline.stroke.Kinematics;
import bendline.stroke.LoadCurve;
import bendline.stroke.Measure;
import bendline.stroke.Stroke;
import bendline.technique.Finding;
import bendline.technique.Finding.Check;
import bendline.technique.Finding.State;
import bendline.technique.Review;
import bendline.trace.FrameTrace;
import bendline.trace.Trace;
import bendline.trace.Tracked;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * A cast whose motion is written down as formulas, with the clip that shows it: for testing the writers without any of the
 * stages before them. A blank of constant curvature, 4 s at 60 frames a second, 640x360, going to the right.
 */
final class AnalyticCast {

    static final int FRAMES = 240;
    static final double RATE = 60;
    static final int WIDTH = 640;
    static final int HEIGHT = 360;
    static final double FREE_PX = 190;
    static final double FREE_M = 3.2;

    /** Frames in which tip and blank are "not seen". */
    static final int GAP_FROM = 150;

    static final int GAP_TO = 152;

    private AnalyticCast() {}

    static double seconds(int frame) {
        return frame / RATE;
    }

    static double buttAngle(double t) {
        double back = 85 * ease((t - 0.5) / 1.3);
        double forward = -110 * ease((t - 2.3) / 0.35);
        double drop = -25 * ease((t - 2.7) / 0.25);
        return Math.toRadians(65 + back + forward + drop);
    }

    /** Total turn of the blank from grip to tip, radians; the tip lags behind. */
    static double bend(double t) {
        double u = (t - 2.52) / 0.12;
        return 1.5 * Math.exp(-u * u);
    }

    static double chordRatio(double t) {
        double half = bend(t) / 2;
        return half < 1e-6 ? 1 : Math.sin(half) / half;
    }

    static Point grip(double t) {
        return new Point(300 + 40 * ease((t - 2.2) / 0.4), 235 - 10 * ease((t - 2.2) / 0.4));
    }

    static Polyline blank(double t) {
        List<Point> points = new ArrayList<>();
        Point p = grip(t);
        int n = 24;
        for (int i = 0; i <= n; i++) {
            points.add(p);
            double angle = buttAngle(t) + bend(t) * (i + 0.5) / n;
            p = p.plus(new Point(Math.cos(angle), -Math.sin(angle)).times(FREE_PX / n));
        }
        return new Polyline(points);
    }

    static Point rig(double t) {
        double released = Math.max(0, t - 2.6);
        Point tip = blank(Math.min(t, 2.6)).last();
        return released == 0
                ? tip.plus(new Point(-8 * Math.sin(3 * t), 38))
                : tip.plus(new Point(1500 * released, 38 - 700 * released + 300 * released * released));
    }

    private static double ease(double x) {
        double c = Math.max(0, Math.min(1, x));
        return c * c * (3 - 2 * c);
    }

    static ClipAnalysis analysis(Path clip) {
        return new ClipAnalysis(
                clip, info(), setup(), trace(), quality(), List.of(new CastAnalysis(stroke(), review())));
    }

    static ClipAnalysis withoutCast(Path clip) {
        Trace none = new Trace(
                WIDTH,
                HEIGHT,
                IntStream.range(0, FRAMES).mapToObj(AnalyticCast::unseen).toList(),
                still(),
                Double.NaN,
                Double.NaN,
                "no thin line moves with the hands");
        Quality q = new Quality(
                60,
                0.0048,
                false,
                0.2,
                true,
                FRAMES,
                0,
                0,
                0,
                Double.NaN,
                List.of("No cast is reported: no thin line moves with the hands."),
                List.of("Film one whole cast from the side."));
        return new ClipAnalysis(clip, info(), Setup.NONE, none, q, List.of());
    }

    private static ClipInfo info() {
        return new ClipInfo(
                WIDTH,
                HEIGHT,
                FRAMES,
                FRAMES / RATE,
                0,
                false,
                new SlowMotion(1, "no sign of slow motion in the file"),
                IntStream.range(0, FRAMES).mapToObj(AnalyticCast::seconds).toList(),
                List.of("The sound was not used."));
    }

    private static Setup setup() {
        return new Setup(3.9, FREE_M, null, 0.09, Side.RIGHT, null, List.of());
    }

    private static CameraMotion still() {
        return new CameraMotion(
                IntStream.range(0, FRAMES).mapToObj(i -> Homography.IDENTITY).toList(), 0.2, true);
    }

    private static FrameTrace unseen(int frame) {
        Tracked nothing = Tracked.notSeen(null, "no rod was found");
        return new FrameTrace(frame, seconds(frame), nothing, nothing, nothing, null, Double.NaN);
    }

    private static Trace trace() {
        return new Trace(
                WIDTH,
                HEIGHT,
                IntStream.range(0, FRAMES).mapToObj(AnalyticCast::frame).toList(),
                still(),
                FREE_PX,
                1.5,
                null);
    }

    private static FrameTrace frame(int i) {
        double t = seconds(i);
        Polyline blank = blank(t);
        boolean gap = i >= GAP_FROM && i <= GAP_TO;
        Point rig = rig(t);
        boolean rigInView = rig.x() < WIDTH && rig.y() > 0;
        return new FrameTrace(
                i,
                t,
                Tracked.seen(grip(t), 0.8),
                gap ? Tracked.notSeen(blank.last(), "hidden") : Tracked.seen(blank.last(), 0.6),
                rigInView ? Tracked.seen(rig, 1.5) : Tracked.notSeen(null, "out of the picture"),
                gap ? null : blank,
                gap ? Double.NaN : 0.01);
    }

    private static Quality quality() {
        return new Quality(
                60,
                0.0048,
                false,
                0.2,
                true,
                180,
                0.98,
                0.98,
                0.7,
                0.6,
                List.of(
                        "Filmed at 60 frames a second: one picture every 16.7 ms, so a moment read off the frames is good"
                                + " to about ± 4.8 ms.",
                        "The phone stood still.",
                        "Of the 180 frames of the cast the blank was found in 98 %, the tip in 98 % and the rig in 70 %."),
                List.of("Set the phone to 120 or 240 frames a second if it can: the forward stroke is over in a few"
                        + " tenths of a second."));
    }

    private static Stroke stroke() {
        int first = 24;
        int last = 220;
        int n = last - first + 1;
        double[] t = IntStream.range(0, n).mapToDouble(i -> seconds(first + i)).toArray();
        double[] speedPx = new double[n];
        double[] rate = new double[n];
        for (int i = 0; i < n; i++) {
            double h = 1e-3;
            speedPx[i] = blank(t[i] + h).last().distance(blank(t[i] - h).last()) / (2 * h);
            rate[i] = (buttAngle(t[i] + h) - buttAngle(t[i] - h)) / (2 * h);
        }
        double[] angle = map(t, AnalyticCast::buttAngle);
        double[] chord = map(t, AnalyticCast::chordRatio);
        for (int i = GAP_FROM - first; i <= GAP_TO - first; i++) {
            chord[i] = Double.NaN;
        }
        Kinematics k = new Kinematics(
                first,
                t,
                t.clone(),
                angle,
                map(t, x -> 0.012),
                rate,
                chord,
                map(t, x -> 0.006),
                speedPx,
                map(speedPx, v -> v * FREE_M / FREE_PX));
        return new Stroke(1, Side.RIGHT, first, last, k, events(), measures(), bend(), null);
    }

    /** The arcs about the forward stroke in metres, with a pull and an energy that follow the bend. */
    private static Bend bend() {
        Point origin = grip(2.31);
        List<BendArc> arcs = new ArrayList<>();
        for (FrameTrace f : trace().frames()) {
            if (f.blank() != null && f.seconds() > 2.15 && f.seconds() < 2.85) {
                arcs.add(new BendArc(
                        f.frame(),
                        f.seconds(),
                        f.seconds(),
                        f.blank().map(p -> new Point(p.x() - origin.x(), origin.y() - p.y()).times(FREE_M / FREE_PX)),
                        0.01,
                        true,
                        null));
            }
        }
        double[] t = arcs.stream().mapToDouble(BendArc::clipSeconds).toArray();
        double[] pull = map(t, x -> 18 * bend(x) / 1.5);
        double[] energy = map(t, x -> 14 * bend(x) * bend(x) / 2.25);
        double[] some = map(t, x -> 0.6);
        LoadCurve load = new LoadCurve(
                t, t, pull, some, some, some, energy, some, some, pull, "stiffness from a test curve of 1.20 kg", 0);
        return new Bend(arcs, true, "the phone taken to stand square", load);
    }

    private static double[] map(double[] x, java.util.function.DoubleUnaryOperator f) {
        return java.util.Arrays.stream(x).map(f).toArray();
    }

    private static Map<EventKind, Event> events() {
        Map<EventKind, Event> out = new EnumMap<>(EventKind.class);
        event(out, EventKind.BACKSWING_START, 0.57);
        event(out, EventKind.BACKSWING_END, 1.73);
        event(out, EventKind.REARMOST, 2.28);
        event(out, EventKind.FORWARD_START, 2.31);
        event(out, EventKind.FASTEST_TURN, 2.475);
        event(out, EventKind.PEAK_BEND, 2.52);
        event(out, EventKind.STOP, 2.615);
        event(out, EventKind.RELEASE, 2.6);
        event(out, EventKind.ROD_STRAIGHT, 2.68);
        event(out, EventKind.TIP_LOWEST, 2.96);
        out.put(
                EventKind.CLIP_NOD,
                Event.unknown(EventKind.CLIP_NOD, "the clip ends before the line could come tight"));
        return out;
    }

    private static void event(Map<EventKind, Event> into, EventKind kind, double seconds) {
        into.put(
                kind,
                new Event(kind, seconds, 0.004, (int) Math.floor(seconds * RATE), "the butt angle between two frames"));
    }

    private static List<Measure> measures() {
        return List.of(
                new Measure("tempo", "Backswing time over forward time", "1", 4.0, 0.15, "two pairs of events"),
                new Measure("settle", "Time between backswing and forward stroke", "s", 0.58, 0.006, "two events"),
                new Measure(
                        "buttFall", "Fall of the rod after release", "deg", 25.0, 0.9, "butt angle, release to lowest"),
                new Measure("peakCompression", "Most compression", "1", 0.09, 0.01, "chord over free length"),
                Measure.unknown("rigDrop", "Drop", "m", "the rig was not seen hanging still"));
    }

    private static Review review() {
        Finding dropped = new Finding(
                "tip-dropped-early",
                "The tip was dropped too early",
                State.FOUND,
                0.7,
                List.of(
                        new Check(measures().get(2), 12, true, State.FOUND),
                        new Check(measures().get(4), 0.2, false, State.CANNOT_TELL)),
                List.of(156, 166, 177),
                "The rod falls far under its held angle.",
                "Within 0.36 s of release the rod fell by 25° ± 1°, before the line could run freely.",
                "Line rubs on every ring while it should be running off, which costs distance and steers the rig.",
                "Cast at half power and hold the rod where it was at release until the rig lands.");
        Finding flat = new Finding(
                "flat-rushed-backswing",
                "Flat, rushed backswing",
                State.CLEAR,
                0,
                List.of(new Check(measures().get(0), 2.0, false, State.CLEAR)),
                List.of(103, 138),
                "",
                "The backswing took 4.0 times as long as the forward stroke, and the rod settled for 0.58 s.",
                "A rushed backswing leaves the line slack.",
                "Count to two behind.");
        Finding clip = new Finding(
                "soft-clip",
                "Line soft on the clip",
                State.CANNOT_TELL,
                0,
                List.of(),
                List.of(),
                "",
                "The clip ends before the line could come tight.",
                "",
                "");
        return new Review(
                List.of(dropped, flat, clip),
                List.of("Time to settle behind: 0.58 s."),
                dropped,
                "It is the only fault found, and it costs distance on every cast.");
    }

    /** Writes the clip that shows this cast. */
    static Path render(Path file) {
        try (ClipWriter writer = new ClipWriter(file, WIDTH, HEIGHT, ClipWriterSettings.of(RATE, 2_000_000))) {
            for (int i = 0; i < FRAMES; i++) {
                writer.write(picture(seconds(i)), seconds(i));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return file;
    }

    private static BufferedImage picture(double t) {
        BufferedImage image = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_3BYTE_BGR);
        Graphics2D g = image.createGraphics();
        g.setColor(new Color(168, 190, 205));
        g.fillRect(0, 0, WIDTH, 270);
        g.setColor(new Color(88, 104, 74));
        g.fillRect(0, 270, WIDTH, HEIGHT - 270);
        g.setColor(new Color(52, 60, 70));
        Point grip = grip(t);
        g.fillOval((int) grip.x() - 40, (int) grip.y() - 30, 24, 28);
        g.fillRoundRect((int) grip.x() - 48, (int) grip.y() - 2, 40, 80, 16, 16);
        g.setStroke(new BasicStroke(3));
        g.setColor(new Color(30, 26, 24));
        List<Point> line = blank(t).points();
        for (int i = 0; i + 1 < line.size(); i++) {
            g.drawLine(
                    (int) line.get(i).x(),
                    (int) line.get(i).y(),
                    (int) line.get(i + 1).x(),
                    (int) line.get(i + 1).y());
        }
        Point rig = rig(t);
        g.fillOval((int) rig.x() - 4, (int) rig.y() - 6, 8, 12);
        g.dispose();
        return image;
    }
}
