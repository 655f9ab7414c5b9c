package bendline.web;

import bendline.book.Clip;
import bendline.book.Correction;
import bendline.book.Drill;
import bendline.book.Note;
import bendline.book.PracticeBook;
import bendline.book.Reviews;
import bendline.report.EventWords;
import bendline.report.FollowedClip;
import bendline.stroke.EventKind;
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
        if (!Files.isDirectory(desk.frames().of(c.id())) || !Files.isRegularFile(desk.followed(c.id()))) {
            if (!queue.standing(c.id()).busy()) {
                queue.ask(c.id());
            }
            ctx.redirect("/clips/" + c.id());
            return;
        }
        desk.frames().looked(c.id());
        Visitor v = Doorkeeper.visitor(ctx);
        ctx.html(new ReviewPage(c, v, clips.owns(v, c)).write(talk(ctx, c)));
    }

    private String talk(Context ctx, Clip c) {
        Visitor v = Doorkeeper.visitor(ctx);
        return new TalkList(book, c, v, clips.owns(v, c)).write(reviews.corrections(c.id()), reviews.notes(c.id()));
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
        Path file = desk.frames().of(clips.clip(ctx).id()).resolve(n);
        if (!n.matches("\\d{1,6}\\.jpg") || !Files.isRegularFile(file)) {
            throw new NotFoundResponse("There is no picture of that frame.");
        }
        ctx.header("Cache-Control", "private, max-age=86400, immutable");
        ClipPages.send(ctx, file);
    }

    void correct(Context ctx) {
        Clip c = clips.ownClip(ctx);
        if (reviews.corrections(c.id()).size() >= MOST_CORRECTIONS) {
            throw new BadRequestResponse("This clip has " + MOST_CORRECTIONS + " corrections, which is enough.");
        }
        Correction given = given(ctx, c.id());
        check(given);
        reviews.add(given);
        queue.corrected(c);
        ctx.status(204);
    }

    private static Correction given(Context ctx, String clipId) {
        String part = Objects.requireNonNullElse(ctx.formParam("part"), "");
        boolean moment = EventKind.of(part).isPresent();
        if (!moment && !Set.of("grip", "tip", "rig").contains(part)) {
            throw new BadRequestResponse("Say what is to be put right: grip, tip, rig or a moment.");
        }
        boolean placed = !moment && !"true".equals(ctx.formParam("hidden"));
        return new Correction(
                UUID.randomUUID().toString(),
                clipId,
                number(ctx, "seconds"),
                part,
                placed ? (Double) number(ctx, "x") : null,
                placed ? (Double) number(ctx, "y") : null,
                Doorkeeper.visitor(ctx).personId(),
                Instant.now().toString(),
                null);
    }

    /** What can't be is refused before it is kept: the analysis would stumble over it every time. */
    private void check(Correction given) {
        if (!Files.isRegularFile(desk.followed(given.clipId()))) {
            throw new BadRequestResponse("The clip has to be analysed before it can be corrected.");
        }
        FollowedClip is = FollowedClip.read(desk.followed(given.clipId()));
        boolean outside = given.x() != null && (given.x() > is.width() || given.y() > is.height());
        if (outside || is.times().stream().noneMatch(t -> Math.abs(t - given.seconds()) < 1e-5)) {
            throw new BadRequestResponse("That is outside the clip.");
        }
        EventKind.of(given.part())
                .ifPresent(kind -> kind.against(is.castAt(given.seconds()), given.seconds())
                        .ifPresent(other -> {
                            throw new BadRequestResponse("“" + EventWords.name(kind) + "” can't be on that side of “"
                                    + EventWords.name(other) + "”; move that one first.");
                        }));
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
        if (!Drawing.isOne(drawing)) {
            throw new BadRequestResponse("A line has two points and an angle three.");
        }
        String answers = ctx.formParam("answers");
        if (answers != null && reviews.notes(c.id()).stream().noneMatch(n -> n.id().equals(answers))) {
            throw new BadRequestResponse("The note to answer is not there.");
        }
        Drill drill = "true".equals(ctx.formParam("drill")) ? drill(v, c, words) : null;
        Note note = new Note(
                UUID.randomUUID().toString(),
                c.id(),
                number(ctx, "seconds"),
                words,
                drawing,
                v.personId(),
                answers,
                drill == null ? null : drill.id(),
                Instant.now().toString());
        reviews.add(note, drill);
        ctx.status(204);
    }

    /** A drill for whoever cast. */
    private Drill drill(Visitor v, Clip c, String words) {
        if (!v.seesAll()) {
            throw new io.javalin.http.ForbiddenResponse("A coach sets drills.");
        }
        String forWhom = desk.entries(c).get(0).session().personId();
        return new Drill(
                UUID.randomUUID().toString(), forWhom, words, LocalDate.now().toString(), null);
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
