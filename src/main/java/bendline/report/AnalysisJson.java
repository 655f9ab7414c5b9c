package bendline.report;

import bendline.analysis.CastAnalysis;
import bendline.analysis.ClipAnalysis;
import bendline.analysis.Quality;
import bendline.body.Joint;
import bendline.footage.ClipInfo;
import bendline.scene.Setup;
import bendline.stroke.BodyMotion;
import bendline.stroke.Event;
import bendline.stroke.EventKind;
import bendline.stroke.Measure;
import bendline.stroke.Peak;
import bendline.stroke.Stroke;
import bendline.technique.Finding;
import bendline.technique.Review;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Writes {@code analysis.json}; the format is described by {@code analysis.schema.json} beside this class. */
final class AnalysisJson {

    static final String FORMAT = "bendline-analysis/1";

    /** More digits than any measure is good for. */
    private static final MathContext DIGITS = new MathContext(9);

    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    String write(ClipAnalysis analysis) {
        ObjectNode root = NODES.objectNode();
        root.put("format", FORMAT);
        root.set("clip", clip(analysis));
        root.set("setup", setup(analysis.setup()));
        root.set("quality", quality(analysis.quality()));
        ArrayNode casts = root.putArray("casts");
        analysis.casts().forEach(c -> casts.add(cast(c)));
        return text(root);
    }

    private static String text(ObjectNode root) {
        DefaultIndenter lines = new DefaultIndenter("  ", "\n");
        DefaultPrettyPrinter printer = new DefaultPrettyPrinter().withObjectIndenter(lines);
        try {
            return new ObjectMapper().writer(printer).writeValueAsString(root) + "\n";
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a tree of plain nodes could not be written as JSON", e);
        }
    }

    private static ObjectNode clip(ClipAnalysis analysis) {
        ClipInfo info = analysis.info();
        ObjectNode out = NODES.objectNode();
        out.put("file", analysis.clip().getFileName().toString());
        out.put("width", info.width());
        out.put("height", info.height());
        out.put("frames", info.frames());
        number(out, "durationSeconds", info.durationSeconds());
        out.put("rotationDegrees", info.rotationDegrees());
        out.put("mirrored", info.mirrored());
        number(out, "slowMotionFactor", info.slowMotion().factor());
        out.put("slowMotionBasis", info.slowMotion().basis());
        out.set("notes", strings(info.notes()));
        return out;
    }

    private static ObjectNode setup(Setup setup) {
        ObjectNode out = NODES.objectNode();
        number(out, "rodLengthM", setup.rodLengthM());
        number(out, "freeLengthM", setup.freeLengthM());
        number(out, "dropM", setup.dropM());
        number(out, "rigMassKg", setup.rigMassKg());
        out.put("castsTo", setup.castsTo() == null ? null : side(setup.castsTo()));
        number(out, "slowMotionFactor", setup.slowMotionFactor());
        out.set("marks", SetupJson.marks(setup.marks()));
        out.set("conditions", ConditionsJson.of(setup.conditions()));
        out.set("blank", BendJson.facts(setup.blank()));
        return out;
    }

    private static ObjectNode quality(Quality q) {
        ObjectNode out = NODES.objectNode();
        number(out, "captureRateHz", q.captureRateHz());
        number(out, "timingSeconds", q.timingSeconds());
        out.put("cameraMoved", q.cameraMoved());
        number(out, "largestShiftPx", q.largestShiftPx());
        out.put("cameraTrusted", q.cameraTrusted());
        out.put("framesLookedAt", q.framesLookedAt());
        number(out, "blankSeenShare", q.blankSeenShare());
        number(out, "tipSeenShare", q.tipSeenShare());
        number(out, "rigSeenShare", q.rigSeenShare());
        number(out, "tipSdPx", q.tipSdPx());
        out.set("says", strings(q.says()));
        out.set("advice", strings(q.advice()));
        return out;
    }

    private static ObjectNode cast(CastAnalysis cast) {
        Stroke stroke = cast.stroke();
        Review review = cast.review();
        ObjectNode out = NODES.objectNode();
        out.put("number", stroke.number());
        out.put("castsTo", side(stroke.castsTo()));
        out.put("firstFrame", stroke.firstFrame());
        out.put("lastFrame", stroke.lastFrame());
        ObjectNode events = out.putObject("events");
        for (EventKind kind : EventKind.values()) {
            events.set(kind.id(), event(stroke.event(kind)));
        }
        ObjectNode measures = out.putObject("measures");
        stroke.measures().forEach(m -> measures.set(m.id(), measure(m)));
        out.set("bend", BendJson.bend(stroke.bend()));
        out.set("body", body(stroke.body()));
        ArrayNode findings = out.putArray("findings");
        review.findings().forEach(f -> findings.add(finding(f)));
        out.set("flight", OutlookJson.of(cast.outlook()));
        out.set("good", strings(review.good()));
        out.put("next", review.next() == null ? null : review.next().id());
        out.put("why", review.why());
        return out;
    }

    private static JsonNode body(@Nullable BodyMotion body) {
        if (body == null) {
            return NODES.nullNode();
        }
        ObjectNode out = NODES.objectNode();
        Joint upper = body.hold().upper();
        out.put("framesFollowed", body.seen());
        out.put("upperHand", upper == null ? null : upper == Joint.LEFT_WRIST ? "left" : "right");
        out.put("note", body.note());
        ObjectNode peaks = out.putObject("peaks");
        for (Peak p : body.peaks()) {
            ObjectNode peak = peaks.putObject(p.part().id());
            number(peak, "seconds", p.seconds());
            number(peak, "plusMinusSeconds", p.plusMinusSeconds());
            peak.put("frame", p.frame());
            peak.put("basis", p.basis());
        }
        return out;
    }

    private static ObjectNode event(Event e) {
        ObjectNode out = NODES.objectNode();
        number(out, "seconds", e.seconds());
        number(out, "plusMinusSeconds", e.plusMinusSeconds());
        out.put("frame", e.frame());
        out.put("basis", e.basis());
        return out;
    }

    private static ObjectNode measure(Measure m) {
        ObjectNode out = NODES.objectNode();
        number(out, "value", m.value());
        out.put("unit", m.unit());
        number(out, "plusMinus", m.plusMinus());
        out.put("basis", m.basis());
        out.put("label", m.label());
        return out;
    }

    private static ObjectNode finding(Finding f) {
        ObjectNode out = NODES.objectNode();
        out.put("id", f.id());
        out.put("state", f.state().id());
        number(out, "severity", f.severity());
        ArrayNode frames = out.putArray("evidenceFrames");
        f.evidenceFrames().forEach(frames::add);
        out.put("title", f.title());
        out.put("brief", f.brief());
        out.put("says", f.says());
        ArrayNode checks = out.putArray("checks");
        f.checks().forEach(c -> checks.add(check(c)));
        out.put("cost", f.cost());
        out.put("drill", f.drill());
        return out;
    }

    private static ObjectNode check(Finding.Check c) {
        ObjectNode out = NODES.objectNode();
        out.put("measure", c.measure().id());
        number(out, "value", c.measure().value());
        out.put("unit", c.measure().unit());
        number(out, "plusMinus", c.measure().plusMinus());
        number(out, "limit", c.limit());
        out.put("worse", c.worseAbove() ? "above" : "below");
        out.put("verdict", c.verdict().id());
        return out;
    }

    static ArrayNode strings(List<String> texts) {
        ArrayNode out = NODES.arrayNode();
        texts.forEach(out::add);
        return out;
    }

    private static String side(Setup.Side side) {
        return side.name().toLowerCase(Locale.ROOT);
    }

    /** JSON has no NaN: what is not known is null. */
    static void number(ObjectNode into, String name, @Nullable Double value) {
        if (value == null || !Double.isFinite(value)) {
            into.putNull(name);
        } else {
            into.put(
                    name,
                    new BigDecimal(value).round(DIGITS).stripTrailingZeros().doubleValue());
        }
    }
}
