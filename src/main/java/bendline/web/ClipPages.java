package bendline.web;

import bendline.book.Arrivals;
import bendline.book.Clip;
import bendline.book.Entry;
import bendline.book.Membership;
import bendline.book.PracticeBook;
import bendline.book.Selection;
import bendline.book.Upload;
import bendline.report.Html;
import io.javalin.http.ContentType;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** The list of clips, the page of one clip, and the files of its report. */
final class ClipPages {

    private final PracticeBook book;
    private final Desk desk;
    private final AnalysisQueue queue;
    private final Room room;
    private final Membership membership;

    ClipPages(PracticeBook book, Desk desk, AnalysisQueue queue, Room room) {
        this.book = book;
        this.desk = desk;
        this.queue = queue;
        this.room = room;
        this.membership = new Membership(book);
    }

    /** The clip that a request names, where the visitor may see it; others are as if they weren't there. */
    Clip clip(Context ctx) {
        return desk.clip(ctx.pathParam("clip"))
                .filter(c -> sees(Doorkeeper.visitor(ctx), c))
                .orElseThrow(() -> new NotFoundResponse("There is no such clip, or it isn't shared with you."));
    }

    /** The same for what only its owner and coaches do. */
    Clip ownClip(Context ctx) {
        Clip clip = clip(ctx);
        Visitor v = Doorkeeper.visitor(ctx);
        if (!owns(v, clip)) {
            throw new io.javalin.http.ForbiddenResponse("Only the clip's owner or a coach does that.");
        }
        return clip;
    }

    /** Whether the visitor may change what is made of a clip. */
    boolean owns(Visitor v, Clip c) {
        return desk.entries(c).stream().anyMatch(v::owns);
    }

    boolean sees(Visitor v, Clip c) {
        return v.seesAll() || owns(v, c) || membership.sharedWith(c.id()).contains(v.personId());
    }

    /** Clips that the visitor may see with their casts, the newest first. */
    Map<Clip, List<Entry>> clips(Visitor v) {
        Map<Clip, List<Entry>> out = new LinkedHashMap<>();
        List<Entry> all = new ArrayList<>(book.entries(Selection.ALL));
        Collections.reverse(all);
        for (Entry e : all) {
            Clip c = e.clip();
            if (c != null && (v.owns(e) || membership.sharedWith(c.id()).contains(v.personId()))) {
                out.computeIfAbsent(c, k -> new ArrayList<>()).add(0, e);
            }
        }
        return out;
    }

    void home(Context ctx) {
        Visitor v = Doorkeeper.visitor(ctx);
        ctx.html(Page.of("Clips", v, "upload.js", html -> {
            html.leaf("h1", "Clips");
            taking(html);
            unfinished(html, v);
            html.open("section").leaf("h2", "In the book");
            Map<Clip, List<Entry>> clips = clips(v);
            if (clips.isEmpty()) {
                html.leaf(
                        "p",
                        "Nothing yet. Film one cast from the side, the whole rod in the picture, and send it above.");
            }
            html.open("ul", "class", "clips");
            clips.forEach((c, entries) -> line(html, c, entries));
            html.close().close();
        }));
    }

    private void taking(Html html) {
        html.open("section", "class", "top take");
        html.open("div");
        html.leaf("label", "Film or choose clips", "for", "pick", "class", "next");
        html.leaf(
                "p",
                "What has gone up stays: if the connection breaks, choose the same clip again and it goes on from there.");
        html.single("input", "id", "pick", "type", "file", "accept", "video/*,.mkv,.avi", "multiple", "multiple");
        html.leaf("p", "On a computer, clips can be dropped anywhere on this page.", "class", "basis");
        html.close();
        html.open("div");
        html.leaf("p", room(), "class", room.freeBytes() < Room.LITTLE_BYTES ? "next" : "basis");
        html.leaf("noscript", "Sending clips needs JavaScript, because it goes on where it stopped.");
        html.close();
        html.leaf("div", "", "id", "sending", "role", "status", "aria-live", "polite");
        html.close();
    }

    private String room() {
        long free = room.freeBytes();
        return free < Room.LITTLE_BYTES
                ? "The disk is nearly full: " + Room.words(free) + " are left. Make room before you send clips."
                : Room.words(free) + " free on the disk.";
    }

    private void unfinished(Html html, Visitor v) {
        List<Upload> open = new Arrivals(book)
                .uploads().stream()
                        .filter(u -> Objects.equals(u.personId(), v.personId()))
                        .toList();
        if (open.isEmpty()) {
            return;
        }
        html.open("section").leaf("h2", "On their way").open("ul");
        open.forEach(u -> html.leaf("li", u.name() + ", " + Room.words(u.bytes()) + ": choose it again to go on"));
        html.close().close();
    }

    private void line(Html html, Clip c, List<Entry> entries) {
        html.open("li");
        html.leaf("a", c.name(), "href", "/clips/" + c.id(), "class", "clip");
        html.leaf("span", entries.get(0).session().name() + " · " + words(c), "class", "facts");
        html.close();
    }

    private String words(Clip c) {
        Standing s = queue.standing(c.id());
        return switch (s.state()) {
            case "waiting" -> "waits, " + Math.max(0, queue.ahead(c.id())) + " before it";
            case "working", "following" -> "being analysed";
            case "failed" -> "could not be analysed";
            case "new" -> "not analysed yet";
            default -> "report ready";
        };
    }

    void one(Context ctx) {
        Clip c = clip(ctx);
        Visitor v = Doorkeeper.visitor(ctx);
        Standing s = queue.standing(c.id());
        ctx.html(Page.of(c.name(), v, "progress.js", html -> {
            html.leaf("h1", c.name());
            html.leaf("p", desk.entries(c).get(0).session().name() + ", " + Room.words(c.bytes()), "class", "kicker");
            html.open("section", "class", "top", "id", "standing", "data-clip", c.id(), "data-state", s.state());
            html.open("div");
            html.leaf("p", told(s, c), "id", "says", "class", "next", "role", "status");
            if (s.busy()) {
                html.leaf("progress", "", "id", "bar", "max", "1", "value", "0", "aria-label", "Progress of the stage");
            }
            if (desk.report(c).isPresent()) {
                html.open("p", "class", "doors");
                html.leaf("a", "Read the report", "href", "/clips/" + c.id() + "/report/report.html", "class", "door");
                html.leaf("a", "Step through and correct", "href", "/clips/" + c.id() + "/review", "class", "door");
                html.close();
            }
            html.close().close();
            if (!s.busy() && owns(v, c)) {
                Page.form(html, v, "/clips/" + c.id() + "/again", "inline", h -> h.leaf("button", "Analyse again"));
                sharing(html, v, c);
            }
        }));
    }

    private void sharing(Html html, Visitor v, Clip c) {
        if (v.person() == null) {
            return;
        }
        var with = membership.sharedWith(c.id());
        html.open("section").leaf("h2", "Who sees it");
        html.leaf("p", "You, every coach, and those you share it with.");
        membership.members().stream()
                .filter(m -> !m.coach() && !m.personId().equals(v.personId()))
                .forEach(m -> book.people().stream()
                        .filter(p -> p.id().equals(m.personId()))
                        .forEach(p -> Page.form(html, v, "/clips/" + c.id() + "/share", "inline", h -> {
                            boolean shared = with.contains(p.id());
                            h.single("input", "type", "hidden", "name", "with", "value", p.id());
                            h.single("input", "type", "hidden", "name", "on", "value", Boolean.toString(!shared));
                            h.leaf("button", (shared ? "Stop sharing with " : "Share with ") + p.name());
                        })));
        html.close();
    }

    private String told(Standing s, Clip c) {
        return switch (s.state()) {
            case "waiting" ->
                s.says().isEmpty() ? "Waits its turn: " + Math.max(0, queue.ahead(c.id())) + " before it." : s.says();
            case "working", "following" -> s.says();
            case "failed" -> s.says();
            case "new" -> "Not analysed yet.";
            default -> "The report is ready.";
        };
    }

    void again(Context ctx) {
        Clip c = ownClip(ctx);
        queue.ask(c.id());
        ctx.redirect("/clips/" + c.id(), io.javalin.http.HttpStatus.SEE_OTHER);
    }

    /** A file of the newest report. */
    void file(Context ctx) {
        Path folder = desk.report(clip(ctx)).orElseThrow(() -> new NotFoundResponse("There is no report yet."));
        String name = ctx.pathParam("name");
        if (!name.matches("([a-z]+/)?[A-Za-z0-9_-]+\\.[a-z0-9]{1,5}")) {
            throw new NotFoundResponse("No such file.");
        }
        Path file = folder.resolve(name);
        if (!Files.isRegularFile(file)) {
            throw new NotFoundResponse("No such file.");
        }
        if (name.endsWith(".html")) {
            own(ctx, file, "/clips/" + ctx.pathParam("clip"));
        } else {
            send(ctx, file);
        }
    }

    /** A page that we wrote to stand alone: its style is inside it, and it gets a way back. */
    static void own(Context ctx, Path file, String back) {
        ctx.header(
                "Content-Security-Policy",
                "default-src 'none'; style-src 'unsafe-inline'; img-src 'self' data:; media-src 'self'; base-uri 'none';"
                        + " form-action 'none'; frame-ancestors 'none'");
        try {
            String way = new Html()
                    .open("nav", "aria-label", "Way back")
                    .leaf("a", "Back to the clips", "href", back)
                    .close()
                    .toString();
            ctx.html(Files.readString(file).replaceFirst("<main>", "<main>" + way));
        } catch (IOException e) {
            throw new UncheckedIOException("the page could not be read", e);
        }
    }

    static void send(Context ctx, Path file) {
        try {
            String name = file.getFileName().toString();
            ContentType type = ContentType.getContentTypeByExtension(name.substring(name.lastIndexOf('.') + 1));
            String said = type == null ? "application/octet-stream" : type.getMimeType();
            ctx.writeSeekableStream(Files.newInputStream(file), said, Files.size(file));
        } catch (IOException e) {
            throw new UncheckedIOException("the file could not be read", e);
        }
    }
}
