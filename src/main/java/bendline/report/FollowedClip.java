package bendline.report;

import bendline.stroke.EventKind;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * What {@link FollowedJson} wrote, as far as it is needed to tell whether a correction can be.
 *
 * @param width pixels
 * @param height pixels
 * @param times clip seconds of the frames
 * @param casts clip seconds of the moments that are known, one map a cast
 */
public record FollowedClip(int width, int height, List<Double> times, List<Map<EventKind, Double>> casts) {

    /** Copies the lists. */
    public FollowedClip {
        times = List.copyOf(times);
        casts = List.copyOf(casts);
    }

    /** Reads the file. */
    public static FollowedClip read(Path file) {
        try {
            JsonNode root = new ObjectMapper().readTree(file.toFile());
            List<Double> times = new ArrayList<>();
            root.path("times").forEach(t -> times.add(t.asDouble()));
            List<Map<EventKind, Double>> casts = new ArrayList<>();
            for (JsonNode cast : root.path("casts")) {
                Map<EventKind, Double> moments = new EnumMap<>(EventKind.class);
                for (JsonNode e : cast.path("events")) {
                    EventKind.of(e.path("id").asText())
                            .ifPresent(
                                    kind -> moments.put(kind, e.path("seconds").asDouble()));
                }
                casts.add(moments);
            }
            return new FollowedClip(
                    root.path("width").asInt(), root.path("height").asInt(), times, casts);
        } catch (IOException e) {
            throw new UncheckedIOException("what was followed could not be read", e);
        }
    }

    /** The moments of the cast that is nearest to a clip time; empty where there is no cast. */
    public Map<EventKind, Double> castAt(double seconds) {
        return casts.stream()
                .min(Comparator.comparingDouble(c -> away(c, seconds)))
                .orElse(Map.of());
    }

    private static double away(Map<EventKind, Double> cast, double seconds) {
        return cast.values().stream()
                .mapToDouble(t -> Math.abs(t - seconds))
                .min()
                .orElse(Double.MAX_VALUE);
    }
}
