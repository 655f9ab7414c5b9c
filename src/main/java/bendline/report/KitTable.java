package bendline.report;

import bendline.flight.Outlook;
import bendline.flight.Outlook.Part;
import java.util.List;

/** What the flight was worked out with: told, measured or assumed. */
final class KitTable {

    private final Outlook outlook;
    private final Html html;

    KitTable(Outlook outlook, Html html) {
        this.outlook = outlook;
        this.html = html;
    }

    void write() {
        if (outlook.kit().isEmpty()) {
            return;
        }
        html.leaf("h4", "Kit, launch and wind it was worked out with");
        html.open("table");
        html.open("thead").open("tr");
        List.of("What", "Value", "Rests on").forEach(h -> html.leaf("th", h, "scope", "col"));
        html.close().close().open("tbody");
        for (Part p : outlook.kit()) {
            html.open("tr").leaf("th", Words.capital(p.label()), "scope", "row");
            html.leaf("td", number(p), "class", "number").leaf("td", p.basis(), "class", "basis");
            html.close();
        }
        html.close().close();
        outlook.notes().forEach(n -> html.leaf("p", n));
    }

    private static String number(Part p) {
        Double value = p.value();
        if (value == null) {
            return "not known";
        }
        String unit = p.unit().equals("°") ? "°" : "\u00a0" + p.unit();
        if (!Double.isFinite(p.plusMinus())) {
            return Words.of("%.1f", value) + unit;
        }
        int decimals = Words.decimals(p.plusMinus());
        String form = "%." + decimals + "f";
        return (Words.of(form, value) + " ± " + Words.of(form, p.plusMinus())).replace('-', '−') + unit;
    }
}
