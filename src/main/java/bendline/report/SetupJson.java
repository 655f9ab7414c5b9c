package bendline.report;

import bendline.geometry.Point;
import bendline.scene.BlankFacts;
import bendline.scene.Conditions;
import bendline.scene.Mark;
import bendline.scene.Mark.Part;
import bendline.scene.Setup;
import bendline.scene.Setup.Side;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/** What the user told, read back from {@code analysis.json}; and the marks on the way into it. */
final class SetupJson {

    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private SetupJson() {}

    static ArrayNode marks(List<Mark> marks) {
        ArrayNode out = NODES.arrayNode();
        for (Mark mark : marks) {
            ObjectNode m = out.addObject();
            AnalysisJson.number(m, "seconds", mark.seconds());
            for (Part part : Part.values()) {
                point(m, name(part), mark.places().get(part));
            }
            ArrayNode hidden = m.putArray("hidden");
            mark.hidden().stream().sorted().forEach(part -> hidden.add(name(part)));
            ArrayNode moments = m.putArray("moments");
            mark.moments().stream().sorted().forEach(moments::add);
        }
        return out;
    }

    private static void point(ObjectNode into, String name, @Nullable Point point) {
        if (point == null) {
            into.putNull(name);
            return;
        }
        ObjectNode p = into.putObject(name);
        AnalysisJson.number(p, "x", point.x());
        AnalysisJson.number(p, "y", point.y());
    }

    private static String name(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The setup; parts that an older file does not have are not known. */
    static Setup read(JsonNode s) {
        List<Mark> marks = new ArrayList<>();
        s.path("marks").forEach(m -> marks.add(mark(m)));
        return new Setup(
                number(s, "rodLengthM"),
                number(s, "freeLengthM"),
                number(s, "dropM"),
                number(s, "rigMassKg"),
                choice(Side.class, s, "castsTo"),
                number(s, "slowMotionFactor"),
                marks,
                conditions(s.path("conditions")),
                blank(s.path("blank")));
    }

    private static Mark mark(JsonNode m) {
        Map<Part, Point> places = new EnumMap<>(Part.class);
        for (Part part : Part.values()) {
            JsonNode p = m.path(name(part));
            if (p.isObject()) {
                places.put(part, new Point(p.path("x").asDouble(), p.path("y").asDouble()));
            }
        }
        Set<Part> hidden = EnumSet.noneOf(Part.class);
        m.path("hidden").forEach(h -> hidden.add(value(Part.class, h.asText())));
        Set<String> moments = new TreeSet<>();
        m.path("moments").forEach(k -> moments.add(k.asText()));
        return new Mark(m.path("seconds").asDouble(), places, hidden, moments);
    }

    private static Conditions conditions(JsonNode c) {
        return new Conditions(
                new Conditions.Rig(
                        choice(Conditions.RigType.class, c, "rigType"),
                        number(c, "emptyKg"),
                        number(c, "baitKg"),
                        number(c, "feederDiameterM"),
                        number(c, "feederLengthM")),
                new Conditions.Tackle(
                        number(c, "castingKg"),
                        choice(Conditions.LineKind.class, c, "lineKind"),
                        number(c, "lineM"),
                        number(c, "lineN"),
                        number(c, "leaderN"),
                        number(c, "loss"),
                        number(c, "lossPlusMinus")),
                new Conditions.Wind(number(c, "windMps"), number(c, "windFromDeg"), number(c, "windHeightM")),
                new Conditions.Outcome(
                        number(c, "tipHeightM"),
                        number(c, "clipM"),
                        number(c, "measuredM"),
                        number(c, "measuredPlusMinusM")));
    }

    private static @Nullable BlankFacts blank(JsonNode b) {
        if (!b.isObject()) {
            return null;
        }
        BlankFacts.Measured measured = b.path("stiffnessNm2").isNumber()
                ? new BlankFacts.Measured(
                        b.path("stiffnessNm2").asDouble(),
                        b.path("stiffnessRelativeSd").asDouble(),
                        b.path("tipStiffnessShare").asDouble())
                : null;
        String id = b.path("blankId").isTextual() ? b.path("blankId").asText() : null;
        return new BlankFacts(number(b, "testCurveKg"), number(b, "castingWeightKg"), id, measured);
    }

    private static <E extends Enum<E>> @Nullable E choice(Class<E> kind, JsonNode node, String name) {
        return node.path(name).isTextual() ? value(kind, node.path(name).asText()) : null;
    }

    private static <E extends Enum<E>> E value(Class<E> kind, String text) {
        return Enum.valueOf(kind, text.toUpperCase(Locale.ROOT).replace('-', '_'));
    }

    private static @Nullable Double number(JsonNode node, String name) {
        return node.path(name).isNumber() ? (Double) node.path(name).asDouble() : null;
    }
}
