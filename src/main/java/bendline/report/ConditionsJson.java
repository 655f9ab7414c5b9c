package bendline.report;

import bendline.scene.Conditions;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** What was told of rig, tackle and wind, for {@code analysis.json}. */
final class ConditionsJson {

    private ConditionsJson() {}

    static ObjectNode of(Conditions c) {
        ObjectNode out = JsonNodeFactory.instance.objectNode();
        out.put("rigType", name(c.rig().type()));
        AnalysisJson.number(out, "emptyKg", c.rig().emptyKg());
        AnalysisJson.number(out, "baitKg", c.rig().baitKg());
        AnalysisJson.number(out, "feederDiameterM", c.rig().diameterM());
        AnalysisJson.number(out, "feederLengthM", c.rig().lengthM());
        AnalysisJson.number(out, "castingKg", c.tackle().castingKg());
        out.put("lineKind", name(c.tackle().lineKind()));
        AnalysisJson.number(out, "lineM", c.tackle().lineM());
        AnalysisJson.number(out, "lineN", c.tackle().lineN());
        AnalysisJson.number(out, "leaderN", c.tackle().leaderN());
        AnalysisJson.number(out, "loss", c.tackle().loss());
        AnalysisJson.number(out, "lossPlusMinus", c.tackle().lossPlusMinus());
        AnalysisJson.number(out, "windMps", c.wind().speedMps());
        AnalysisJson.number(out, "windFromDeg", c.wind().fromDeg());
        AnalysisJson.number(out, "windHeightM", c.wind().heightM());
        AnalysisJson.number(out, "tipHeightM", c.outcome().tipHeightM());
        AnalysisJson.number(out, "clipM", c.outcome().clipM());
        AnalysisJson.number(out, "measuredM", c.outcome().measuredM());
        AnalysisJson.number(out, "measuredPlusMinusM", c.outcome().measuredPlusMinusM());
        return out;
    }

    private static @Nullable String name(@Nullable Enum<?> value) {
        return value == null ? null : value.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
