package bendline.report;

import bendline.compare.CastSet;
import bendline.compare.Comparison;
import bendline.compare.Confounder;
import bendline.compare.Difference;
import bendline.compare.Drift;
import bendline.compare.Reading;
import bendline.compare.Shift;
import bendline.compare.Uneven;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Locale;

/** Writes {@code comparison.json}; the format is described by {@code comparison.schema.json} beside this class. */
final class ComparisonJson {

    static final String FORMAT = "bendline-comparison/1";

    private static final MathContext DIGITS = new MathContext(9);
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    String write(Comparison c) {
        ObjectNode root = NODES.objectNode();
        root.put("format", FORMAT);
        root.put("level", Comparison.LEVEL);
        root.set("a", set(c.a(), c.unevenA()));
        root.set("b", set(c.b(), c.unevenB()));
        root.put("paired", c.paired());
        root.put("order", word(c.sequence().kind()));
        root.put("distances", c.distances());
        ArrayNode confounders = root.putArray("confounders");
        c.confounders().forEach(x -> confounders.add(confounder(x)));
        ArrayNode measures = root.putArray("measures");
        c.differences().forEach(d -> measures.add(difference(d)));
        ArrayNode drifts = root.putArray("drifts");
        c.drifts().forEach(d -> drifts.add(drift(d)));
        try {
            return new ObjectMapper().enable(SerializationFeature.INDENT_OUTPUT).writeValueAsString(root) + "\n";
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a tree of plain nodes could not be written as JSON", e);
        }
    }

    private static ObjectNode set(CastSet set, Uneven uneven) {
        ObjectNode out = NODES.objectNode();
        out.put("label", set.label());
        ArrayNode casts = out.putArray("casts");
        set.casts().forEach(c -> casts.add(c.name()));
        ObjectNode u = out.putObject(Uneven.ID);
        u.put("state", uneven.state().id());
        u.put("most", uneven.most() == null ? null : uneven.most().id());
        u.put("says", uneven.says());
        ArrayNode all = u.putArray("scatter");
        for (Uneven.Scatter s : uneven.all()) {
            ObjectNode n = all.addObject();
            n.put("measure", s.id());
            n.put("unit", s.unit());
            number(n, "sd", s.sd());
            number(n, "low", s.low());
            number(n, "high", s.high());
            number(n, "step", s.step());
        }
        return out;
    }

    private static ObjectNode confounder(Confounder c) {
        ObjectNode out = NODES.objectNode();
        out.put("what", word(c.what()));
        out.put("state", word(c.state()));
        out.set("a", strings(c.inA()));
        out.set("b", strings(c.inB()));
        return out;
    }

    private static ObjectNode difference(Difference d) {
        Shift s = d.shift();
        ObjectNode out = NODES.objectNode();
        out.put("measure", d.id());
        out.put("label", d.label());
        out.put("unit", d.unit());
        out.put("verdict", d.verdict().id());
        out.set("a", readings(d.a()));
        out.set("b", readings(d.b()));
        number(out, "difference", s.estimate());
        number(out, "low", s.low());
        number(out, "high", s.high());
        number(out, "confidence", s.confidence());
        number(out, "p", s.p());
        number(out, "pHolm", d.pHolm());
        number(out, "smallestP", s.smallestP());
        number(out, "scatter", d.scatter());
        number(out, "measurementShare", d.measurementShare());
        number(out, "smallestChange", d.smallestChange());
        out.put("castsNeeded", d.castsNeeded() < 0 ? null : (Integer) d.castsNeeded());
        out.set(
                "explainedBy",
                strings(d.explainedBy().stream().map(c -> word(c.what())).toList()));
        return out;
    }

    private static ArrayNode readings(List<Reading> readings) {
        ArrayNode out = NODES.arrayNode();
        for (Reading r : readings) {
            ObjectNode n = out.addObject();
            n.put("cast", r.cast().name());
            number(n, "value", r.value());
            number(n, "plusMinus", r.plusMinus());
        }
        return out;
    }

    private static ObjectNode drift(Drift d) {
        ObjectNode out = NODES.objectNode();
        out.put("measure", d.id());
        out.put("unit", d.unit());
        number(out, "perCast", d.perCast());
        number(out, "low", d.low());
        number(out, "high", d.high());
        number(out, "p", d.p());
        number(out, "pHolm", d.pHolm());
        return out;
    }

    private static ArrayNode strings(List<String> texts) {
        ArrayNode out = NODES.arrayNode();
        texts.forEach(out::add);
        return out;
    }

    private static String word(Enum<?> e) {
        return e.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static void number(ObjectNode into, String name, double value) {
        if (Double.isFinite(value)) {
            into.put(name, new BigDecimal(value).round(DIGITS).doubleValue());
        } else {
            into.putNull(name);
        }
    }
}
