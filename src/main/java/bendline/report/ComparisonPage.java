package bendline.report;

import bendline.compare.CastSet;
import bendline.compare.Comparison;
import bendline.compare.Difference;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** Writes the page of a comparison: one file with everything in it, which opens without a network. */
final class ComparisonPage {

    private static final String RULES =
            "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'";

    private final Comparison c;
    private final ComparisonPictures pictures;
    private final Html html;

    ComparisonPage(Comparison comparison, ComparisonPictures pictures, Reader reader) {
        this.html = new Html(reader);
        this.c = comparison;
        this.pictures = pictures;
    }

    /** The page. */
    String write() {
        html.raw("<!DOCTYPE html>\n");
        html.open("html", "lang", "en");
        html.open("head");
        html.single("meta", "charset", "utf-8");
        html.single("meta", "http-equiv", "Content-Security-Policy", "content", RULES);
        html.single("meta", "name", "viewport", "content", "width=device-width, initial-scale=1");
        html.single("meta", "name", "color-scheme", "content", "light dark");
        html.leaf("title", c.a().label() + " against " + c.b().label() + " – Bendline");
        html.open("style").raw(styleSheet()).close();
        html.close();
        html.open("body");
        masthead();
        html.open("main");
        top();
        measures();
        new ComparisonPicturesSection(pictures, html).write();
        order();
        evenness();
        others();
        sets();
        method();
        safety();
        html.close().close().close();
        return html.toString();
    }

    private void masthead() {
        html.open("header");
        html.raw(
                "<svg class=\"mark\" viewBox=\"0 0 48 32\" aria-hidden=\"true\"><path d=\"M4 29C22 27 38 19 44 3\""
                        + " fill=\"none\" stroke=\"var(--blank)\" stroke-width=\"3\" stroke-linecap=\"round\"/><path d=\"M4 29C20 28 34 23"
                        + " 42 11\" fill=\"none\" stroke=\"var(--soft)\" stroke-width=\"2.4\" stroke-dasharray=\"5 3\"/></svg>");
        html.leaf("span", "Bendline", "class", "brand");
        html.leaf("span", "Before against after", "class", "clip");
        html.leaf(
                "span",
                Words.of("%d and %d casts", c.a().casts().size(), c.b().casts().size()),
                "class",
                "facts");
        html.close();
    }

    private void top() {
        html.open("section", "class", "top");
        html.open("div", "class", "head");
        html.leaf("p", "A: " + c.a().label() + " · B: " + c.b().label(), "class", "kicker");
        html.leaf("h1", CompareWords.headline(c));
        html.close();
        html.open("div", "class", "words");
        html.leaf("h2", "What else changed");
        List<String> besides = CompareWords.besides(c);
        if (besides.isEmpty()) {
            html.leaf("p", "Nothing that was written down.");
        } else {
            list(besides);
        }
        html.close();
        html.open("div", "class", "picture");
        html.leaf("h2", "What changed in the stroke");
        List<Difference> shown = c.family().stream().filter(Difference::shown).toList();
        if (shown.isEmpty()) {
            html.leaf("p", "Of the " + c.family().size() + " measures looked at, none by more than chance would do.");
        } else {
            list(shown.stream()
                    .map(d -> Words.capital(d.label()) + ": " + CompareWords.difference(d) + ".")
                    .toList());
        }
        html.leaf("p", CompareWords.order(c));
        html.leaf("p", c.distances());
        html.close();
        html.close();
    }

    private void list(List<String> items) {
        html.open("ul");
        items.forEach(i -> html.leaf("li", i));
        html.close();
    }

    private void measures() {
        html.open("section");
        html.leaf("h2", "Measure by measure");
        html.leaf(
                "p",
                "Rings: the casts of A. Discs: those of B. The pale bar through each is what measuring leaves open (68 %); the"
                        + " upright stroke is the middle cast. Diamond and bracket: how far B lies from A, with its interval.");
        html.open("div", "class", "pair");
        for (Difference d : c.family()) {
            html.open("article", "class", "finding " + CompareWords.frame(d));
            html.open("h3");
            html.text(Words.capital(d.label()) + " ");
            html.leaf("span", CompareWords.verdict(d), "class", "verdict");
            html.close();
            html.raw(DotRows.draw(d));
            html.leaf("p", CompareWords.difference(d) + ".", "class", "by");
            CompareWords.says(d).forEach(s -> html.leaf("p", s));
            html.close();
        }
        html.close().close();
    }

    private void order() {
        if (c.drifts().isEmpty()) {
            return;
        }
        html.open("section");
        html.leaf("h2", "Warming up and tiring");
        list(c.drifts().stream().map(d -> CompareWords.drift(d, c)).toList());
        html.close();
    }

    private void evenness() {
        html.open("section");
        html.leaf("h2", "How even the casts are");
        list(List.of(CompareWords.uneven("A", c.unevenA()), CompareWords.uneven("B", c.unevenB())));
        html.close();
    }

    private void others() {
        List<Difference> rest =
                c.differences().stream().filter(d -> !d.inFamily()).toList();
        if (rest.isEmpty()) {
            return;
        }
        html.open("section");
        html.leaf("h2", "Also looked at, without a verdict");
        html.leaf(
                "p",
                "The more one looks at, the more differs by chance. These were not chosen beforehand; to test one, film"
                        + " new casts and name it.");
        html.open("table").open("thead").open("tr");
        List.of("What", "B against A", "Casts").forEach(h -> html.leaf("th", h, "scope", "col"));
        html.close().close().open("tbody");
        for (Difference d : rest) {
            html.open("tr").leaf("th", Words.capital(d.label()), "scope", "row");
            html.leaf("td", CompareWords.difference(d), "class", "basis");
            html.leaf("td", Words.of("%d, %d", d.a().size(), d.b().size()), "class", "number");
            html.close();
        }
        html.close().close().close();
    }

    private void sets() {
        html.open("section");
        html.leaf("h2", "The casts");
        html.open("dl");
        for (CastSet set : List.of(c.a(), c.b())) {
            html.leaf("dt", (set == c.a() ? "A: " : "B: ") + set.label());
            html.leaf(
                    "dd",
                    String.join(" · ", set.casts().stream().map(x -> x.name()).toList()));
        }
        html.close().close();
    }

    private void method() {
        html.open("section", "class", "method");
        html.leaf("h2", "How this was worked out");
        html.leaf(
                "p",
                "The difference is the middle of all differences between a cast of B and one of A (Hodges–Lehmann), or between"
                        + " neighbours where casts alternate. Its interval and the chance are counted out over every way in which"
                        + " the casts could have fallen into the two sets (Mann–Whitney; Wilcoxon's signed ranks for"
                        + " neighbours), so they hold for few casts and for any scatter. Neither is ever smaller than the"
                        + " uncertainty with which the casts were measured allows. Holm's rule keeps the measures with a verdict"
                        + " together to one false alarm in twenty comparisons; each interval holds by itself. What a number of"
                        + " casts can show is worked out for bell-shaped scatter. A difference is put down to technique only"
                        + " where nothing else is known to have changed that could make it.");
        html.close();
    }

    private void safety() {
        html.open("section");
        html.leaf("h2", "Before the next casts");
        html.leaf(
                "p",
                "Nobody in front of, behind or beside the cast; no power lines, trees or boats near; check knots, leader and line;"
                        + " build up power slowly, and stop when you tire. The rules of the water and a licensed coach beside you"
                        + " come before anything written here.");
        html.close();
    }

    static String styleSheet() {
        return resource("report.css") + resource("comparison.css");
    }

    private static String resource(String name) {
        try (InputStream in = ComparisonPage.class.getResourceAsStream(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException("the style sheet is missing from the program", e);
        }
    }
}
