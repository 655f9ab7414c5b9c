package bendline.web;

import bendline.book.Member;
import bendline.book.Membership;
import bendline.book.Person;
import bendline.book.PracticeBook;
import io.javalin.http.BadRequestResponse;
import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.ForbiddenResponse;
import io.javalin.http.HandlerType;
import io.javalin.http.SameSite;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** Decides before anything else who asks, and turns away who may not. */
final class Doorkeeper {

    private static final String COOKIE = "bendline";
    private static final Set<HandlerType> READS = Set.of(HandlerType.GET, HandlerType.HEAD, HandlerType.OPTIONS);

    private final ServeSettings settings;
    private final PracticeBook book;
    private final Membership membership;

    Doorkeeper(ServeSettings settings, PracticeBook book) {
        this.settings = settings;
        this.book = book;
        this.membership = new Membership(book);
    }

    static Visitor visitor(Context ctx) {
        Visitor v = ctx.attribute("visitor");
        if (v == null) {
            throw new IllegalStateException("the doorkeeper was passed by");
        }
        return v;
    }

    /** Runs before every request. */
    void check(Context ctx) {
        harden(ctx);
        checkHost(ctx);
        Visitor visitor = recognise(ctx);
        ctx.attribute("visitor", visitor);
        String path = ctx.path();
        boolean open = path.startsWith("/static/") || path.equals("/enter") || path.equals("/join");
        if (!READS.contains(ctx.method())) {
            checkProof(ctx, visitor);
        }
        if (!visitor.allowed() && !open) {
            if (ctx.method() == HandlerType.GET) {
                ctx.redirect("/enter");
                ctx.skipRemainingHandlers();
            } else {
                throw new ForbiddenResponse("Sign in first.");
            }
        }
    }

    private static void harden(Context ctx) {
        ctx.header(
                "Content-Security-Policy",
                "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self';"
                        + " media-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'");
        ctx.header("X-Content-Type-Options", "nosniff");
        ctx.header("Referrer-Policy", "same-origin");
        ctx.header("Cross-Origin-Resource-Policy", "same-origin");
        ctx.header("Cache-Control", "no-store");
    }

    /** Only names that can't be bent by somebody else's name server: otherwise a foreign page could pose as ours. */
    private void checkHost(Context ctx) {
        String host = Optional.ofNullable(ctx.host()).orElse("");
        String name = host.replaceAll(":\\d+$", "").toLowerCase(Locale.ROOT);
        boolean plain =
                name.equals("localhost") || name.matches("\\d{1,3}(\\.\\d{1,3}){3}") || name.matches("\\[[0-9a-f:]+]");
        if (!plain && !settings.club()) {
            throw new BadRequestResponse("Open this page by the address that serve printed.");
        }
    }

    private Visitor recognise(Context ctx) {
        String token = ctx.cookie(COOKIE);
        if (token == null || token.length() < 32) {
            token = Secrets.token();
            give(ctx, token);
        }
        Optional<String> known = membership.visitor(Secrets.hash(token));
        if (settings.club()) {
            Optional<Member> member = known.flatMap(membership::member);
            Optional<Person> person = member.flatMap(m -> book.people().stream()
                    .filter(p -> p.id().equals(m.personId()))
                    .findFirst());
            String finalToken = token;
            return person.map(p -> new Visitor(finalToken, true, p, member.get().role()))
                    .orElse(new Visitor(token, false, null, "pupil"));
        }
        boolean allowed = isLoopback(ctx.ip()) || known.isPresent();
        return new Visitor(token, allowed, null, "keeper");
    }

    private static boolean isLoopback(String ip) {
        try {
            return InetAddress.getByName(ip).isLoopbackAddress();
        } catch (UnknownHostException e) {
            return false;
        }
    }

    private static void give(Context ctx, String token) {
        Cookie cookie = new Cookie(COOKIE, token);
        cookie.setHttpOnly(true);
        cookie.setSameSite(SameSite.LAX);
        cookie.setPath("/");
        cookie.setMaxAge(30 * 86_400);
        cookie.setSecure(ctx.scheme().equals("https"));
        ctx.cookie(cookie);
    }

    /** Lets the browser in under a new token, so that one planted before is worth nothing. */
    void letIn(Context ctx, @org.jspecify.annotations.Nullable String personId) {
        String token = Secrets.token();
        membership.visit(Secrets.hash(token), personId);
        give(ctx, token);
    }

    void showOut(Context ctx) {
        membership.leave(Secrets.hash(visitor(ctx).token()));
        give(ctx, Secrets.token());
    }

    private static void checkProof(Context ctx, Visitor visitor) {
        String origin = ctx.header("Origin");
        if (origin != null && !origin.equals(ctx.scheme() + "://" + ctx.host())) {
            throw new ForbiddenResponse("This came from another site.");
        }
        String proof = ctx.header("X-Bendline-Page");
        if (proof == null && ctx.path().startsWith("/files")) {
            throw new ForbiddenResponse("This upload came from no page of ours.");
        }
        if (proof == null) {
            proof = ctx.formParam("page");
        }
        if (proof == null || !Secrets.same(proof, visitor.proof())) {
            throw new ForbiddenResponse("This page is too old; load it again.");
        }
    }
}
