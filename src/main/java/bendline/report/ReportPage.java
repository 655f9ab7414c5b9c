package bendline.report;

import bendline.analysis.CastAnalysis;
import bendline.analysis.ClipAnalysis;
import bendline.footage.ClipInfo;
import bendline.stroke.EventKind;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Writes {@code report.html}: one file with everything in it, which opens without a network. */
final class ReportPage {

    private static final String RULES =
            "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'";

    private final ClipAnalysis analysis;
    private final Map<Integer, Still> stills;
    private final Map<Integer, List<CastCharts.Chart>> charts;
    private final Html html;
    private final ReportOptions options;

    /**
     * @param stills by frame
     * @param charts by number of the cast
     */
    ReportPage(ClipAnalysis analysis, Map<Integer, Still> stills, Map<Integer, List<CastCharts.Chart>> charts) {
        this(analysis, stills, charts, ReportOptions.PLAIN, false);
    }

    /**
     * @param options whom it is for
     * @param paged for sheets of paper: nothing folded, colours fixed, one width of each chart
     */
    ReportPage(
            ClipAnalysis analysis,
            Map<Integer, Still> stills,
            Map<Integer, List<CastCharts.Chart>> charts,
            ReportOptions options,
            boolean paged) {
        this.analysis = analysis;
        this.stills = stills;
        this.charts = charts;
        this.options = options;
        this.html = new Html(options.reader(), paged);
    }

    /** The page. */
    String write() {
        String name = options.name(analysis);
        html.raw("<!DOCTYPE html>\n");
        html.open("html", "lang", "en");
        html.open("head");
        html.single("meta", "charset", "utf-8");
        html.single("meta", "http-equiv", "Content-Security-Policy", "content", RULES);
        html.single("meta", "name", "viewport", "content", "width=device-width, initial-scale=1");
        html.single("meta", "name", "color-scheme", "content", "light dark");
        html.name("title", name + " – Bendline");
        html.open("style")
                .raw(styleSheet(html.paged() ? "paged.css" : "report.css"))
                .close();
        html.close();
        html.open("body");
        masthead(name);
        html.open("main");
        if (analysis.casts().isEmpty()) {
            withoutCast();
        }
        contents();
        for (CastAnalysis cast : analysis.casts()) {
            new CastSections(
                            analysis,
                            cast,
                            stills,
                            charts.getOrDefault(cast.stroke().number(), List.of()),
                            html)
                    .write();
        }
        filming();
        safety();
        method();
        html.close();
        html.close();
        html.close();
        return html.paged() ? Palette.fixed(html.toString()) : html.toString();
    }

    private void masthead(String name) {
        html.open("header");
        html.raw(
                "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"mark\" viewBox=\"0 0 48 32\" aria-hidden=\"true\"><path d=\"M4 29C22 27 38 19 44 3\""
                        + " fill=\"none\" stroke=\"var(--blank)\" stroke-width=\"3\" stroke-linecap=\"round\"/><path d=\"M4 29L12"
                        + " 28.2\" stroke=\"var(--ink)\" stroke-width=\"6\" stroke-linecap=\"round\"/></svg>");
        html.leaf("span", "Bendline", "class", "brand");
        html.name("span", name, "class", "clip");
        html.leaf("span", facts(), "class", "facts");
        html.close();
    }

    private String facts() {
        ClipInfo info = analysis.info();
        List<String> parts = new ArrayList<>();
        parts.add(info.width() + " × " + info.height());
        if (Double.isFinite(analysis.quality().captureRateHz())) {
            parts.add(Words.of("%.0f frames a second", analysis.quality().captureRateHz()));
        }
        parts.add(Words.of("%.1f s", info.durationSeconds()));
        if (options.day() != null) {
            parts.add("looked at " + options.reader().date(options.day()));
        }
        return String.join(" · ", parts);
    }

    private void contents() {
        if (analysis.casts().size() < 2) {
            return;
        }
        html.open("nav", "aria-label", "Casts in this clip", "class", "casts");
        html.leaf("h1", Words.of("%d casts in this clip", analysis.casts().size()));
        html.open("ul");
        for (CastAnalysis cast : analysis.casts()) {
            html.open("li");
            html.leaf(
                    "a",
                    "Cast " + cast.stroke().number() + ": " + new CastStory(analysis, cast).headline(),
                    "href",
                    "#cast" + cast.stroke().number());
            html.close();
        }
        html.close().close();
    }

    private void withoutCast() {
        html.open("section", "class", "top");
        html.open("div", "class", "head")
                .leaf("h1", "No cast found in this clip")
                .close();
        stills.values().stream().findFirst().ifPresent(this::stillOfTheClip);
        html.open("div", "class", "words");
        analysis.quality().says().stream().findFirst().ifPresent(s -> html.leaf("p", s));
        html.leaf("h2", "Do this next");
        list(analysis.quality().advice());
        html.close();
        html.close();
    }

    private void stillOfTheClip(Still still) {
        html.open("figure", "class", "picture");
        still.write(html, still.alt());
        html.leaf("figcaption", Words.of("The clip at %.2f s, with what was followed drawn in", still.seconds()));
        html.close();
    }

    private void filming() {
        html.open("section", "id", "filming");
        html.leaf("h2", "How the clip was filmed, and what to change");
        List<String> says = new ArrayList<>(analysis.quality().says());
        if (Lettering.TROUBLE != null) {
            says.add(Lettering.TROUBLE);
        }
        says.add("Slow motion: " + analysis.info().slowMotion().basis() + ".");
        says.addAll(analysis.info().notes());
        list(says);
        if (analysis.quality().advice().isEmpty()) {
            html.leaf("p", "Nothing to change: film the next one the same way, so that casts can be compared.");
        } else if (!analysis.casts().isEmpty()) {
            html.leaf("h3", "Next time");
            list(analysis.quality().advice());
        }
        html.open("p");
        html.text("The clip with everything drawn in is ");
        html.name("a", "marked.mp4", "href", "marked.mp4");
        html.text(", in the same folder as this page; frames.csv, analysis.json and charts/ there hold every number.");
        html.close();
        html.close();
    }

    private void list(List<String> items) {
        html.open("ul");
        items.forEach(i -> html.leaf("li", i));
        html.close();
    }

    private void safety() {
        html.open("section", "id", "safety");
        html.leaf("h2", "Before you try it");
        SafetyBox.write(analysis, html);
        list(List.of(
                "Nobody stands in front of the cast, behind it or within a rod and a drop of you. A rig that cracks off flies"
                        + " on at full speed, in any direction.",
                "Look up: power lines carry through a carbon rod without being touched. Keep well away from them, and from"
                        + " trees and moored boats.",
                "Use a leader fit for the weight and check knots and the first metres of line before every session; a nicked"
                        + " line is a crack-off waiting.",
                "Protect the finger that holds the line, and open the reel's clutch only where you mean to.",
                "Never cast over people, boats or roads. Keep at least 30 m from overhead power lines, yourself and the tackle"
                        + " (the network operators' advice to anglers).",
                "Build up power slowly. The rules of the water and the advice of a licensed coach who stands beside you come"
                        + " before anything written here."));
        html.close();
    }

    private void method() {
        html.open("section", "class", "method", "id", "method");
        html.fold("h2", "How this was worked out");
        html.leaf(
                "p",
                "The rod is followed in every frame from the upper hand to the tip; what was not seen is left out and never"
                        + " guessed. Smoothed angles, the distance from hand to tip and the tip's path then give the moments,"
                        + " by interpolation between frames. Times called seconds are clip time, as a player shows them;"
                        + " durations and speeds are real time. Angles and lengths are those in the picture, so they hold as"
                        + " far as the phone stood square to the cast. In the fast part of the stroke the blank is bent by"
                        + " its own inertia as well as by the rig. The limits that findings are held against are practice,"
                        + " not law: no measured study of this cast has been published that we know of.");
        if (analysis.body().trouble() == null) {
            html.leaf(
                    "p",
                    "The pale stick figure is the person whose hands are on the rod. A joint is good to about 3 % of the"
                            + " person's height; dashes are guesses where a joint is hidden. What turns towards or away from the"
                            + " phone is not measured. Nothing left this computer.");
        }
        html.open("dl");
        for (EventKind kind : EventKind.values()) {
            html.leaf("dt", EventWords.label(kind)).leaf("dd", EventWords.meaning(kind));
        }
        html.leaf("dt", "Compression")
                .leaf("dd", "how much shorter the way from hand to tip is than the straight blank");
        html.leaf("dt", "Found, not there, cannot tell")
                .leaf(
                        "dd",
                        "a fault is only called found where the numbers stand clear of their limits by more than their"
                                + " uncertainty; where they don't, or were not seen, the answer is “cannot tell”");
        html.close();
        html.close();
        html.close();
    }

    private static String styleSheet(String name) {
        try (InputStream in = ReportPage.class.getResourceAsStream(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException("the style sheet is missing from the program", e);
        }
    }
}
