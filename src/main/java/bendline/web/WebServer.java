package bendline.web;

import bendline.book.BookException;
import bendline.book.PracticeBook;
import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import io.javalin.http.HttpResponseException;
import io.javalin.http.NotFoundResponse;
import io.javalin.util.JavalinBindException;
import java.io.IOException;
import java.io.InputStream;
import java.net.Inet4Address;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** The program as a place to go to with a browser. Runs until it is closed. */
public final class WebServer implements AutoCloseable {

    private static final Set<String> SHEETS = Set.of(
            "web.css", "upload.js", "progress.js", "review.js", "timeline.js", "sketch.js", "pair.js", "mark.svg");

    private final ServeSettings settings;
    private final Javalin app;
    private final AnalysisQueue queue;
    private final Live live;
    private final EnterPages enter;

    private WebServer(ServeSettings settings, @Nullable Room given) {
        this.settings = settings;
        PracticeBook book = PracticeBook.openOrBegin(settings.book());
        Room room = given == null ? Room.of(book.folder()) : given;
        Desk desk = new Desk(book, settings.mostPicturesBytes());
        queue = new AnalysisQueue(settings, book, desk, room);
        live = new Live(queue);
        Uploads uploads = new Uploads(settings, book, desk, queue, room);
        Doorkeeper door = new Doorkeeper(settings, book);
        enter = new EnterPages(settings, book, door);
        ClipPages clips = new ClipPages(book, desk, queue, room);
        app = Javalin.create(WebServer::configure);
        app.before(door::check);
        routes(uploads, clips);
        reviewRoutes(new ReviewPages(book, desk, queue, clips));
        new ComparePages(book, clips, settings.reader()).routes(app);
        enter.routes(app);
        app.post("/clips/{clip}/share", ctx -> enter.share(ctx, clips.ownClip(ctx)));
        troubles();
        uploads.resume();
        queue.start();
    }

    /**
     * Starts serving.
     *
     * @throws BookException where the book can't be opened or the port is taken
     */
    public static WebServer start(ServeSettings settings) {
        return start(settings, null);
    }

    /** The same with another word on how much room the disk has. */
    static WebServer start(ServeSettings settings, @Nullable Room room) {
        WebServer server = new WebServer(settings, room);
        try {
            server.app.start(settings.lan() ? "0.0.0.0" : "127.0.0.1", settings.port());
            return server;
        } catch (JavalinBindException e) {
            server.close();
            throw new BookException(
                    "Port " + settings.port() + " is taken; end what uses it or name another with --port.", e);
        }
    }

    private static void configure(JavalinConfig config) {
        config.showJavalinBanner = false;
        config.startupWatcherEnabled = false;
        config.http.maxRequestSize = 64 << 10;
        config.http.generateEtags = false;
        config.jetty.threadPool = new org.eclipse.jetty.util.thread.QueuedThreadPool(80, 4);
    }

    private void routes(Uploads uploads, ClipPages clips) {
        app.get("/", clips::home);
        app.get("/static/{name}", this::sheet);
        for (HandlerType type : List.of(
                HandlerType.POST, HandlerType.HEAD, HandlerType.PATCH, HandlerType.DELETE, HandlerType.OPTIONS)) {
            app.addHttpHandler(type, Uploads.PATH, uploads::handle);
            app.addHttpHandler(type, Uploads.PATH + "/{id}", uploads::handle);
        }
        app.get("/arrived/{id}", uploads::became);
        app.get("/clips/{clip}", clips::one);
        app.post("/clips/{clip}/again", clips::again);
        app.get("/clips/{clip}/report/<name>", clips::file);
        app.sse(
                "/clips/{clip}/live",
                client -> live.watch(client, clips.clip(client.ctx()).id()));
    }

    private void reviewRoutes(ReviewPages review) {
        app.get("/clips/{clip}/review", review::page);
        app.get("/clips/{clip}/talk", review::talk);
        app.get("/clips/{clip}/followed.json", review::followed);
        app.get("/clips/{clip}/frames/{n}", review::frame);
        app.post("/clips/{clip}/corrections", review::correct);
        app.post("/clips/{clip}/undo", review::undo);
        app.post("/clips/{clip}/notes", review::note);
        app.post("/clips/{clip}/drills/{drill}/done", review::drillDone);
    }

    private void troubles() {
        app.exception(HttpResponseException.class, (e, ctx) -> trouble(ctx, e.getStatus(), e.getMessage()));
        app.exception(BookException.class, (e, ctx) -> trouble(ctx, 500, e.getMessage()));
        app.exception(
                Exception.class,
                (e, ctx) -> trouble(
                        ctx, 500, "The program failed here (" + e.getClass().getSimpleName() + ")."));
    }

    private static void trouble(Context ctx, int status, String says) {
        ctx.status(status);
        Visitor v = ctx.attribute("visitor");
        String accept = ctx.header("Accept");
        if (v == null || accept == null || !accept.contains("text/html")) {
            ctx.result(says);
            return;
        }
        ctx.html(Page.of(
                "Trouble",
                v,
                "",
                html -> html.leaf("h1", "That didn't work")
                        .leaf("p", says)
                        .open("p")
                        .leaf("a", "To the clips", "href", "/")
                        .close()));
    }

    private void sheet(Context ctx) throws IOException {
        String name = ctx.pathParam("name");
        boolean report = name.equals("report.css");
        if (!report && !SHEETS.contains(name)) {
            throw new NotFoundResponse("No such file.");
        }
        try (InputStream in = WebServer.class.getResourceAsStream(report ? "/bendline/report/report.css" : name)) {
            ctx.contentType(
                    name.endsWith(".css") ? "text/css" : name.endsWith(".js") ? "text/javascript" : "image/svg+xml");
            ctx.header("Cache-Control", "private, max-age=300");
            ctx.result(in.readAllBytes());
        }
    }

    /** Where to go on this computer. */
    public String address() {
        return "http://localhost:" + app.port() + "/";
    }

    /** Where to go from other machines on the network; none unless they may come in. */
    public List<String> addresses() {
        List<String> out = new ArrayList<>();
        if (!settings.lan()) {
            return out;
        }
        try {
            for (NetworkInterface n : Collections.list(NetworkInterface.getNetworkInterfaces())) {
                for (var a : Collections.list(n.getInetAddresses())) {
                    if (a instanceof Inet4Address && !a.isLoopbackAddress()) {
                        out.add("http://" + a.getHostAddress() + ":" + app.port() + "/");
                    }
                }
            }
        } catch (SocketException e) {
            return out;
        }
        return out;
    }

    /** The digits with which another machine is let in. */
    public String pairingCode() {
        return enter.code();
    }

    /** The path of an invitation for the first coach; empty where there is one or nobody signs in. */
    public String firstInvitation() {
        return enter.firstInvitation();
    }

    /** An address as a square that phones read, for a terminal. */
    public static String square(String address) {
        return QrCode.text(address);
    }

    @Override
    public void close() {
        app.stop();
        live.close();
        queue.close();
    }
}
