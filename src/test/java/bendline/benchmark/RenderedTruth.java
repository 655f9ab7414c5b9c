package bendline.benchmark;

import bendline.geometry.Homography;
import bendline.geometry.Point;
import bendline.geometry.Polyline;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Map.Entry;
import java.util.TreeMap;

/**
 * Reads the truth beside clips of a second simulator ("castclip-truth"). Its pixel centres lie at whole numbers, ours at
 * halves; its exposure is centred on the presentation time, as ours is.
 */
public final class RenderedTruth {

    private static final double TO_OUR_CENTRES = 0.5;

    /** That simulator's word for a fault and ours. */
    private static final Map<String, String> FAULTS = Map.of(
            "rushed_flat_backswing", "flat-rushed-backswing",
            "tip_drop", "tip-dropped-early",
            "early_release", "released-early",
            "late_release", "released-late",
            "soft_power", "under-compressed");

    private RenderedTruth() {}

    /** Whether a JSON file is of this kind. */
    public static boolean isIt(JsonNode root) {
        return root.path("schema").asText().equals("castclip-truth");
    }

    /**
     * @throws IOException if the file cannot be read
     */
    public static TruthClip read(Path json) throws IOException {
        return read(new ObjectMapper().readTree(json.toFile()));
    }

    static TruthClip read(JsonNode root) {
        List<TruthCast> casts = new ArrayList<>();
        for (int i = 0; i < root.path("events").size(); i++) {
            casts.add(cast(root.path("events").get(i), root.path("casts").get(i)));
        }
        double release = casts.isEmpty()
                ? Double.POSITIVE_INFINITY
                : casts.get(0).events().get("release");
        List<TruthFrame> frames = new ArrayList<>();
        for (JsonNode frame : root.path("frames")) {
            frames.add(frame(frame, release));
        }
        JsonNode video = root.path("video");
        return new TruthClip(
                root.path("case").asText(),
                video.path("width").asInt(),
                video.path("height").asInt(),
                frames,
                casts);
    }

    private static TruthCast cast(JsonNode events, JsonNode cast) {
        Map<String, Double> seconds = new TreeMap<>();
        for (Entry<String, JsonNode> e : events.properties()) {
            if (e.getValue().isNumber()) {
                seconds.put(e.getKey(), e.getValue().asDouble());
            }
        }
        Map<String, String> faults = new HashMap<>();
        for (Entry<String, JsonNode> e : cast.path("faults").properties()) {
            faults.put(FAULTS.getOrDefault(e.getKey(), e.getKey()), e.getValue().asText());
        }
        JsonNode measures = cast.path("measures");
        return new TruthCast(
                seconds,
                faults,
                measures.path("launch_speed_m_s").asDouble(Double.NaN),
                measures.path("launch_angle_deg").asDouble(Double.NaN));
    }

    private static TruthFrame frame(JsonNode f, double release) {
        double seconds = f.path("pts_s").asDouble();
        List<Point> points = new ArrayList<>();
        for (JsonNode p : f.path("rod_px")) {
            points.add(point(p));
        }
        Polyline rod = SmoothCurve.through(points);
        Point grip = point(f.path("grip_px"));
        return new TruthFrame(
                seconds,
                point(f.path("tip_px")),
                f.path("tip_in_frame").asBoolean(),
                f.path("rig_px").isArray() ? point(f.path("rig_px")) : null,
                f.path("rig_visible").asBoolean(),
                seconds < release,
                grip,
                rod,
                SmoothCurve.from(rod, grip),
                f.path("butt_angle_deg").asDouble(),
                f.path("chord_ratio").asDouble(),
                camera(f.path("homography")));
    }

    private static Point point(JsonNode pair) {
        return new Point(pair.get(0).asDouble() + TO_OUR_CENTRES, pair.get(1).asDouble() + TO_OUR_CENTRES);
    }

    private static Homography camera(JsonNode nine) {
        double[] n = new double[8];
        for (int i = 0; i < n.length; i++) {
            n[i] = nine.get(i).asDouble() / nine.get(8).asDouble();
        }
        Homography theirs = new Homography(n[0], n[1], n[2], n[3], n[4], n[5], n[6], n[7]);
        return Homography.shift(-TO_OUR_CENTRES, -TO_OUR_CENTRES)
                .then(theirs)
                .then(Homography.shift(TO_OUR_CENTRES, TO_OUR_CENTRES));
    }
}
