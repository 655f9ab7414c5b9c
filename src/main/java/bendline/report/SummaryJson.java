package bendline.report;

import bendline.analysis.CastAnalysis;
import bendline.analysis.ClipAnalysis;
import bendline.technique.Finding;
import bendline.technique.Finding.State;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;

/** What a script wants to know at once, as one line of JSON; {@code analysis.json} in the folder holds the rest. */
public final class SummaryJson {

    static final String FORMAT = "bendline-summary/1";

    private SummaryJson() {}

    /**
     * One line.
     *
     * @param out the folder that was written
     */
    public static String line(ClipAnalysis analysis, Path out) {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        root.put("format", FORMAT);
        root.put("clip", analysis.clip().toString());
        root.put("report", out.resolve("report.html").toString());
        root.put("analysis", out.resolve("analysis.json").toString());
        ArrayNode casts = root.putArray("casts");
        analysis.casts().forEach(c -> casts.add(cast(analysis, c)));
        root.set("says", AnalysisJson.strings(analysis.quality().says()));
        try {
            return new ObjectMapper().writeValueAsString(root);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a tree of plain nodes could not be written as JSON", e);
        }
    }

    private static ObjectNode cast(ClipAnalysis analysis, CastAnalysis cast) {
        ObjectNode out = JsonNodeFactory.instance.objectNode();
        Finding next = cast.review().next();
        out.put("number", cast.stroke().number());
        out.put("headline", new CastStory(analysis, cast).headline());
        out.put("next", next == null ? null : next.id());
        out.put("drill", next == null ? null : next.drill());
        for (State state : State.values()) {
            ArrayNode ids = out.putArray(state.id());
            cast.review().findings().stream().filter(f -> f.state() == state).forEach(f -> ids.add(f.id()));
        }
        return out;
    }
}
