package bendline.web;

import bendline.book.Arrivals;
import bendline.book.BookException;
import bendline.book.Clip;
import bendline.book.Entry;
import bendline.book.Person;
import bendline.book.PracticeBook;
import bendline.book.Session;
import bendline.book.Upload;
import io.javalin.http.Context;
import io.javalin.http.ForbiddenResponse;
import io.javalin.http.HandlerType;
import io.javalin.http.HttpResponseException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import me.desair.tus.server.TusFileUploadService;
import me.desair.tus.server.exception.TusException;
import me.desair.tus.server.upload.UploadInfo;
import org.jspecify.annotations.Nullable;

/** Takes clips in by the tus protocol, version 1.0: whatever has arrived stays, and the browser goes on from there. */
final class Uploads {

    static final String PATH = "/files";

    /** A clip is kept once as it came and once in pictures and film of the report, which together take about as much. */
    private static final int ROOM_A_BYTE = 3;

    private static final int MOST_REMEMBERED = 1000;
    private static final int MOST_UNFINISHED = 40;
    /** An upload that nobody goes on with is dropped after a week. */
    private static final long KEPT_SECONDS = 7L * 86_400;

    private final ServeSettings settings;
    private final PracticeBook book;
    private final Arrivals arrivals;
    private final Desk desk;
    private final AnalysisQueue queue;
    private final TusFileUploadService tus;
    private final Room room;
    /** Clips that uploads became, for the pages that sent them. */
    private final Map<String, String> arrived = Collections.synchronizedMap(new Newest<>(MOST_REMEMBERED));

    Uploads(ServeSettings settings, PracticeBook book, Desk desk, AnalysisQueue queue, Room room) {
        this.room = room;
        this.settings = settings;
        this.book = book;
        this.arrivals = new Arrivals(book);
        this.desk = desk;
        this.queue = queue;
        this.tus = new TusFileUploadService()
                .withUploadUri(PATH)
                .withStoragePath(book.file("incoming").toString())
                .withMaxUploadSize(settings.mostBytes());
    }

    /** Takes up what had arrived whole but was not in the book yet when the program ended. */
    void resume() {
        String oldest = Instant.now().minusSeconds(KEPT_SECONDS).toString();
        for (Upload u : arrivals.uploads()) {
            try {
                finish(u);
                if (u.begunAt().compareTo(oldest) < 0 && arrivals.upload(u.id()).isPresent()) {
                    tus.deleteUpload(PATH + "/" + u.id());
                    arrivals.gone(u.id());
                }
            } catch (HttpResponseException | BookException | IOException | TusException e) {
                // The disk may be full: it stays where it is and is taken in at the next start.
                continue;
            }
        }
    }

    /** Any request of the protocol. */
    void handle(Context ctx) {
        Visitor visitor = Doorkeeper.visitor(ctx);
        String id = ctx.path().replaceFirst("^" + PATH + "/?", "");
        if (ctx.method() == HandlerType.POST) {
            checkRoom(ctx);
        } else if (ctx.method() != HandlerType.OPTIONS) {
            Upload u = arrivals.upload(id).orElseThrow(() -> new HttpResponseException(404, "No such upload."));
            if (!Objects.equals(u.personId(), visitor.personId())) {
                throw new HttpResponseException(404, "No such upload.");
            }
        }
        if (ctx.method() == HandlerType.PATCH) {
            checkPart(ctx);
        }
        try {
            tus.process(ctx.req(), ctx.res());
            if (ctx.method() == HandlerType.POST && ctx.res().getStatus() == 201) {
                begun(ctx, visitor);
            }
            if (ctx.method() == HandlerType.PATCH || ctx.method() == HandlerType.HEAD) {
                arrivals.upload(id).ifPresent(this::finish);
            }
            if (ctx.method() == HandlerType.DELETE) {
                arrivals.gone(id);
            }
        } catch (IOException | TusException e) {
            throw new HttpResponseException(500, "The upload broke off (" + e.getMessage() + ").");
        }
    }

    /** The id of the clip that an upload became; empty while it isn't one. */
    void became(Context ctx) {
        ctx.result(arrived.getOrDefault(ctx.pathParam("id"), ""));
    }

    private void checkRoom(Context ctx) {
        long length;
        try {
            length = Long.parseLong(Objects.requireNonNullElse(ctx.header("Upload-Length"), "0"));
        } catch (NumberFormatException e) {
            throw new HttpResponseException(400, "The upload doesn't say how long it is.");
        }
        if (length > settings.mostBytes()) {
            throw new HttpResponseException(
                    413,
                    "That clip is larger than the " + Room.words(settings.mostBytes())
                            + " this book takes; cut it shorter.");
        }
        long open = arrivals.uploads().stream()
                .filter(u ->
                        Objects.equals(u.personId(), Doorkeeper.visitor(ctx).personId()))
                .count();
        if (open >= MOST_UNFINISHED) {
            throw new HttpResponseException(429, "Too many uploads are unfinished; wait until some are done.");
        }
        long coming = arrivals.uploads().stream().mapToLong(Upload::bytes).sum();
        if (!room.holds(ROOM_A_BYTE * (coming + length))) {
            throw new HttpResponseException(
                    507,
                    "The disk has room for " + Room.words(room.freeBytes())
                            + ", too little for this clip and its report; make room and send it again.");
        }
    }

    /** Other programs write to the disk, too: asked again before every part of a clip. */
    private void checkPart(Context ctx) {
        if (!room.holds(Math.max(0, ctx.contentLength()))) {
            throw new HttpResponseException(
                    507,
                    "The disk is full but for " + Room.words(room.freeBytes())
                            + ". What has arrived stays: make room, then choose the clip again and it goes on from there.");
        }
    }

    private void begun(Context ctx, Visitor visitor) throws IOException, TusException {
        String location = ctx.res().getHeader("Location");
        UploadInfo info = tus.getUploadInfo(location);
        if (info == null || !info.hasLength()) {
            throw new ForbiddenResponse("The upload doesn't say how long it is.");
        }
        String id = location.substring(location.lastIndexOf('/') + 1);
        arrivals.begun(new Upload(
                id,
                visitor.personId(),
                safe(info.getFileName()),
                info.getLength(),
                Instant.now().toString()));
    }

    /** A name that can be a file's anywhere. */
    static String safe(@Nullable String given) {
        String last = given == null ? "" : given.replaceFirst(".*[/\\\\]", "");
        String plain = last.replaceAll("[^\\p{L}\\p{N}._ -]", "_").replaceFirst("^[. ]+", "");
        String cut = plain.length() > 80 ? plain.substring(plain.length() - 80) : plain;
        return cut.isBlank() ? "clip" : cut;
    }

    /** Takes an upload into the book if it is whole. Each step can be repeated after a crash. */
    private synchronized void finish(Upload u) {
        if (arrivals.upload(u.id()).isEmpty()) {
            return;
        }
        Path folder = book.file("incoming/whole").resolve(u.id());
        Path file = folder.resolve(u.name());
        try {
            if (!Files.exists(file) && !fetched(u, folder, file)) {
                return;
            }
            Clip clip = book.keep(file);
            List<Entry> there = desk.entries(clip);
            if (there.isEmpty()) {
                book.add(Desk.plain(session(u.personId()).id(), clip.id(), 1, null, null));
                queue.ask(clip.id());
            }
            boolean theirs = there.stream()
                    .anyMatch(e -> !Objects.equals(e.session().personId(), u.personId()) && u.personId() != null);
            arrived.put(u.id(), theirs ? "other" : clip.id());
            arrivals.gone(u.id());
            Workbench.delete(folder);
            tus.deleteUpload(PATH + "/" + u.id());
        } catch (IOException | TusException e) {
            throw new HttpResponseException(500, "The clip could not be taken in (" + e.getMessage() + ").");
        }
    }

    private boolean fetched(Upload u, Path folder, Path file) throws IOException, TusException {
        UploadInfo info = tus.getUploadInfo(PATH + "/" + u.id());
        if (info == null) {
            arrivals.gone(u.id());
            return false;
        }
        if (info.isUploadInProgress()) {
            return false;
        }
        Files.createDirectories(folder);
        Path part = folder.resolve(".part");
        try (InputStream in = tus.getUploadedBytes(PATH + "/" + u.id())) {
            Files.copy(in, part, StandardCopyOption.REPLACE_EXISTING);
        }
        Files.move(part, file, StandardCopyOption.ATOMIC_MOVE);
        return true;
    }

    private Session session(@Nullable String personId) {
        String day = LocalDate.now().toString();
        String name = personId == null
                ? day
                : day + " "
                        + book.people().stream()
                                .filter(p -> p.id().equals(personId))
                                .map(Person::name)
                                .findFirst()
                                .orElse("");
        return book.session(
                new Session(UUID.randomUUID().toString(), name, day, personId, null, null, null, null, null, ""));
    }
}
