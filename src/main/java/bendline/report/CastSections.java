package bendline.report;

import bendline.analysis.CastAnalysis;
import bendline.analysis.ClipAnalysis;
import bendline.stroke.EventKind;
import bendline.stroke.Measure;
import bendline.stroke.Stroke;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** The part of the page that belongs to one cast. */
final class CastSections {

    private final ClipAnalysis analysis;
    private final CastAnalysis cast;
    private final Map<Integer, Still> stills;
    private final CastFrames frames;
    private final List<CastCharts.Chart> charts;
    private final Html html;
    private final String key;

    CastSections(
            ClipAnalysis analysis,
            CastAnalysis cast,
            Map<Integer, Still> stills,
            List<CastCharts.Chart> charts,
            Html html) {
        this.analysis = analysis;
        this.cast = cast;
        this.stills = stills;
        this.frames = new CastFrames(analysis, cast.stroke(), stills, html);
        this.charts = charts;
        this.html = html;
        this.key = "cast" + cast.stroke().number();
    }

    void write() {
        html.open("article", "id", key, "aria-labelledby", key + "-head");
        top();
        if (analysis.casts().size() == 1) {
            contents();
        }
        html.deeper(analysis.casts().size() > 1 ? 1 : 0);
        frames.moments();
        charts();
        new FindingsSection(cast.review(), frames, key, html).write();
        good();
        new DistanceSection(cast.outlook(), key, html).write();
        measures();
        notTold();
        html.deeper(0);
        html.close();
    }

    private void top() {
        CastStory story = new CastStory(analysis, cast);
        boolean several = analysis.casts().size() > 1;
        html.open("section", "class", "top");
        html.open("div", "class", "head");
        if (several) {
            html.leaf("p", "Cast " + cast.stroke().number(), "class", "kicker");
        }
        html.leaf(several ? "h2" : "h1", story.headline(), "id", key + "-head", "class", "headline");
        html.close();
        html.deeper(several ? 1 : 0);
        story.picture(stills).ifPresent(still -> frames.figure(still.frame(), "picture"));
        html.open("div", "class", "words");
        story.happened().forEach(s -> html.leaf("p", s));
        html.leaf("h2", "Do this next");
        html.leaf("p", story.next(), "class", "next");
        if (!cast.review().why().isBlank()) {
            html.leaf("p", cast.review().why());
        }
        html.leaf("h2", "How sure");
        html.leaf("p", String.join(" ", story.howSure()));
        html.close();
        html.close();
        html.deeper(0);
    }

    /** Where to go from here; what is folded away is named after what it answers. */
    private void contents() {
        if (html.paged()) {
            return;
        }
        html.open("nav", "aria-label", "On this page", "class", "contents");
        html.open("ul");
        link("-moments", "The stroke in pictures");
        link("-charts", "The bend and the time lines");
        link("-findings", "What was looked for");
        link("-distance", "How far");
        link("-measures", "Every number");
        html.open("li").leaf("a", "Filming", "href", "#filming").close();
        html.open("li").leaf("a", "Safety", "href", "#safety").close();
        html.open("li").leaf("a", "How it was worked out", "href", "#method").close();
        html.close().close();
    }

    private void link(String to, String text) {
        html.open("li").leaf("a", text, "href", "#" + key + to).close();
    }

    /** The bend and the forward stroke at once; those that answer a second question can be unfolded. */
    private void charts() {
        html.open("div", "id", key + "-charts");
        charts.stream().filter(c -> c.kind().first()).forEach(this::chart);
        List<CastCharts.Chart> more =
                charts.stream().filter(c -> !c.kind().first()).toList();
        for (CastCharts.Chart c : more) {
            html.fold("h2", c.heading());
            figure(c);
            html.close();
        }
        html.close();
    }

    private void chart(CastCharts.Chart chart) {
        html.open("section");
        html.leaf("h2", chart.heading());
        figure(chart);
        html.close();
    }

    private void figure(CastCharts.Chart chart) {
        ChartFigure.open(html, chart.wide(), chart.narrow());
        html.leaf("figcaption", chart.caption());
        if (!html.paged()) {
            key(chart.marked());
        }
        html.close();
    }

    /** What the numbers on a narrow chart stand for. */
    private void key(List<EventKind> marked) {
        if (marked.isEmpty()) {
            return;
        }
        html.open("ol", "class", "key");
        marked.forEach(k -> html.leaf("li", EventWords.name(k), "value", Integer.toString(EventWords.number(k))));
        html.close();
    }

    private void good() {
        if (cast.review().good().isEmpty()) {
            return;
        }
        html.open("section");
        html.leaf("h2", "What was good");
        list(cast.review().good());
        html.close();
    }

    private void list(List<String> items) {
        html.open("ul");
        items.forEach(i -> html.leaf("li", i));
        html.close();
    }

    private void measures() {
        List<Measure> known =
                cast.stroke().measures().stream().filter(m -> m.value() != null).toList();
        if (known.isEmpty()) {
            return;
        }
        html.open("section", "id", key + "-measures");
        html.fold("h2", Words.of("Measured: %d numbers", known.size()));
        html.leaf("p", "± holds the true value in about two cases of three (68 %).");
        html.open("table");
        html.open("thead").open("tr");
        List.of("What", "Value", "Rests on").forEach(h -> html.leaf("th", h, "scope", "col"));
        html.close().close().open("tbody");
        for (Measure m : known) {
            html.open("tr").leaf("th", Words.capital(m.label()), "scope", "row");
            html.leaf("td", Words.measured(m), "class", "number")
                    .leaf("td", EventWords.spoken(m.basis()), "class", "basis");
            html.close();
        }
        html.close().close().close().close();
    }

    private void notTold() {
        List<String[]> rows = new ArrayList<>();
        Stroke s = cast.stroke();
        for (EventKind kind : EventKind.values()) {
            if (s.event(kind).seconds() == null) {
                rows.add(new String[] {EventWords.name(kind), s.event(kind).basis()});
            }
        }
        s.measures().stream()
                .filter(m -> m.value() == null)
                .forEach(m -> rows.add(new String[] {Words.capital(m.label()), EventWords.spoken(m.basis())}));
        if (rows.isEmpty()) {
            return;
        }
        html.open("section");
        html.fold("h2", Words.of("What could not be told, and why: %d", rows.size()));
        html.open("dl");
        rows.forEach(r -> html.leaf("dt", r[0]).leaf("dd", r[1]));
        html.close();
        html.close();
        html.close();
    }
}
