package bendline.report;

import bendline.geometry.Point;
import bendline.scene.BlankFacts;
import bendline.stroke.Bend;
import bendline.stroke.BendArc;
import bendline.stroke.LoadCurve;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import org.jspecify.annotations.Nullable;

/** The bend of a stroke and what was told of the blank, as parts of {@code analysis.json}. */
final class BendJson {

    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    /** Points of an arc in the file, and tenths of a millimetre kept of each. */
    private static final int POINTS = 13;

    private static final double PER_METRE = 1e4;

    private BendJson() {}

    static JsonNode facts(@Nullable BlankFacts facts) {
        if (facts == null) {
            return NODES.nullNode();
        }
        ObjectNode out = NODES.objectNode();
        AnalysisJson.number(out, "testCurveKg", facts.testCurveKg());
        AnalysisJson.number(out, "castingWeightKg", facts.castingWeightKg());
        out.put("blankId", facts.blankId());
        BlankFacts.Measured m = facts.measured();
        AnalysisJson.number(out, "stiffnessNm2", m == null ? null : m.stiffnessNm2());
        AnalysisJson.number(out, "stiffnessRelativeSd", m == null ? null : m.relativeSd());
        AnalysisJson.number(out, "tipStiffnessShare", m == null ? null : m.tipShare());
        return out;
    }

    static ObjectNode bend(Bend bend) {
        ObjectNode out = NODES.objectNode();
        out.put("unit", bend.metric() ? "m" : "free length");
        out.put("view", bend.view());
        out.put("loadBasis", bend.load().basis());
        ArrayNode arcs = out.putArray("arcs");
        for (int i = 0; i < bend.arcs().size(); i++) {
            arcs.add(arc(bend.arcs().get(i), bend.load(), i));
        }
        return out;
    }

    private static ObjectNode arc(BendArc arc, LoadCurve load, int i) {
        ObjectNode out = NODES.objectNode();
        out.put("frame", arc.frame());
        AnalysisJson.number(out, "seconds", arc.clipSeconds());
        out.put("tipSeen", arc.whole());
        AnalysisJson.number(out, "plusMinus", arc.sd());
        ArrayNode line = out.putArray("line");
        for (Point p : arc.line().resampled(POINTS).points()) {
            line.addArray().add(rounded(p.x())).add(rounded(p.y()));
        }
        boolean known = load.known();
        AnalysisJson.number(out, "tipForceN", known ? load.newtons()[i] : null);
        AnalysisJson.number(out, "tipForcePlusMinusN", known ? load.newtonsSd()[i] : null);
        AnalysisJson.number(out, "tipForceDirectionDeg", known ? Math.toDegrees(load.directionRad()[i]) : null);
        AnalysisJson.number(out, "energyJ", known ? load.energyJ()[i] : null);
        AnalysisJson.number(out, "energyPlusMinusJ", known ? load.energySd()[i] : null);
        AnalysisJson.number(out, "bendCentre", known ? load.bendCentre()[i] : null);
        return out;
    }

    private static double rounded(double metres) {
        return Math.round(metres * PER_METRE) / PER_METRE;
    }
}
