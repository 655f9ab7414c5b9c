package bendline.report;

import bendline.analysis.CastAnalysis;
import bendline.analysis.ClipAnalysis;
import bendline.stroke.Event;
import bendline.stroke.EventKind;
import bendline.stroke.Measure;
import bendline.stroke.Stroke;
import bendline.technique.Finding;
import bendline.technique.Finding.Check;
import bendline.technique.Finding.State;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/** The part of the page that belongs to one cast. */
final class CastSections {

    private final ClipAnalysis analysis;
    private final CastAnalysis cast;
    private final Map<Integer, Still> stills;
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
        this.charts = charts;
        this.html = html;
        this.key = "cast" + cast.stroke().number();
    }

    void write() {
        html.open("article", "id", key, "aria-labelledby", key + "-head");
        top();
        strip();
        charts();
        findings();
        good();
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
        story.picture(stills).ifPresent(still -> figure(still, captionOf(still.frame()), "picture"));
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

    private void strip() {
        Map<Integer, List<Event>> byFrame = new TreeMap<>();
        known().forEach(e ->
                byFrame.computeIfAbsent(e.frame(), f -> new ArrayList<>()).add(e));
        byFrame.keySet().retainAll(stills.keySet());
        if (byFrame.isEmpty()) {
            return;
        }
        html.open("section");
        html.leaf("h2", "The stroke, moment by moment");
        html.leaf(
                "p",
                "Solid line: the blank. Ring and beads: the tip and where it came from. Diamond: the rig. Arc: the butt angle"
                        + " (0° level ahead, 90° upright, 180° level behind).");
        html.open("div", "class", "strip", "tabindex", "0", "role", "region", "aria-label", "Frames of the moments");
        byFrame.forEach((frame, events) -> figure(stills.get(frame), caption(frame, events), "frame"));
        html.close();
        html.close();
    }

    private List<Event> known() {
        return cast.stroke().events().values().stream()
                .filter(e -> e.seconds() != null && e.frame() != null)
                .sorted(Comparator.comparing(Event::seconds))
                .toList();
    }

    private void figure(Still still, String caption, String style) {
        html.open("figure", "class", style);
        html.single(
                "img",
                "src",
                still.address(),
                "width",
                Integer.toString(still.width()),
                "height",
                Integer.toString(still.height()),
                "alt",
                caption + ". " + still.alt());
        html.leaf("figcaption", caption);
        html.close();
    }

    private String captionOf(int frame) {
        List<Event> events = known().stream().filter(e -> e.frame() == frame).toList();
        return caption(frame, events);
    }

    private String caption(int frame, List<Event> events) {
        double angle = CastPainter.buttAngleDeg(cast.stroke(), frame);
        String butt = Double.isFinite(angle) ? Words.of(", butt %.0f°", angle) : "";
        if (events.isEmpty()) {
            return Words.of("Frame %d, %.3f s%s", frame, analysis.info().times().get(frame), butt);
        }
        List<String> names = events.stream()
                .map(e -> Words.of(
                        "%s, %.3f s ± %.0f ms", EventWords.label(e.kind()), e.seconds(), 1000 * e.plusMinusSeconds()))
                .toList();
        return String.join("; ", names) + butt;
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

    private void findings() {
        html.open("section");
        html.leaf("h2", "What was looked for");
        html.leaf(
                "p",
                "On each line the dot is what was measured, the bar through it its uncertainty, the upright stroke"
                        + " the limit, and the hatched side the fault's.");
        in(State.FOUND).sorted(Comparator.comparing(f -> -f.severity())).forEach(this::finding);
        in(State.CLEAR).forEach(this::finding);
        List<Finding> open = in(State.CANNOT_TELL).toList();
        if (!open.isEmpty()) {
            html.open("section", "class", "finding cannot-tell");
            html.open("h3")
                    .text("The rest ")
                    .leaf("span", "Cannot tell", "class", "verdict")
                    .close();
            html.open("dl");
            open.forEach(
                    f -> html.leaf("dt", f.title(), "id", key + "-" + f.id()).leaf("dd", f.says()));
            html.close();
            html.close();
        }
        html.close();
    }

    private Stream<Finding> in(State state) {
        return cast.review().findings().stream().filter(f -> f.state() == state);
    }

    private void finding(Finding f) {
        html.open("section", "class", "finding " + f.state().id(), "id", key + "-" + f.id());
        html.open("h3").text(f.title() + " ");
        html.leaf("span", StateWords.verdict(f), "class", "verdict").close();
        if (f.checks().isEmpty()) {
            html.leaf("p", f.says());
        } else {
            if (f.state() == State.FOUND) {
                html.leaf("p", f.brief());
            }
            html.open("ul", "class", "checks");
            for (int i = 0; i < f.checks().size(); i++) {
                check(f.checks().get(i), key + "-" + f.id() + "-" + i);
            }
            html.close();
        }
        if (f.state() == State.FOUND) {
            evidence(f);
            labelled("What it costs", f.cost());
            labelled("Drill", f.drill());
        }
        html.close();
    }

    private void check(Check check, String id) {
        html.open("li");
        html.open("span").leaf("b", Words.capital(check.measure().label()));
        String value = check.measure().value() == null ? "" : Words.measured(check.measure()) + ", ";
        html.text(": " + value + StateWords.says(check));
        html.close().raw(LimitLine.draw(check, id));
        html.close();
    }

    private void evidence(Finding f) {
        List<Integer> shown =
                f.evidenceFrames().stream().filter(stills::containsKey).toList();
        if (shown.isEmpty()) {
            return;
        }
        html.open("div", "class", "strip", "tabindex", "0", "role", "region", "aria-label", "Frames that show it");
        shown.forEach(frame -> figure(stills.get(frame), captionOf(frame), "frame"));
        html.close();
    }

    private void labelled(String label, String text) {
        if (!text.isBlank()) {
            html.open("p").leaf("b", label + ": ").text(text).close();
        }
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
