package bendline.report;

import bendline.flight.Answer;
import bendline.flight.Change.Kind;
import bendline.flight.Gain;
import bendline.flight.Outlook;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** How far the cast should go, where more metres are, and what that was worked out with. */
final class DistanceSection {

    /** Steps shown side by side. */
    private static final int SIDE_BY_SIDE = 3;

    /** A nought has no sign. */
    private static final Pattern NOUGHT = Pattern.compile("(?<![\\w.])[+-]0(?![\\d.])");

    private final Outlook outlook;
    private final String key;
    private final Html html;

    /** @param key begins the names of its drawings */
    DistanceSection(Outlook outlook, String key, Html html) {
        this.outlook = outlook;
        this.key = key;
        this.html = html;
    }

    void write() {
        html.open("section", "id", key + "-distance");
        html.leaf("h2", "How far, and where the next ten metres are");
        html.leaf("p", lead());
        if (!outlook.gains().isEmpty()) {
            gains();
        }
        if (told() || !outlook.kit().isEmpty()) {
            html.fold("h3", "The numbers behind it");
            if (told()) {
                panel();
            }
            new KitTable(outlook, html).write();
            html.close();
        }
        html.close();
    }

    private String lead() {
        Answer d = outlook.distanceM();
        Answer still = outlook.stillAirM();
        if (!told()) {
            return "How far this cast should go can't be told: " + d.basis()
                    + ". With the weight of the rig and the distance you measured, the throw can be worked back without the clip.";
        }
        String far = d.value() == null
                ? ""
                : Words.of("Thrown like this the rig should land about %.0f m out, ", d.value()) + between(d)
                        + " in two casts of three. ";
        return far
                + Words.of("In still air the same throw would make %.0f m, ", still.value())
                + between(still)
                + ": that is the number to compare days by.";
    }

    private boolean told() {
        return outlook.distanceM().known() || outlook.stillAirM().known();
    }

    private static String between(Answer a) {
        return Words.of("%.0f to %.0f m", a.low(), a.high());
    }

    private void panel() {
        html.open("table");
        html.open("thead").open("tr");
        List.of("What", "Value", "Rests on").forEach(h -> html.leaf("th", h, "scope", "col"));
        html.close().close().open("tbody");
        row("Expected distance", outlook.distanceM(), "%.0f", " m");
        row("In still air", outlook.stillAirM(), "%.0f", " m");
        row("Time in the air", outlook.flightSeconds(), "%.1f", " s");
        row("Bow in the line as it lands", outlook.bowM(), "%.0f", " m");
        row("Line out beyond the straight", outlook.spareM(), "%.0f", " m");
        row("Casts like this that reach the clip", outlook.reachesClip(), "%.0f", " %");
        row("Best launch angle", outlook.bestAngleDeg(), "%.0f", "°");
        row("Good launch angles", outlook.goodAngleDeg(), "%.0f", "°");
        row("Launch angle against the best", outlook.againstBestDeg(), "%+.0f", "°");
        row("Distance given up by the angle", outlook.givenUp(), "%.0f", " %");
        html.close().close();
    }

    private void row(String label, Answer a, String format, String unit) {
        html.open("tr").leaf("th", label, "scope", "row");
        if (a.value() == null) {
            html.leaf("td", "cannot tell", "class", "number");
        } else {
            double factor = unit.equals(" %") ? 100 : 1;
            String value = Words.of(format, factor * a.value());
            String low = Words.of(format, factor * a.low());
            String high = Words.of(format, factor * a.high());
            html.leaf(
                    "td",
                    minus(value + unit + (low.equals(high) ? "" : " (" + low + " to " + high + ")")),
                    "class",
                    "number");
        }
        html.leaf("td", a.basis(), "class", "basis");
        html.close();
    }

    private static String minus(String text) {
        return NOUGHT.matcher(text).replaceAll("0").replace('-', '−');
    }

    private void gains() {
        GainChart chart = new GainChart(outlook.gains());
        html.leaf("h3", "What would take it farther");
        nextTen();
        ChartFigure.open(
                html,
                chart.draw(ChartSize.WIDE, key + "-gains-" + ChartSize.WIDE.id()),
                chart.draw(ChartSize.NARROW, key + "-gains-" + ChartSize.NARROW.id()));
        html.leaf(
                "figcaption",
                "One step at a time, the most metres for its effort first. The bar is the gain, the thin line over it holds two"
                        + " cases of three. Full bars: kit; ruled: technique; empty: weather. Gains of several steps don't simply add.");
        html.close();
        sides();
    }

    private void nextTen() {
        Gain.Together ten = outlook.nextTen();
        if (ten == null || ten.metres().value() == null) {
            return;
        }
        String steps = ten.steps().stream().map(g -> g.change().label()).collect(Collectors.joining("; then "));
        String lead = ten.metres().value() >= 9.5
                ? "The next ten metres, with the least effort: "
                : "All that was looked at together falls short of ten metres: ";
        html.leaf(
                "p",
                minus(lead
                        + steps
                        + Words.of(
                                ". Together %+.0f m (%+.0f to %+.0f).",
                                ten.metres().value(),
                                ten.metres().low(),
                                ten.metres().high())));
    }

    private void sides() {
        html.open("div", "class", "sides");
        side("With kit", Kind.KIT);
        side("With technique", Kind.TECHNIQUE);
        html.close();
    }

    private void side(String heading, Kind kind) {
        html.open("div");
        html.leaf("h4", heading);
        html.open("ul");
        outlook.gains().stream()
                .filter(g -> g.change().kind() == kind && g.metres().value() != null)
                .limit(SIDE_BY_SIDE)
                .forEach(g -> html.leaf("li", said(g)));
        html.close().close();
    }

    private static String said(Gain g) {
        Answer m = g.metres();
        return minus(Words.of(
                        "%s: %+.0f m (%+.0f to %+.0f), for %s. ",
                        Words.capital(g.change().label()),
                        m.value(),
                        m.low(),
                        m.high(),
                        g.change().effort().words()))
                + Words.capital(g.change().basis()) + ".";
    }
}
