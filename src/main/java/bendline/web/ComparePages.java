package bendline.web;

import bendline.analysis.Progress;
import bendline.book.BookCasts;
import bendline.book.Clip;
import bendline.book.Entry;
import bendline.book.PracticeBook;
import bendline.compare.Cast;
import bendline.compare.CastSet;
import bendline.compare.Comparer;
import bendline.compare.ComparisonException;
import bendline.compare.Family;
import bendline.compare.StillAir;
import bendline.report.AnalysisFileException;
import bendline.report.ComparisonFolder;
import bendline.report.Html;
import bendline.report.ReadCast;
import bendline.report.Reader;
import io.javalin.Javalin;
import io.javalin.http.BadRequestResponse;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.Semaphore;

/** Two casts or two sets side by side: chosen here, compared as {@code compare} does. */
final class ComparePages {

    private static final int MOST = 60;
    /** Comparisons that can be read again; older ones are made anew. */
    private static final int MOST_KEPT = 20;

    private final PracticeBook book;
    private final BookCasts written;
    private final ClipPages clips;
    private final Reader reader;
    /** Who may see a comparison: whoever made it. */
    private final Map<String, String> made = Collections.synchronizedMap(new Newest<>(MOST_KEPT, this::drop));

    private final Semaphore one = new Semaphore(1);

    ComparePages(PracticeBook book, ClipPages clips, Reader reader) {
        this.reader = reader;
        this.book = book;
        this.written = new BookCasts(book);
        this.clips = clips;
    }

    void routes(Javalin app) {
        drop("");
        app.get("/compare", this::choose);
        app.post("/compare", this::compare);
        app.get("/compare/{id}/<name>", this::file);
    }

    private Path folder(String id) {
        return book.file("cache/compared").resolve(id);
    }

    private void drop(String id) {
        try {
            Workbench.delete(folder(id));
        } catch (IOException e) {
            // It goes with the others at the next start.
            return;
        }
    }

    private Map<Entry, ReadCast> casts(Visitor v) {
        Map<Entry, ReadCast> out = new LinkedHashMap<>();
        for (Map.Entry<Clip, List<Entry>> e : clips.clips(v).entrySet()) {
            for (Entry entry : e.getValue()) {
                read(entry).ifPresent(r -> out.put(entry, r));
            }
        }
        return out;
    }

    private Optional<ReadCast> read(Entry e) {
        try {
            return written.read(e);
        } catch (AnalysisFileException problem) {
            return Optional.empty();
        }
    }

    private void choose(Context ctx) {
        Visitor v = Doorkeeper.visitor(ctx);
        Map<Entry, ReadCast> casts = casts(v);
        ctx.html(Page.of("Compare", v, "", html -> {
            html.leaf("h1", "Compare");
            if (casts.size() < 2) {
                html.leaf(
                        "p",
                        "Two casts with a report are needed. A single cast against another shows how they differ;"
                                + " several on each side show what changed.");
                return;
            }
            html.leaf(
                    "p",
                    "Put casts on side A (before) and side B (after). With one on each side you see both films"
                            + " locked at release; a change can only be told from several casts a side.");
            Page.form(html, v, "/compare", "tall", h -> table(h, v, casts));
        }));
    }

    private void table(Html h, Visitor v, Map<Entry, ReadCast> casts) {
        clips.clips(v).values().stream().flatMap(List::stream).forEach(e -> {
            ReadCast r = casts.get(e);
            if (r == null) {
                return;
            }
            h.open("fieldset", "class", "pair");
            h.leaf("legend", e.name() + " · " + Objects.requireNonNull(e.clip()).name());
            for (String side : new String[] {"A", "B", "neither"}) {
                h.open("label");
                if (side.equals("neither")) {
                    h.single(
                            "input", "type", "radio", "name", "s" + e.cast().id(), "value", side, "checked", "checked");
                } else {
                    h.single("input", "type", "radio", "name", "s" + e.cast().id(), "value", side);
                }
                h.text(" " + side).close();
            }
            h.close();
        });
        h.leaf("button", "Compare");
    }

    private void compare(Context ctx) throws IOException {
        Visitor v = Doorkeeper.visitor(ctx);
        Map<Entry, ReadCast> casts = casts(v);
        Map<Entry, ReadCast> a = new LinkedHashMap<>();
        Map<Entry, ReadCast> b = new LinkedHashMap<>();
        casts.forEach((e, r) -> {
            String side = ctx.formParam("s" + e.cast().id());
            if ("A".equals(side)) {
                a.put(e, r);
            } else if ("B".equals(side)) {
                b.put(e, r);
            }
        });
        if (a.isEmpty() || b.isEmpty() || a.size() + b.size() > MOST) {
            throw new BadRequestResponse("Put at least one cast on each side, and " + MOST + " at most altogether.");
        }
        if (a.size() == 1 && b.size() == 1) {
            ctx.html(PairPage.write(
                    v, a.entrySet().iterator().next(), b.entrySet().iterator().next(), reader));
            return;
        }
        String id = UUID.randomUUID().toString();
        if (!one.tryAcquire()) {
            throw new io.javalin.http.HttpResponseException(
                    429, "Another comparison is being made; try again in a moment.");
        }
        try {
            Path out = folder(id);
            Files.createDirectories(out.getParent());
            var comparison = new Comparer(Family.USUAL, Comparer.Pairing.WHERE_THEY_ALTERNATE, StillAir.FLOWN)
                    .compare(set("A", a), set("B", b));
            ComparisonFolder.Films films = new ComparisonFolder.Films(List.copyOf(a.values()), List.copyOf(b.values()));
            new ComparisonFolder().write(comparison, films, out, reader, Progress.SILENT);
        } catch (ComparisonException e) {
            throw new BadRequestResponse(e.getMessage());
        } finally {
            one.release();
        }
        made.put(id, String.valueOf(v.personId()));
        ctx.redirect("/compare/" + id + "/comparison.html", HttpStatus.SEE_OTHER);
    }

    private CastSet set(String label, Map<Entry, ReadCast> casts) {
        List<Cast> out = new ArrayList<>();
        casts.forEach((e, r) -> out.add(written.cast(e, Optional.of(r))));
        return new CastSet(label, out);
    }

    private void file(Context ctx) {
        String id = ctx.pathParam("id");
        String name = ctx.pathParam("name");
        String whose = made.get(id);
        if (whose == null
                || !whose.equals(String.valueOf(Doorkeeper.visitor(ctx).personId()))
                || !name.matches("([a-z]+/)?[A-Za-z0-9_-]+\\.[a-z0-9]{1,5}")) {
            throw new NotFoundResponse("There is no such comparison; make it again.");
        }
        Path file = folder(id).resolve(name);
        if (!Files.isRegularFile(file)) {
            throw new NotFoundResponse("No such file.");
        }
        if (name.endsWith(".html")) {
            ClipPages.own(ctx, file, "/compare");
        } else {
            ClipPages.send(ctx, file);
        }
    }
}
