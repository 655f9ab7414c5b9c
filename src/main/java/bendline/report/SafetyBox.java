package bendline.report;

import bendline.analysis.ClipAnalysis;
import bendline.flight.KitLimits.Caution;
import java.util.List;

/** Where the kit that was told goes past the usual limits; nothing where it is within them or nothing was told. */
final class SafetyBox {

    private SafetyBox() {}

    static void write(ClipAnalysis analysis, Html html) {
        List<Caution> passed = analysis.casts().stream()
                .flatMap(c -> c.outlook().cautions().stream())
                .filter(Caution::passed)
                .distinct()
                .toList();
        if (passed.isEmpty()) {
            return;
        }
        html.open("div", "class", "warning", "role", "note");
        html.leaf("h3", "Your kit goes past the usual limits");
        html.open("ul");
        passed.forEach(c -> html.leaf("li", c.says() + " (" + Words.capital(c.source()) + ".)"));
        html.close();
        html.leaf(
                "p",
                "Sort this out before you cast as hard again. Limits are practice, not law: the makers' words, the rules of the water and"
                        + " a licensed coach come first.");
        html.close();
    }
}
