package bendline.stroke;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.trace.Trace;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
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

    /** One minus the smallest distance from hand to tip over the free length, in metres, forward start to release. */
    public double deepestCompression() {
        double smallest = 1;
        for (JsonNode f : root.path("frames")) {
            double t = f.path("pts_s").asDouble();
            if (t >= event(EventKind.FORWARD_START) && t <= event(EventKind.RELEASE)) {
                double dx = f.path("tip_m").get(0).asDouble()
                        - f.path("grip_m").get(0).asDouble();
                double dy = f.path("tip_m").get(1).asDouble()
                        - f.path("grip_m").get(1).asDouble();
                smallest = Math.min(smallest, Math.hypot(dx, dy) / freeLengthM());
            }
        }
        return 1 - smallest;
    }

    /**
     * A trace with errors of a known size.
     *
     * @param sd of each coordinate, pixels
     * @param dropped share of frames in which nothing is seen
     */
    public Trace trace(double sd, double dropped, long seed) {
        JsonNode video = root.path("video");
        NoisyTrace out =
                new NoisyTrace(video.path("width").asInt(), video.path("height").asInt(), sd, dropped, seed);
        for (JsonNode f : root.path("frames")) {
            double[] back = inverse(f.path("homography"));
            boolean rig = f.path("rig_visible").asBoolean();
            out.add(
                    f.path("pts_s").asDouble(),
                    blank(f, back),
                    f.path("tip_in_frame").asBoolean(),
                    rig ? pixel(f.path("rig_px"), back) : null,
                    f.path("chord_ratio").asDouble());
        }
        return out.trace();
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
