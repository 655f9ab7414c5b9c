package bendline.web;

import bendline.book.Clip;
import bendline.book.Correction;
import bendline.book.Drill;
import bendline.book.Note;
import bendline.book.Person;
import bendline.book.PracticeBook;
import bendline.report.EventWords;
import bendline.report.Html;
import bendline.stroke.EventKind;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** The corrections and notes of a clip, with who and when. */
final class TalkList {

    private static final DateTimeFormatter WHEN =
            DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT).withZone(ZoneId.systemDefault());

    private static final Map<String, String> PARTS = Map.of("grip", "upper hand", "tip", "tip", "rig", "rig");

    private final Clip clip;
    private final Visitor visitor;
    private final boolean mayCorrect;
    private final Map<String, String> names;
    private final Map<String, Drill> drills;
    private final Html html = new Html();

    TalkList(PracticeBook book, Clip clip, Visitor visitor, boolean mayCorrect) {
        this.mayCorrect = mayCorrect;
        this.clip = clip;
        this.visitor = visitor;
        this.names = book.people().stream().collect(Collectors.toMap(Person::id, Person::name));
        this.drills = book.drills().stream().collect(Collectors.toMap(Drill::id, d -> d));
    }

    String write(List<Correction> corrections, List<Note> notes) {
        html.open("h2").text("Notes").close();
        if (notes.isEmpty()) {
            html.leaf("p", "None yet.", "class", "basis");
        }
        html.open("ul", "class", "talk");
        notes.stream().filter(n -> n.answers() == null).forEach(n -> note(n, notes));
        html.close();
        html.leaf("h2", "Corrections");
        if (corrections.isEmpty()) {
            html.leaf("p", "None: everything stands as the program found it.", "class", "basis");
        }
        html.open("ul", "class", "talk");
        corrections.forEach(this::correction);
        html.close();
        return html.toString();
    }

    private String by(@Nullable String personId, String at) {
        return names.getOrDefault(personId == null ? "" : personId, "you") + ", " + WHEN.format(Instant.parse(at));
    }

    private void note(Note n, List<Note> all) {
        html.open("li", "data-drawing", n.drawing(), "data-seconds", Double.toString(n.seconds()));
        moment(n.seconds());
        html.leaf("p", (n.drillId() == null ? "" : "Drill: ") + n.words());
        String drawn = Drawing.words(n.drawing());
        html.leaf("p", by(n.personId(), n.madeAt()) + (drawn.isEmpty() ? "" : ", " + drawn), "class", "basis");
        drill(n);
        html.open("ul");
        all.stream().filter(a -> n.id().equals(a.answers())).forEach(a -> {
            html.open("li").leaf("p", a.words()).leaf("p", by(a.personId(), a.madeAt()), "class", "basis");
            html.close();
        });
        html.close();
        html.open("details").leaf("summary", "Answer");
        Page.form(html, visitor, "/clips/" + clip.id() + "/notes", "note", h -> {
            h.single("input", "type", "hidden", "name", "answers", "value", n.id());
            h.single("input", "type", "hidden", "name", "seconds", "value", Double.toString(n.seconds()));
            h.leaf("label", "Your answer", "for", "a" + n.id());
            h.leaf("textarea", "", "id", "a" + n.id(), "name", "words", "rows", "2", "required", "required");
            h.leaf("button", "Answer");
        });
        html.close().close();
    }

    private void drill(Note n) {
        Drill d = n.drillId() == null ? null : drills.get(n.drillId());
        if (d == null) {
            return;
        }
        if (d.doneOn() != null) {
            html.leaf("p", "Done on " + d.doneOn(), "class", "basis");
        } else if (mayCorrect) {
            Page.form(
                    html,
                    visitor,
                    "/clips/" + clip.id() + "/drills/" + d.id() + "/done",
                    "note",
                    h -> h.leaf("button", "Drill done"));
        }
    }

    private void moment(double seconds) {
        html.leaf(
                "button",
                String.format(Locale.ROOT, "%.2f s", seconds),
                "type",
                "button",
                "class",
                "moment quiet",
                "data-seconds",
                Double.toString(seconds));
    }

    private void correction(Correction c) {
        html.open("li");
        moment(c.seconds());
        String what = EventKind.of(c.part())
                .map(kind -> EventWords.name(kind) + ": put on this frame")
                .orElseGet(() -> PARTS.get(c.part()) + (c.x() == null ? " can't be seen here" : " moved"));
        html.leaf(c.undoneAt() == null ? "p" : "del", what);
        html.leaf("p", by(c.personId(), c.madeAt()) + (c.undoneAt() == null ? "" : "; taken back"), "class", "basis");
        if (c.undoneAt() == null && mayCorrect) {
            Page.form(html, visitor, "/clips/" + clip.id() + "/undo", "note", h -> {
                h.single("input", "type", "hidden", "name", "id", "value", c.id());
                h.leaf("button", "Take back", "class", "quiet");
            });
        }
        html.close();
    }
}
