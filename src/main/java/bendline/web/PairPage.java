package bendline.web;

import bendline.book.Clip;
import bendline.book.Entry;
import bendline.report.Html;
import bendline.report.ReadCast;
import bendline.report.Reader;
import bendline.stroke.Measure;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;

/** One cast beside another, both films locked at the release; {@code pair.js} moves them. */
final class PairPage {

    private static final MathContext DIGITS = new MathContext(3);
    private static final MathContext TWO = new MathContext(2);

    private PairPage() {}

    static String write(Visitor v, Map.Entry<Entry, ReadCast> a, Map.Entry<Entry, ReadCast> b, Reader reader) {
        return Page.of("Two casts", v, "pair.js", html -> {
            html.leaf("h1", "Two casts, locked at the release");
            html.leaf("p", "Loading …", "id", "says", "role", "status", "class", "kicker");
            html.open("div", "class", "two");
            film(html, "A", a);
            film(html, "B", b);
            html.close();
            html.open("div", "class", "steps", "role", "group", "aria-label", "Step and play");
            html.leaf("button", "◀ Frame", "id", "back", "type", "button");
            html.leaf("button", "Play", "id", "play", "type", "button");
            html.leaf("button", "Frame ▶", "id", "on", "type", "button").close();
            html.leaf("label", "Time from the release", "for", "at");
            html.single("input", "id", "at", "type", "range", "min", "-200", "max", "100", "value", "0");
            html.leaf(
                    "p",
                    "Solid: this cast's blank. Dashed: the other's at the same time from the release, laid over it hand on"
                            + " hand and as long.",
                    "class",
                    "basis");
            html.leaf("h2", "What was measured");
            html.leaf(
                    "p",
                    "One cast each shows how these two differ, not what a change did: for that put at least two,"
                            + " better four or more, on each side.");
            html.raw(table(new Html(reader), a.getValue(), b.getValue()).toString());
        });
    }

    private static void film(Html html, String side, Map.Entry<Entry, ReadCast> cast) {
        Clip clip = Objects.requireNonNull(cast.getKey().clip());
        html.open("figure", "class", "film", "data-clip", clip.id());
        html.open("div", "class", "lens");
        html.single("img", "alt", "", "class", "shot");
        html.raw("<svg class=\"lay\" aria-hidden=\"true\"></svg>").close();
        html.leaf("figcaption", side + ": " + cast.getKey().name() + ", " + clip.name());
        html.single(
                "input",
                "type",
                "hidden",
                "class",
                "cast",
                "value",
                Integer.toString(cast.getValue().number()));
        html.close();
    }

    private static Html table(Html html, ReadCast a, ReadCast b) {
        Map<String, Measure> others = new LinkedHashMap<>();
        b.measures().forEach(m -> others.put(m.id(), m));
        html.open("table", "class", "measured").open("thead").open("tr");
        html.leaf("th", "Measure", "scope", "col")
                .leaf("th", "A", "scope", "col")
                .leaf("th", "B", "scope", "col")
                .leaf("th", "B against A", "scope", "col");
        html.close().close().open("tbody");
        for (Measure m : a.measures()) {
            Measure other = others.get(m.id());
            if (m.value() != null && other != null && other.value() != null) {
                html.open("tr").leaf("th", m.label(), "scope", "row");
                html.leaf("td", "A: " + words(m), "class", "number");
                html.leaf("td", "B: " + words(other), "class", "number");
                html.leaf("td", difference(m, other), "class", "number").close();
            }
        }
        return html.close().close();
    }

    /** How much larger it is in B, with what both leave open together. */
    private static String difference(Measure a, Measure b) {
        double by = Objects.requireNonNull(b.value()) - Objects.requireNonNull(a.value());
        double sd = Math.hypot(a.plusMinus(), b.plusMinus());
        return (by < 0 ? "B − A: −" : "B − A: +") + number(Math.abs(by), sd) + unit(a);
    }

    private static String unit(Measure m) {
        return m.unit().equals("1") ? "" : " " + m.unit().replace("deg", "°");
    }

    private static String words(Measure m) {
        return number(Objects.requireNonNull(m.value()), m.plusMinus()) + unit(m);
    }

    /** As many decimals as the uncertainty has with two digits. */
    private static String number(double value, double sd) {
        if (!Double.isFinite(sd) || sd <= 0) {
            return new BigDecimal(value).round(DIGITS).stripTrailingZeros().toPlainString();
        }
        BigDecimal open = new BigDecimal(sd).round(TWO);
        int decimals = Math.max(0, open.scale());
        return new BigDecimal(value).setScale(decimals, RoundingMode.HALF_EVEN).toPlainString() + " ± "
                + open.setScale(decimals, RoundingMode.HALF_EVEN).toPlainString();
    }
}
