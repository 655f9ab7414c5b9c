package bendline.web;

import bendline.book.Clip;
import bendline.book.Correction;
import bendline.book.Drill;
import bendline.book.Note;
import bendline.book.PracticeBook;
import bendline.book.Reviews;
import io.javalin.http.BadRequestResponse;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Stepping through a clip, correcting what was followed, and talking about it. */
final class ReviewPages {

    private static final int MOST_WORDS = 2000;
    private static final int MOST_CORRECTIONS = 500;

    private final PracticeBook book;
    private final Desk desk;
    private final AnalysisQueue queue;
    private final ClipPages clips;
    private final Reviews reviews;

    ReviewPages(PracticeBook book, Desk desk, AnalysisQueue queue, ClipPages clips) {
        this.book = book;
        this.desk = desk;
        this.queue = queue;
        this.clips = clips;
        this.reviews = new Reviews(book);
    }

    void page(Context ctx) {
        Clip c = clips.clip(ctx);
        Path frames = desk.frames(c.id());
        if (!Files.isDirectory(frames) || !Files.isRegularFile(desk.followed(c.id()))) {
            if (!queue.standing(c.id()).busy()) {
                queue.ask(c.id());
            }
            ctx.redirect("/clips/" + c.id());
            return;
        }
        ctx.html(new ReviewPage(c, Doorkeeper.visitor(ctx)).write(talk(ctx, c)));
    }

    private String talk(Context ctx, Clip c) {
        return new TalkList(book, c, Doorkeeper.visitor(ctx)).write(reviews.corrections(c.id()), reviews.notes(c.id()));
    }

    void talk(Context ctx) {
        ctx.html(talk(ctx, clips.clip(ctx)));
    }

    void followed(Context ctx) {
        Path file = desk.followed(clips.clip(ctx).id());
        if (!Files.isRegularFile(file)) {
            throw new NotFoundResponse("Nothing was followed yet.");
        }
        ClipPages.send(ctx, file);
    }

    void frame(Context ctx) {
        String n = ctx.pathParam("n");
        Path file = desk.frames(clips.clip(ctx).id()).resolve(n);
        if (!n.matches("\\d{1,6}\\.jpg") || !Files.isRegularFile(file)) {
            throw new NotFoundResponse("There is no picture of that frame.");
        }
        ctx.header("Cache-Control", "private, max-age=86400, immutable");
        ClipPages.send(ctx, file);
    }

    void correct(Context ctx) {
        Clip c = clips.ownClip(ctx);
        boolean hidden = "true".equals(ctx.formParam("hidden"));
        String part = Objects.requireNonNullElse(ctx.formParam("part"), "");
        if (!Set.of("grip", "tip", "rig").contains(part)) {
            throw new BadRequestResponse("Say which part: grip, tip or rig.");
        }
        if (reviews.corrections(c.id()).size() >= MOST_CORRECTIONS) {
            throw new BadRequestResponse("This clip has " + MOST_CORRECTIONS + " corrections, which is enough.");
        }
        reviews.add(new Correction(
                UUID.randomUUID().toString(),
                c.id(),
                number(ctx, "seconds"),
                part,
                hidden ? null : (Double) number(ctx, "x"),
                hidden ? null : (Double) number(ctx, "y"),
                Doorkeeper.visitor(ctx).personId(),
                Instant.now().toString(),
                null));
        queue.corrected(c);
        ctx.status(204);
    }

    void undo(Context ctx) {
        Clip c = clips.ownClip(ctx);
        List<Correction> all = reviews.corrections(c.id()).stream()
                .filter(k -> k.undoneAt() == null)
                .toList();
        String id = Objects.requireNonNullElse(ctx.formParam("id"), "");
        Correction wanted = all.stream()
                .filter(k -> k.id().equals(id))
                .findFirst()
                .or(() -> id.isEmpty() && !all.isEmpty()
                        ? java.util.Optional.of(all.get(all.size() - 1))
                        : java.util.Optional.empty())
                .orElseThrow(() -> new BadRequestResponse("There is nothing to take back."));
        reviews.undo(c.id(), wanted.id());
        queue.corrected(c);
        ctx.status(204);
    }

    void note(Context ctx) {
        Clip c = clips.clip(ctx);
        Visitor v = Doorkeeper.visitor(ctx);
        String words = Objects.requireNonNullElse(ctx.formParam("words"), "").strip();
        String drawing = Objects.requireNonNullElse(ctx.formParam("drawing"), "");
        if (words.isEmpty() || words.length() > MOST_WORDS) {
            throw new BadRequestResponse("A note has 1 to " + MOST_WORDS + " characters.");
        }
        if (!drawing.matches("(-?\\d{1,5}(\\.\\d)?,-?\\d{1,5}(\\.\\d)?( |$)){0,2}")) {
            throw new BadRequestResponse("A line has two points.");
        }
        String answers = ctx.formParam("answers");
        if (answers != null && reviews.notes(c.id()).stream().noneMatch(n -> n.id().equals(answers))) {
            throw new BadRequestResponse("The note to answer is not there.");
        }
        String drill = "true".equals(ctx.formParam("drill")) ? set(v, c, words) : null;
        reviews.add(new Note(
                UUID.randomUUID().toString(),
                c.id(),
                number(ctx, "seconds"),
                words,
                drawing,
                v.personId(),
                answers,
                drill,
                Instant.now().toString()));
        ctx.status(204);
    }

    /** A drill for whoever cast. */
    private String set(Visitor v, Clip c, String words) {
        if (!v.seesAll()) {
            throw new io.javalin.http.ForbiddenResponse("A coach sets drills.");
        }
        String forWhom = desk.entries(c).get(0).session().personId();
        Drill drill = new Drill(
                UUID.randomUUID().toString(), forWhom, words, LocalDate.now().toString(), null);
        return book.drill(drill).id();
    }

    void drillDone(Context ctx) {
        Clip c = clips.ownClip(ctx);
        String id = ctx.pathParam("drill");
        if (reviews.notes(c.id()).stream().noneMatch(n -> id.equals(n.drillId()))) {
            throw new NotFoundResponse("There is no such drill.");
        }
        reviews.done(id, LocalDate.now().toString());
        ctx.status(204);
    }

    private static double number(Context ctx, String name) {
        @Nullable String text = ctx.formParam(name);
        try {
            double value = Double.parseDouble(Objects.requireNonNullElse(text, ""));
            if (value >= 0 && value < 1e5) {
                return value;
            }
        } catch (NumberFormatException e) {
            // Told below.
        }
        throw new BadRequestResponse(name + " must be a number from 0, not \"" + text + "\".");
    }
}
