package bendline.stroke;

import bendline.geometry.Homography;
import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.scene.CameraMotion;
import bendline.trace.FrameTrace;
import bendline.trace.Trace;
import bendline.trace.Tracked;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;

/** The truth files of casts rendered by another simulator, turned into traces as a tracker with known errors would give them. */
public final class RenderedTruth {

    private final JsonNode root;
    private final String name;

    private RenderedTruth(String name, JsonNode root) {
        this.name = name;
        this.root = root;
    }

    /** All truth files; skips the running test where they are absent. */
    public static List<RenderedTruth> all() {
        Path folder = Path.of(System.getProperty("bendline.shared", "../shared"), "rendered");
        Assumptions.assumeTrue(
                Files.isDirectory(folder), "no rendered clips beside this checkout, nothing to compare with");
        try (Stream<Path> files = Files.list(folder)) {
            List<RenderedTruth> out = new ArrayList<>();
            for (Path p :
                    files.filter(f -> f.toString().endsWith(".json")).sorted().toList()) {
                String name = p.getFileName().toString().replace(".json", "");
                out.add(new RenderedTruth(name, new ObjectMapper().readTree(p.toFile())));
            }
            return out;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public String name() {
        return name;
    }

    public JsonNode root() {
        return root;
    }

    /** Truth of an event of the first cast, clip seconds; NaN if there is none. */
    public double event(EventKind kind) {
        return root.path("events").path(0).path(kind.id()).asDouble(Double.NaN);
    }

    /** How strong a fault of the first cast is: none, borderline, mild or clear. */
    public String fault(String id) {
        JsonNode cast = root.path("casts").path(0);
        return cast.path("faults").path(id).asText("none");
    }

    public int casts() {
        return root.path("casts").size();
    }

    public double framesPerSecond() {
        return root.path("video").path("fps_stored").asDouble();
    }

    public double freeLengthM() {
        JsonNode rod = root.path("casts").path(0).path("rod");
        return rod.path("length_m").asDouble() - rod.path("handle_m").asDouble();
    }

    /**
     * A trace with independent errors on grip, tip and rig and a smooth error of the same size on the blank between them.
     *
     * @param sd of each coordinate, pixels
     * @param dropped share of frames in which nothing is seen
     */
    public Trace trace(double sd, double dropped, long seed) {
        Random random = new Random(seed);
        List<FrameTrace> frames = new ArrayList<>();
        List<Homography> still = new ArrayList<>();
        double length = 0;
        int counted = 0;
        JsonNode all = root.path("frames");
        for (int i = 0; i < all.size(); i++) {
            JsonNode f = all.get(i);
            double[] back = inverse(f.path("homography"));
            Polyline blank = blank(f, back);
            if (f.path("chord_ratio").asDouble() > 0.999) {
                length += blank.length();
                counted++;
            }
            frames.add(frame(i, f, blank, back, random, sd, random.nextDouble() < dropped));
            still.add(Homography.IDENTITY);
        }
        return new Trace(
                root.path("video").path("width").asInt(),
                root.path("video").path("height").asInt(),
                frames,
                new CameraMotion(still, 0, true),
                length / counted,
                sd,
                null);
    }

    private static FrameTrace frame(
            int i, JsonNode f, Polyline truth, double[] back, Random random, double sd, boolean dropped) {
        double seconds = f.path("pts_s").asDouble();
        if (dropped) {
            Tracked lost = Tracked.notSeen(null, "dropped on purpose");
            return new FrameTrace(i, seconds, lost, lost, lost, null, Double.NaN);
        }
        Point atGrip = noise(random, sd);
        Point atMiddle = noise(random, sd);
        Point atTip = noise(random, sd);
        List<Point> moved = new ArrayList<>();
        for (int k = 0; k <= 24; k++) {
            double u = k / 24.0;
            Point e = atGrip.times((1 - u) * (1 - 2 * u))
                    .plus(atMiddle.times(4 * u * (1 - u)))
                    .plus(atTip.times(u * (2 * u - 1)));
            moved.add(truth.at(u * truth.length()).plus(e));
        }
        Polyline blank = new Polyline(moved);
        double angleSd = Math.sqrt(26) * sd / truth.length();
        Tracked tip = f.path("tip_in_frame").asBoolean()
                ? Tracked.seen(blank.last(), 1.5 * sd)
                : Tracked.notSeen(blank.last(), "outside the picture");
        Tracked rig = f.path("rig_visible").asBoolean()
                ? Tracked.seen(pixel(f.path("rig_px"), back).plus(noise(random, 1.5 * sd)), 2.25 * sd)
                : Tracked.notSeen(null, "not in the picture");
        return new FrameTrace(i, seconds, Tracked.seen(blank.first(), 1.5 * sd), tip, rig, blank, angleSd);
    }

    private static Point noise(Random random, double sd) {
        return new Point(sd * random.nextGaussian(), sd * random.nextGaussian());
    }

    /** The drawn rod from the upper hand on. */
    private static Polyline blank(JsonNode f, double[] back) {
        List<Point> rod = new ArrayList<>();
        for (JsonNode p : f.path("rod_px")) {
            rod.add(pixel(p, back));
        }
        Point grip = pixel(f.path("grip_px"), back);
        List<Point> free = new ArrayList<>();
        free.add(grip);
        Point along = rod.get(4).minus(rod.get(0));
        for (Point p : rod) {
            if (p.minus(grip).dot(along) > 1 || free.size() > 1) {
                free.add(p);
            }
        }
        return new Polyline(free).resampled(49);
    }

    private static Point pixel(JsonNode p, double[] back) {
        double x = p.get(0).asDouble();
        double y = p.get(1).asDouble();
        double w = back[6] * x + back[7] * y + back[8];
        return new Point(
                (back[0] * x + back[1] * y + back[2]) / w + 0.5, (back[3] * x + back[4] * y + back[5]) / w + 0.5);
    }

    /** Inverse of a 3 × 3 matrix, row by row. */
    private static double[] inverse(JsonNode rows) {
        double[] m = new double[9];
        for (int i = 0; i < 9; i++) {
            m[i] = rows.get(i).asDouble();
        }
        double[] c = {
            m[4] * m[8] - m[5] * m[7], m[2] * m[7] - m[1] * m[8], m[1] * m[5] - m[2] * m[4],
            m[5] * m[6] - m[3] * m[8], m[0] * m[8] - m[2] * m[6], m[2] * m[3] - m[0] * m[5],
            m[3] * m[7] - m[4] * m[6], m[1] * m[6] - m[0] * m[7], m[0] * m[4] - m[1] * m[3]
        };
        double det = m[0] * c[0] + m[1] * c[3] + m[2] * c[6];
        for (int i = 0; i < 9; i++) {
            c[i] /= det;
        }
        return c;
    }
}
