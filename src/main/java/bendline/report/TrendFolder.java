package bendline.report;

import bendline.compare.SessionTrend;
import bendline.compare.SessionTrend.Forecast;
import bendline.compare.SessionTrend.Outing;
import bendline.stroke.Measure;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A trend in words and as a page. */
public final class TrendFolder {

    private final SessionTrend trend;
    private final List<Forecast> ahead;
    private final @Nullable Double target;
    private final Reader reader;

    /**
     * @param ahead forecasts, the last one of the target's day; empty for none
     * @param target in the measure's unit; null for none
     * @param reader how the page writes numbers
     */
    public TrendFolder(SessionTrend trend, List<Forecast> ahead, @Nullable Double target, Reader reader) {
        this.reader = reader;
        this.trend = trend;
        this.ahead = List.copyOf(ahead);
        this.target = target;
    }

    /** The trend in lines for the console. */
    public List<String> lines() {
        List<String> out = new ArrayList<>();
        for (Outing o : trend.outings()) {
            out.add(o.session() + ": " + value(o.mean())
                    + Words.of(" in the middle of %d casts", o.readings().size())
                    + (Double.isFinite(o.sd()) ? ", scatter " + value(o.sd()) : ""));
        }
        out.addAll(sentences());
        return out;
    }

    private List<String> sentences() {
        List<String> out = new ArrayList<>();
        if (Double.isFinite(trend.perMonth())) {
            out.add("In 30 days it " + (trend.moves() ? "moves by " : "moves, if at all, by ") + value(trend.perMonth())
                    + ", between " + value(trend.low()) + " and " + value(trend.high()) + " (95 %).");
        } else {
            out.add("Too few sessions for a line through them.");
        }
        trend.best()
                .ifPresent(b -> out.add("Farthest measured: " + value(b.value()) + ", cast "
                        + b.cast().name() + "."));
        if (!ahead.isEmpty()) {
            out.add(ahead(ahead.get(ahead.size() - 1)));
        }
        return out;
    }

    private String ahead(Forecast f) {
        if (!Double.isFinite(f.value())) {
            return "For " + f.day() + " nothing can be told: " + f.says() + ".";
        }
        String chance = Double.isFinite(f.chance()) && target != null
                ? Words.of(
                        " The chance that a session's mean then reaches %s is about %.0f %%.",
                        value(target), 100 * f.chance())
                : "";
        return "For " + f.day() + ", " + f.says() + ": " + value(f.value()) + ", in 19 of 20 such forecasts between "
                + value(f.low()) + " and " + value(f.high()) + "." + chance;
    }

    private String value(double v) {
        return Words.alike(v, Measure.unknown(trend.id(), trend.label(), trend.unit(), ""));
    }

    /**
     * Writes {@code trend.html} into a folder that appears whole or not at all.
     *
     * @throws IOException where writing failed; nothing is left behind
     */
    public void write(Path out) throws IOException {
        try (OutputFolder folder = OutputFolder.beside(out)) {
            Files.writeString(folder.staging().resolve("trend.html"), page());
            folder.publish();
        }
    }

    private String page() {
        Html html = new Html(reader);
        html.raw("<!DOCTYPE html>\n");
        html.open("html", "lang", "en").open("head");
        html.single("meta", "charset", "utf-8");
        html.single("meta", "name", "viewport", "content", "width=device-width, initial-scale=1");
        html.single("meta", "name", "color-scheme", "content", "light dark");
        html.leaf("title", Words.capital(trend.label()) + " over sessions – Bendline");
        html.open("style").raw(ComparisonPage.styleSheet()).close();
        html.close().open("body").open("main");
        html.open("section").leaf("h1", Words.capital(trend.label()) + " over sessions");
        sentences().forEach(s -> html.leaf("p", s));
        if (Lettering.works() && !trend.outings().isEmpty()) {
            html.open("figure", "class", "chart");
            for (ChartSize size : ChartSize.values()) {
                String svg = new TrendChart(trend, ahead, target).svg(size, "trend-" + size.id(), trend.label());
                html.open("div", "class", size.id())
                        .raw(Palette.themed(reader.drawn(svg)))
                        .close();
            }
            html.leaf(
                    "figcaption",
                    "Rings: casts. Bars: means of sessions. Band: where a session's mean lies 19 times of 20, if it goes on as"
                            + " it went; broken line across: the target.");
            html.close();
        }
        html.close();
        table(html);
        html.close().close().close();
        return html.toString();
    }

    private void table(Html html) {
        html.open("section").leaf("h2", "The sessions");
        html.open("table").open("thead").open("tr");
        List.of("Session", "Mean", "Casts and scatter").forEach(h -> html.leaf("th", h, "scope", "col"));
        html.close().close().open("tbody");
        for (Outing o : trend.outings()) {
            html.open("tr").leaf("th", o.session(), "scope", "row");
            html.leaf("td", value(o.mean()), "class", "number");
            html.leaf(
                    "td",
                    Words.of("%d casts", o.readings().size())
                            + (Double.isFinite(o.sd()) ? ", scatter " + value(o.sd()) : ""),
                    "class",
                    "basis");
            html.close();
        }
        html.close().close().close();
    }
}
