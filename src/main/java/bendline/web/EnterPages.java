package bendline.web;

import bendline.book.BookException;
import bendline.book.Clip;
import bendline.book.Member;
import bendline.book.Membership;
import bendline.book.Person;
import bendline.book.PracticeBook;
import bendline.report.Html;
import com.password4j.Argon2Function;
import com.password4j.Password;
import com.password4j.types.Argon2;
import io.javalin.Javalin;
import io.javalin.http.BadRequestResponse;
import io.javalin.http.Context;
import io.javalin.http.ForbiddenResponse;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import io.javalin.http.util.NaiveRateLimit;
import java.time.Instant;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.TimeUnit;

/** Coming in: the pairing code on a network, names and passwords in a club, invitations. */
final class EnterPages {

    private static final int SHORTEST = 10;
    private static final int LONGEST = 200;
    private static final int TRIES_A_MINUTE = 6;
    /** 19 MiB, two passes, one lane: the smallest that OWASP's Password Storage Cheat Sheet recommends for Argon2id. */
    private static final Argon2Function ARGON = Argon2Function.getInstance(19_456, 2, 1, 32, Argon2.ID);

    /** Checked where there is no such name, so that the time taken doesn't tell. */
    private final String nobody =
            Password.hash(Secrets.token()).addRandomSalt().with(ARGON).getResult();

    private final ServeSettings settings;
    private final PracticeBook book;
    private final Membership membership;
    private final Doorkeeper door;
    private final String code = Secrets.code();

    EnterPages(ServeSettings settings, PracticeBook book, Doorkeeper door) {
        this.settings = settings;
        this.book = book;
        this.membership = new Membership(book);
        this.door = door;
    }

    void routes(Javalin app) {
        app.get("/enter", this::enter);
        app.post("/enter", settings.club() ? this::signIn : this::pair);
        app.post("/leave", ctx -> {
            door.showOut(ctx);
            ctx.redirect("/enter", HttpStatus.SEE_OTHER);
        });
        if (settings.club()) {
            app.get("/join", this::invited);
            app.post("/join", this::join);
            app.get("/club", this::club);
            app.post("/club/invite", this::invite);
        }
    }

    String code() {
        return code;
    }

    String firstInvitation() {
        if (!settings.club() || membership.members().stream().anyMatch(Member::coach)) {
            return "";
        }
        return invitation("coach");
    }

    private String invitation(String role) {
        String secret = Secrets.token();
        membership.invite(Secrets.hash(secret), role);
        return "/join?code=" + secret;
    }

    private void enter(Context ctx) {
        Visitor v = Doorkeeper.visitor(ctx);
        if (v.allowed()) {
            ctx.redirect("/");
            return;
        }
        ctx.html(Page.of(settings.club() ? "Sign in" : "Pair this phone", v, "", html -> {
            html.leaf("h1", settings.club() ? "Sign in" : "Pair this phone");
            if (settings.club()) {
                Page.form(html, v, "/enter", "tall", EnterPages::nameAndPassword);
                html.leaf("p", "No account? A coach of your club sends you an invitation.", "class", "basis");
            } else {
                Page.form(html, v, "/enter", "tall", h -> {
                    h.leaf("label", "The eight digits that the computer shows", "for", "code");
                    h.single(
                            "input",
                            "id",
                            "code",
                            "name",
                            "code",
                            "inputmode",
                            "numeric",
                            "autocomplete",
                            "off",
                            "required",
                            "required");
                    h.leaf("button", "Pair");
                });
            }
        }));
    }

    private static void name(Html h, String label) {
        h.leaf("label", label, "for", "name");
        h.single(
                "input",
                "id",
                "name",
                "name",
                "name",
                "autocomplete",
                "username",
                "required",
                "required",
                "maxlength",
                "60");
    }

    private static void nameAndPassword(Html h) {
        name(h, "Name");
        h.leaf("label", "Password", "for", "password");
        h.single(
                "input",
                "id",
                "password",
                "name",
                "password",
                "type",
                "password",
                "autocomplete",
                "current-password",
                "required",
                "required");
        h.leaf("button", "Sign in");
    }

    private void pair(Context ctx) {
        NaiveRateLimit.requestPerTimeUnit(ctx, TRIES_A_MINUTE, TimeUnit.MINUTES);
        String given = Objects.requireNonNullElse(ctx.formParam("code"), "").replace(" ", "");
        if (!Secrets.same(given, code)) {
            throw new ForbiddenResponse("Those are not the digits that the computer shows.");
        }
        door.letIn(ctx, null);
        ctx.redirect("/", HttpStatus.SEE_OTHER);
    }

    private void signIn(Context ctx) {
        NaiveRateLimit.requestPerTimeUnit(ctx, TRIES_A_MINUTE, TimeUnit.MINUTES);
        String name = Objects.requireNonNullElse(ctx.formParam("name"), "").strip();
        String password = password(ctx);
        Optional<Person> person =
                book.people().stream().filter(p -> p.name().equals(name)).findFirst();
        Optional<Member> member = person.map(Person::id).flatMap(membership::member);
        boolean right = Password.check(password, member.map(Member::password).orElse(nobody))
                .with(ARGON);
        if (member.isEmpty() || !right) {
            throw new ForbiddenResponse("Name and password don't belong together.");
        }
        door.letIn(ctx, member.get().personId());
        ctx.redirect("/", HttpStatus.SEE_OTHER);
    }

    /** Cut off where nobody types that much: hashing is dear. */
    private static String password(Context ctx) {
        String p = Objects.requireNonNullElse(ctx.formParam("password"), "");
        return p.length() > LONGEST ? "" : p;
    }

    private void invited(Context ctx) {
        Visitor v = Doorkeeper.visitor(ctx);
        String secret = Objects.requireNonNullElse(ctx.queryParam("code"), "");
        String role = membership
                .invited(Secrets.hash(secret))
                .orElseThrow(() -> new NotFoundResponse("This invitation was used, or is older than two weeks."));
        ctx.html(Page.of("Join", v, "", html -> {
            html.leaf("h1", "Join as a " + role);
            Page.form(html, v, "/join", "tall", h -> {
                h.single("input", "type", "hidden", "name", "code", "value", secret);
                name(h, "Name, as the others know you");
                h.leaf("label", "Password, " + SHORTEST + " characters or more", "for", "password");
                h.single(
                        "input",
                        "id",
                        "password",
                        "name",
                        "password",
                        "type",
                        "password",
                        "autocomplete",
                        "new-password",
                        "required",
                        "required",
                        "minlength",
                        Integer.toString(SHORTEST));
                h.leaf("button", "Join");
            });
        }));
    }

    private void join(Context ctx) {
        NaiveRateLimit.requestPerTimeUnit(ctx, TRIES_A_MINUTE, TimeUnit.MINUTES);
        String hash = Secrets.hash(Objects.requireNonNullElse(ctx.formParam("code"), ""));
        String name = Objects.requireNonNullElse(ctx.formParam("name"), "").strip();
        String password = password(ctx);
        if (name.isEmpty() || name.length() > 60 || password.length() < SHORTEST) {
            throw new BadRequestResponse(
                    "Give a name, and a password of " + SHORTEST + " to " + LONGEST + " characters.");
        }
        String role = membership.invited(hash).orElseThrow(() -> new NotFoundResponse("This invitation was used."));
        Person person = new Person(UUID.randomUUID().toString(), name, null, "");
        String kept = Password.hash(password).addRandomSalt().with(ARGON).getResult();
        try {
            Member member = new Member(person.id(), role, kept, Instant.now().toString());
            if (!membership.join(hash, person, member)) {
                throw new NotFoundResponse("This invitation was used.");
            }
        } catch (BookException e) {
            throw new BadRequestResponse(e.getMessage());
        }
        door.letIn(ctx, person.id());
        ctx.redirect("/", HttpStatus.SEE_OTHER);
    }

    private void club(Context ctx) {
        ctx.html(club(Doorkeeper.visitor(ctx), ""));
    }

    private String club(Visitor v, String link) {
        return Page.of("Club", v, "", html -> {
            html.leaf("h1", "Club");
            html.open("ul");
            membership
                    .members()
                    .forEach(m -> book.people().stream()
                            .filter(p -> p.id().equals(m.personId()))
                            .forEach(p -> html.leaf("li", p.name() + ", " + m.role())));
            html.close();
            if (v.role().equals("coach")) {
                html.leaf("h2", "Invite somebody");
                for (String role : new String[] {"pupil", "coach"}) {
                    Page.form(html, v, "/club/invite", "inline", h -> {
                        h.single("input", "type", "hidden", "name", "role", "value", role);
                        h.leaf("button", "Invite a " + role);
                    });
                }
            }
            if (!link.isEmpty()) {
                html.leaf("p", "Send this to one person. It works once, for two weeks:");
                html.open("p").leaf("a", link, "href", link, "id", "invitation").close();
                html.raw(QrCode.svg(link));
            }
        });
    }

    private void invite(Context ctx) {
        Visitor v = Doorkeeper.visitor(ctx);
        String role = ctx.formParam("role");
        if (!v.role().equals("coach") || !("pupil".equals(role) || "coach".equals(role))) {
            throw new ForbiddenResponse("A coach invites pupils and coaches.");
        }
        ctx.html(club(v, ctx.scheme() + "://" + ctx.host() + invitation(role)));
    }

    void share(Context ctx, Clip clip) {
        String with = Objects.requireNonNullElse(ctx.formParam("with"), "");
        if (membership.member(with).isEmpty()) {
            throw new BadRequestResponse("There is no such member.");
        }
        if ("true".equals(ctx.formParam("on"))) {
            membership.share(clip.id(), with);
        } else {
            membership.unshare(clip.id(), with);
        }
        ctx.redirect("/clips/" + clip.id(), HttpStatus.SEE_OTHER);
    }
}
