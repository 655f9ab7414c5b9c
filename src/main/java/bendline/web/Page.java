package bendline.web;

import bendline.report.Html;
import java.util.function.Consumer;

/** The frame of every page. */
final class Page {

    private Page() {}

    static String of(String title, Visitor visitor, String script, Consumer<Html> body) {
        Html html = new Html();
        html.raw("<!DOCTYPE html>\n").open("html", "lang", "en").open("head");
        html.single("meta", "charset", "utf-8");
        html.single("meta", "name", "viewport", "content", "width=device-width, initial-scale=1");
        html.single("meta", "name", "color-scheme", "content", "light dark");
        html.single("meta", "name", "page", "content", visitor.proof());
        html.leaf("title", title + " – Bendline");
        html.single("link", "rel", "icon", "href", "/static/mark.svg");
        html.single("link", "rel", "stylesheet", "href", "/static/report.css");
        html.single("link", "rel", "stylesheet", "href", "/static/web.css");
        if (!script.isEmpty()) {
            html.leaf("script", "", "src", "/static/" + script, "type", "module");
        }
        html.close().open("body");
        masthead(html, visitor);
        html.open("main");
        body.accept(html);
        html.close().close().close();
        return html.toString();
    }

    private static void masthead(Html html, Visitor visitor) {
        html.open("header");
        html.raw("<svg class=\"mark\" viewBox=\"0 0 48 32\" aria-hidden=\"true\"><path d=\"M4 29C22 27 38 19 44 3\""
                + " fill=\"none\" stroke=\"var(--blank)\" stroke-width=\"3\" stroke-linecap=\"round\"/><path d=\"M4 29L12"
                + " 28.2\" stroke=\"var(--ink)\" stroke-width=\"6\" stroke-linecap=\"round\"/></svg>");
        html.leaf("span", "Bendline", "class", "brand");
        if (visitor.allowed()) {
            html.open("nav", "aria-label", "Pages", "class", "pages");
            html.leaf("a", "Clips", "href", "/");
            html.leaf("a", "Compare", "href", "/compare");
            if (visitor.person() != null) {
                html.leaf("a", "Club", "href", "/club");
            }
            html.close();
            if (visitor.person() != null) {
                html.leaf("span", visitor.person().name() + ", " + visitor.role(), "class", "facts");
                form(html, visitor, "/leave", "inline", h -> h.leaf("button", "Sign out", "class", "quiet"));
            }
        }
        html.close();
    }

    /** A form that proves where it comes from. */
    static void form(Html html, Visitor visitor, String to, String look, Consumer<Html> fields) {
        html.open("form", "method", "post", "action", to, "class", look);
        html.single("input", "type", "hidden", "name", "page", "value", visitor.proof());
        fields.accept(html);
        html.close();
    }
}
