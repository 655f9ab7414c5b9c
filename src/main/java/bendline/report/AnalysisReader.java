package bendline.report;

import bendline.scene.Setup.Side;
import bendline.stroke.Event;
import bendline.stroke.EventKind;
import bendline.stroke.Measure;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Reads {@code analysis.json}, {@code frames.csv} and {@code curves.csv} back. Knows the formats that {@link AnalysisJson} has
 * written so far, and refuses any other by name instead of guessing at it.
 */
public final class AnalysisReader {

    static final String FILE = "analysis.json";

    /** Whether a folder holds an analysis. */
    public static boolean isAnalysis(Path folder) {
        return Files.isRegularFile(folder.resolve(FILE));
    }

    /**
     * Reads the casts of an analysis.
     *
     * @param folder as {@code analyse} wrote it
     * @return in order of time; empty if nobody casts
     * @throws AnalysisFileException where the files can't be read, with one sentence for the user
     */
    public List<ReadCast> read(Path folder) {
        try {
            JsonNode root = new ObjectMapper().readTree(folder.resolve(FILE).toFile());
            String format = root.path("format").asText("none");
            if (!format.equals(AnalysisJson.FORMAT)) {
                throw new AnalysisFileException("The analysis in " + folder + " is of format " + format
                        + ", and this Bendline reads " + AnalysisJson.FORMAT + "; analyse the clip again.");
            }
            List<ReadCast> out = new ArrayList<>();
            int casts = root.path("casts").size();
            if (casts == 0) {
                return out;
            }
            Map<Integer, CastTrack> tracks = new TrackReader(folder).read();
            for (JsonNode cast : root.path("casts")) {
                CastTrack track = tracks.get(cast.path("number").asInt());
                if (track == null) {
                    throw new IOException("frames.csv has no row of cast " + cast.path("number"));
                }
                out.add(cast(folder, root, cast, casts, track));
            }
            return out;
        } catch (IOException | IllegalArgumentException e) {
            throw new AnalysisFileException(
                    "The analysis in " + folder + " can't be read (" + oneLine(e.getMessage())
                            + "); analyse the clip again into another folder.",
                    e);
        }
    }

    private static String oneLine(@Nullable String text) {
        return text == null ? "no reason given" : text.strip().replaceAll("\\s*\\R.*", "");
    }

    private static ReadCast cast(Path folder, JsonNode root, JsonNode cast, int of, CastTrack track) {
        JsonNode clip = root.path("clip");
        Map<EventKind, Event> events = new EnumMap<>(EventKind.class);
        for (EventKind kind : EventKind.values()) {
            events.put(kind, event(kind, cast.path("events").path(kind.id())));
        }
        List<Measure> measures = new ArrayList<>();
        cast.path("measures").fields().forEachRemaining(m -> measures.add(measure(m.getKey(), m.getValue())));
        return new ReadCast(
                folder,
                clip.path("file").asText(),
                cast.path("number").asInt(),
                of,
                side(cast.path("castsTo")),
                new ReadCast.PictureFacts(
                        clip.path("width").asInt(),
                        clip.path("height").asInt(),
                        clip.path("slowMotionFactor").asDouble(1),
                        root.path("quality").path("captureRateHz").asDouble(Double.NaN)),
                SetupJson.read(root.path("setup")),
                events,
                measures,
                track,
                null);
    }

    private static Event event(EventKind kind, JsonNode e) {
        String basis = e.path("basis").asText("not in the file");
        if (!e.path("seconds").isNumber()) {
            return Event.unknown(kind, basis);
        }
        Integer frame = e.path("frame").isNumber() ? (Integer) e.path("frame").asInt() : null;
        return new Event(
                kind, e.path("seconds").asDouble(), e.path("plusMinusSeconds").asDouble(Double.NaN), frame, basis);
    }

    private static Measure measure(String id, JsonNode m) {
        String label = m.path("label").asText(id);
        String unit = m.path("unit").asText();
        String basis = m.path("basis").asText();
        return m.path("value").isNumber()
                ? new Measure(
                        id,
                        label,
                        unit,
                        m.path("value").asDouble(),
                        m.path("plusMinus").asDouble(Double.NaN),
                        basis)
                : Measure.unknown(id, label, unit, basis);
    }

    private static Side side(JsonNode node) {
        return Side.valueOf(node.asText().toUpperCase(Locale.ROOT));
    }
}
