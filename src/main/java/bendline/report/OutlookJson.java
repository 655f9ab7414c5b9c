package bendline.report;

import bendline.flight.Answer;
import bendline.flight.Gain;
import bendline.flight.KitLimits.Caution;
import bendline.flight.LossFit;
import bendline.flight.Outlook;
import bendline.flight.Outlook.Part;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;

/** What the flight says of a cast, for {@code analysis.json}. */
final class OutlookJson {

    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private OutlookJson() {}

    static ObjectNode of(Outlook o) {
        ObjectNode out = NODES.objectNode();
        out.set("distance", answer(o.distanceM()));
        out.set("flightSeconds", answer(o.flightSeconds()));
        out.set("bow", answer(o.bowM()));
        out.set("spareLine", answer(o.spareM()));
        out.set("reachesClip", answer(o.reachesClip()));
        out.set("bestAngle", answer(o.bestAngleDeg()));
        out.set("goodAngle", answer(o.goodAngleDeg()));
        out.set("angleAgainstBest", answer(o.againstBestDeg()));
        out.set("givenUp", answer(o.givenUp()));
        out.set("stillAir", answer(o.stillAirM()));
        LossFit.Fitted fitted = o.fitted();
        if (fitted == null) {
            out.putNull("fittedLoss");
        } else {
            ObjectNode loss = out.putObject("fittedLoss");
            AnalysisJson.number(loss, "value", fitted.loss());
            AnalysisJson.number(loss, "plusMinus", fitted.plusMinus());
            loss.put("casts", fitted.casts());
        }
        ArrayNode gains = out.putArray("gains");
        o.gains().forEach(g -> gains.add(gain(g)));
        Gain.Together ten = o.nextTen();
        if (ten == null) {
            out.putNull("nextTen");
        } else {
            ObjectNode t = out.putObject("nextTen");
            ArrayNode steps = t.putArray("steps");
            ten.steps().forEach(g -> steps.add(g.change().id()));
            t.set("gain", answer(ten.metres()));
        }
        ArrayNode kit = out.putArray("kit");
        o.kit().forEach(p -> kit.add(part(p)));
        ArrayNode limits = out.putArray("limits");
        o.cautions().forEach(c -> limits.add(caution(c)));
        out.set("notes", AnalysisJson.strings(o.notes()));
        return out;
    }

    private static ObjectNode answer(Answer a) {
        ObjectNode out = NODES.objectNode();
        AnalysisJson.number(out, "value", a.value());
        AnalysisJson.number(out, "low", a.low());
        AnalysisJson.number(out, "high", a.high());
        out.put("unit", a.unit());
        out.put("basis", a.basis());
        return out;
    }

    private static ObjectNode gain(Gain g) {
        ObjectNode out = NODES.objectNode();
        out.put("id", g.change().id());
        out.put("label", g.change().label());
        out.put("kind", g.change().kind().id());
        out.put("effort", g.change().effort().words());
        out.put("effortCount", g.change().effort().count());
        out.set("gain", answer(g.metres()));
        AnalysisJson.number(out, "gainPerEffort", g.perEffort());
        return out;
    }

    private static ObjectNode part(Part p) {
        ObjectNode out = NODES.objectNode();
        out.put("id", p.id());
        out.put("label", p.label());
        AnalysisJson.number(out, "value", p.value());
        AnalysisJson.number(out, "plusMinus", p.plusMinus());
        out.put("unit", p.unit());
        out.put("basis", p.basis());
        return out;
    }

    private static ObjectNode caution(Caution c) {
        ObjectNode out = NODES.objectNode();
        out.put("id", c.id());
        out.put("passed", c.passed());
        out.put("says", c.says());
        out.put("source", c.source());
        return out;
    }
}
