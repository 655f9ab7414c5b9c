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
        frames.moments();
        charts();
        new FindingsSection(cast.review(), frames, key, html).write();
        good();
        new DistanceSection(cast.outlook(), key, html).write();
        measures();
        notTold();
        html.close();
    }

    private void top() {
        CastStory story = new CastStory(analysis, cast);
        html.open("section", "class", "top");
        html.open("div", "class", "head");
        if (analysis.casts().size() > 1) {
            html.leaf("p", "Cast " + cast.stroke().number(), "class", "kicker");
        }
        html.leaf("h1", story.headline(), "id", key + "-head");
        html.close();
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
    }

    private void charts() {
        for (CastCharts.Chart chart : charts) {
            html.open("section");
            html.leaf("h2", chart.heading());
            html.open("figure", "class", "chart");
            html.open("div", "class", ChartSize.WIDE.id())
                    .raw(Palette.themed(chart.wide()))
                    .close();
            html.open("div", "class", ChartSize.NARROW.id())
                    .raw(Palette.themed(chart.narrow()))
                    .close();
            html.leaf("figcaption", chart.caption());
            key(chart.marked());
            html.close();
            html.close();
        }
    }

    /** What the numbers on a narrow chart stand for. */
    private void key(List<EventKind> marked) {
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
        html.open("section");
        html.leaf("h2", "Measured");
        html.leaf("p", "± holds the true value in about two cases of three (68 %).");
        html.open("table");
        html.open("thead").open("tr");
        List.of("What", "Value", "Rests on").forEach(h -> html.leaf("th", h, "scope", "col"));
        html.close().close().open("tbody");
        for (Measure m : known) {
            html.open("tr").leaf("th", Words.capital(m.label()), "scope", "row");
            html.leaf("td", Words.measured(m), "class", "number").leaf("td", m.basis(), "class", "basis");
            html.close();
        }
        html.close().close().close();
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
                .forEach(m -> rows.add(new String[] {Words.capital(m.label()), m.basis()}));
        if (rows.isEmpty()) {
            return;
        }
        html.open("section");
        html.leaf("h2", "What could not be told, and why");
        html.open("dl");
        rows.forEach(r -> html.leaf("dt", r[0]).leaf("dd", r[1]));
        html.close();
        html.close();
    }
}
