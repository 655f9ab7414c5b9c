package bendline.web;

import bendline.book.Clip;
import bendline.report.EventWords;
import bendline.report.Html;
import bendline.stroke.EventKind;

/** The page on which a clip is stepped through; {@code review.js} brings it to life. */
final class ReviewPage {

    private final Clip clip;
    private final Visitor visitor;
    private final boolean mayCorrect;

    ReviewPage(Clip clip, Visitor visitor, boolean mayCorrect) {
        this.clip = clip;
        this.visitor = visitor;
        this.mayCorrect = mayCorrect;
    }

    String write(String talk) {
        return Page.of("Review " + clip.name(), visitor, "review.js", html -> {
            html.open("div", "id", "review", "data-clip", clip.id(), "data-may", Boolean.toString(mayCorrect));
            html.open("h1")
                    .leaf("a", clip.name(), "href", "/clips/" + clip.id())
                    .close();
            html.leaf("p", "Loading …", "id", "says", "role", "status", "class", "kicker");
            html.open("div", "class", "desk").open("div", "class", "film");
            stage(html);
            html.raw("<svg id=\"curves\" role=\"group\" aria-label=\"Time line: bend and butt angle, with the moments\""
                    + "></svg>\n");
            steps(html);
            html.leaf("div", "", "id", "moments", "role", "group", "aria-label", "Moments of the cast");
            html.leaf(
                    "p",
                    "Solid: bend, % shorter from hand to tip. Dashed: butt angle, 0° forward and level, 90° up. Numbers: the"
                            + " moments above.",
                    "class",
                    "basis");
            html.close();
            html.open("div", "class", "side");
            if (mayCorrect) {
                correcting(html);
            }
            noting(html);
            html.open("section", "id", "talk").raw(talk).close();
            html.close().close().close();
        });
    }

    private static void stage(Html html) {
        html.open(
                "div",
                "id",
                "stage",
                "tabindex",
                "0",
                "role",
                "group",
                "aria-label",
                "The picture. Left and right step one frame, up goes on ten and down back ten, space plays, plus and minus zoom.");
        html.open("div", "id", "lens");
        html.single("img", "id", "frame", "alt", "");
        html.raw("<svg id=\"over\" aria-hidden=\"true\"></svg>");
        html.close().close();
    }

    private static void steps(Html html) {
        html.open("div", "class", "steps", "role", "group", "aria-label", "Step and play");
        button(html, "back", "◀ Frame");
        button(html, "play", "Play");
        button(html, "on", "Frame ▶");
        html.leaf("label", "Speed", "for", "speed");
        html.open("select", "id", "speed");
        html.leaf("option", "1/8", "value", "0.125");
        html.leaf("option", "1/4", "value", "0.25", "selected", "selected");
        html.leaf("option", "1/2", "value", "0.5");
        html.leaf("option", "1", "value", "1");
        html.close();
        button(html, "closer", "Zoom +");
        button(html, "wider", "Zoom −");
        html.close();
        html.leaf("label", "Frame", "for", "at");
        html.single("input", "id", "at", "type", "range", "min", "0", "max", "0", "value", "0");
    }

    private static void button(Html html, String id, String words) {
        html.leaf("button", words, "id", id, "type", "button");
    }

    private static void correcting(Html html) {
        html.open("section", "class", "tools").leaf("h2", "Is a mark wrong?");
        html.leaf(
                "p",
                "Choose the part, then drag it to where it is on this frame. By keyboard: Move, arrows, Enter; Escape leaves it.",
                "class",
                "basis");
        html.open("fieldset").leaf("legend", "Part");
        part(html, "tip", "Tip (ring)", true);
        part(html, "grip", "Upper hand (square)", false);
        part(html, "rig", "Rig (diamond)", false);
        html.close().open("div", "class", "steps");
        button(html, "move", "Move");
        button(html, "hidden", "Not to be seen here");
        html.close().close();
        html.open("section", "class", "tools").leaf("h2", "Is a moment wrong?");
        html.leaf(
                "p",
                "Drag its number on the time line, or step to its frame and put it there. By keyboard, on the number: left and"
                        + " right move it, Enter keeps it, Escape leaves it; up and down go to the others.",
                "class",
                "basis");
        html.leaf("label", "Moment", "for", "which").open("select", "id", "which");
        for (EventKind kind : EventKind.values()) {
            html.leaf("option", EventWords.label(kind), "value", kind.id());
        }
        html.close().open("div", "class", "steps");
        button(html, "put", "It is on this frame");
        button(html, "undo", "Undo the last correction");
        html.close().close();
    }

    private static void part(Html html, String value, String words, boolean chosen) {
        html.open("label");
        if (chosen) {
            html.single("input", "type", "radio", "name", "part", "value", value, "checked", "checked");
        } else {
            html.single("input", "type", "radio", "name", "part", "value", value);
        }
        html.text(" " + words).close();
    }

    private void noting(Html html) {
        html.open("section", "class", "tools").leaf("h2", "Say something about this frame");
        Page.form(html, visitor, "/clips/" + clip.id() + "/notes", "note", h -> {
            h.single("input", "type", "hidden", "name", "seconds", "id", "noteSeconds", "value", "0");
            h.single("input", "type", "hidden", "name", "drawing", "id", "drawing", "value", "");
            h.leaf("label", "Note", "for", "words");
            h.leaf(
                    "textarea",
                    "",
                    "id",
                    "words",
                    "name",
                    "words",
                    "rows",
                    "3",
                    "required",
                    "required",
                    "maxlength",
                    "2000");
            h.open("div", "class", "steps");
            h.leaf("button", "Draw a line", "type", "button", "id", "draw", "aria-pressed", "false");
            h.leaf("button", "Draw an angle", "type", "button", "id", "angle", "aria-pressed", "false");
            h.close().open("div", "class", "steps");
            if (visitor.seesAll()) {
                h.open("label").single("input", "type", "checkbox", "name", "drill", "value", "true");
                h.text(" As a drill").close();
            }
            h.leaf("button", "Keep the note");
            h.close();
        });
        html.close();
    }
}
