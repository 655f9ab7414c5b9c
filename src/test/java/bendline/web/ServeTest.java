package bendline.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import bendline.web.Served.Guest;
import java.io.IOException;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The server as any client meets it. Uploads as the tus protocol, version 1.0.0, says: https://tus.io/protocols/resumable-upload. */
class ServeTest {

    @TempDir
    private Path temp;

    private static byte[] noise(int bytes) {
        byte[] out = new byte[bytes];
        new Random(4).nextBytes(out);
        return out;
    }

    @Test
    void anUploadGoesOnAfterThePowerWentAndAHostileFileHarmsNobody() throws IOException, InterruptedException {
        Path book = temp.resolve("book");
        byte[] clip = noise(300_000);
        String upload;
        try (Served first = new Served(book)) {
            Guest guest = new Guest(first.address);
            upload = guest.begin("../../evil\tname.mp4", clip.length);
            assertThat(guest.go(upload, 0, Arrays.copyOf(clip, 100_000)).statusCode())
                    .isEqualTo(204);
            assertThat(guest.go(upload, 50_000, noise(10)).statusCode())
                    .as("from a place where it doesn't go on")
                    .isEqualTo(409);
            first.kill();
        }
        String id;
        try (Served second = new Served(book)) {
            Guest guest = new Guest(second.address);
            assertThat(guest.get("/").body()).contains("On their way");
            HttpResponse<String> head = guest.tus("HEAD", upload, new byte[0]);
            assertThat(head.headers().firstValue("Upload-Offset")).hasValue("100000");
            guest.go(upload, 100_000, Arrays.copyOfRange(clip, 100_000, clip.length));
            id = guest.get("/arrived/" + upload.substring(upload.lastIndexOf('/') + 1))
                    .body();
            assertThat(guest.post("/", "/clips/" + id + "/notes", "seconds", "0.5", "words", "look <here>")
                            .statusCode())
                    .isEqualTo(204);
            second.kill();
        }
        try (Served third = new Served(book)) {
            Guest guest = new Guest(third.address);
            String page = guest.over(id);
            assertThat(page).contains("data-state=\"failed\"").doesNotContain("<p>null");
            assertThat(guest.get("/clips/" + id + "/talk").body()).contains("look &lt;here&gt;");
            assertThat(guest.get("/").body()).contains("could not be analysed");
            try (var files = Files.list(book.resolve("clips"))) {
                assertThat(files.map(f -> readAll(f))).as("every byte arrived").containsExactly(clip);
            }
            try (var incoming = Files.walk(book.resolve("incoming"))) {
                assertThat(incoming.filter(Files::isRegularFile).filter(f -> f.endsWith("data")))
                        .isEmpty();
            }
        }
    }

    private static byte[] readAll(Path f) {
        try {
            return Files.readAllBytes(f);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    @Test
    void onlyOurOwnPagesChangeAnything() throws IOException, InterruptedException {
        try (Served served = new Served(temp.resolve("book"), "--most-mb", "1")) {
            Guest guest = new Guest(served.address);
            HttpRequest.Builder bare = HttpRequest.newBuilder(URI.create(served.address + "/compare"))
                    .POST(BodyPublishers.noBody());
            assertThat(guest.send(bare).statusCode()).isEqualTo(403);
            HttpRequest.Builder foreign = HttpRequest.newBuilder(URI.create(served.address + "/compare"))
                    .header("Origin", "http://elsewhere.example")
                    .header("X-Bendline-Page", guest.proof("/"))
                    .POST(BodyPublishers.noBody());
            assertThat(guest.send(foreign).statusCode()).isEqualTo(403);
            assertThat(new Guest(served.address.replace("localhost", "127.0.0.1"))
                            .send(HttpRequest.newBuilder(URI.create(served.address + "/files"))
                                    .header("Tus-Resumable", "1.0.0")
                                    .header("Upload-Length", "5")
                                    .POST(BodyPublishers.noBody()))
                            .statusCode())
                    .isEqualTo(403);
            assertThat(named(served, "elsewhere.example"))
                    .as("a name bent to us")
                    .startsWith("HTTP/1.1 400");
            assertThat(named(served, "localhost")).startsWith("HTTP/1.1 200");
            HttpResponse<String> home = guest.get("/");
            assertThat(home.headers().firstValue("Content-Security-Policy").orElse(""))
                    .contains("default-src 'none'", "script-src 'self'", "frame-ancestors 'none'")
                    .doesNotContain("unsafe");
            assertThat(home.headers().allValues("Set-Cookie")).allMatch(c -> c.contains("HttpOnly"));
            HttpResponse<String> large = guest.tus("POST", "/files", new byte[0], "Upload-Length", "2000000");
            assertThat(large.statusCode()).isEqualTo(413);
            HttpResponse<String> huge = guest.tus("POST", "/files", new byte[0], "Upload-Length", "x");
            assertThat(huge.statusCode()).isEqualTo(400);
            assertThat(guest.get("/clips/none").statusCode()).isEqualTo(404);
            assertThat(guest.get("/static/..%2fbook%2fSchema.class").statusCode())
                    .isIn(400, 404);
        }
    }

    /** A request under a name of the asker's choosing, which no well-behaved client lets one send. */
    private static String named(Served served, String host) throws IOException {
        int port = URI.create(served.address).getPort();
        try (Socket socket = new Socket("127.0.0.1", port)) {
            socket.getOutputStream()
                    .write(("GET / HTTP/1.1\r\nHost: " + host + ":" + port + "\r\nConnection: close\r\n\r\n")
                            .getBytes(StandardCharsets.US_ASCII));
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    @Test
    void aPupilSeesNobodyElsesClipsUnlessShared() throws IOException, InterruptedException {
        try (Served served = new Served(temp.resolve("book"), "--club")) {
            String invitation = served.said.stream()
                    .filter(l -> l.contains("/join?code="))
                    .map(l -> l.replaceFirst(".*/join", "/join"))
                    .findFirst()
                    .orElseThrow();
            assertThat(new Guest(served.address).get("/").body())
                    .contains("Sign in")
                    .doesNotContain("In the book");
            Guest coach = joined(served, invitation, "Ada Weir");
            Guest one = joined(served, invited(coach), "Ben Sluice");
            Guest two = joined(served, invited(coach), "Cleo Reed");
            assertThat(new Guest(served.address).get(invitation).statusCode())
                    .as("used")
                    .isEqualTo(404);

            String clip = one.upload("mine.mp4", noise(5_000));
            assertThat(two.get("/clips/" + clip).statusCode()).isEqualTo(404);
            assertThat(two.get("/clips/" + clip + "/talk").statusCode()).isEqualTo(404);
            assertThat(two.get("/").body()).doesNotContain("mine.mp4");
            assertThat(coach.get("/").body()).contains("mine.mp4");
            assertThat(two.upload("same.mp4", noise(5_000))).isEqualTo("other");
            assertThat(one.post("/", "/club/invite", "role", "coach").statusCode())
                    .isEqualTo(403);

            assertThat(coach.post(
                                    "/",
                                    "/clips/" + clip + "/notes",
                                    "seconds",
                                    "0",
                                    "words",
                                    "ten slow ones",
                                    "drill",
                                    "true")
                            .statusCode())
                    .isEqualTo(204);
            assertThat(one.get("/clips/" + clip + "/talk").body()).contains("Drill: ten slow ones", "Ada Weir");
            one.over(clip);
            String page = one.get("/clips/" + clip).body();
            String cleo =
                    page.replaceFirst("(?s).*name=\"with\" value=\"([^\"]+)\"[^>]*>(?:(?!</form>).)*Cleo.*", "$1");
            assertThat(one.post("/", "/clips/" + clip + "/share", "with", cleo, "on", "true")
                            .statusCode())
                    .isEqualTo(200);
            assertThat(two.get("/clips/" + clip).statusCode()).isEqualTo(200);
            assertThat(two.post("/", "/clips/" + clip + "/corrections", "seconds", "0", "part", "tip", "hidden", "true")
                            .statusCode())
                    .as("sees, but does not correct")
                    .isEqualTo(403);
            one.post("/", "/leave");
            assertThat(one.get("/").body()).contains("Sign in");
            assertThat(one.post("/enter", "/enter", "name", "Ben Sluice", "password", "wrong password")
                            .statusCode())
                    .isEqualTo(403);
            assertThat(one.post("/enter", "/enter", "name", "Ben Sluice", "password", "a long password")
                            .body())
                    .contains("mine.mp4");
        }
    }

    @Test
    void othersOnTheNetworkNeedThePairingCode() throws IOException, InterruptedException {
        try (Served served = new Served(temp.resolve("book"), "--lan")) {
            String from = served.said.stream()
                    .filter(l -> l.startsWith("On the network: "))
                    .map(l -> l.replaceFirst("On the network: (.*)/", "$1"))
                    .findFirst()
                    .orElse("");
            assumeFalse(from.isEmpty(), "This computer is on no network");
            String code = served.said.get(served.said.size() - 1).replace("Pairing code: ", "");
            assertThat(new Guest(served.address).get("/").body()).contains("In the book");
            Guest phone = new Guest(from);
            assertThat(phone.get("/").body()).contains("Pair this phone").doesNotContain("In the book");
            assertThat(phone.get("/clips/x/talk").body()).contains("Pair this phone");
            assertThat(phone.post("/enter", "/enter", "code", code).body()).contains("In the book");
            Guest stranger = new Guest(from);
            String wrong = code.equals("00000000") ? "00000001" : "00000000";
            assertThat(stranger.post("/enter", "/enter", "code", wrong).statusCode())
                    .isEqualTo(403);
            for (int i = 0; i < 6; i++) {
                stranger.post("/enter", "/enter", "code", wrong);
            }
            assertThat(stranger.post("/enter", "/enter", "code", code).statusCode())
                    .as("after many tries even the right one waits")
                    .isEqualTo(429);
        }
    }

    private static String invited(Guest coach) throws IOException, InterruptedException {
        return coach.post("/club", "/club/invite", "role", "pupil")
                .body()
                .replaceFirst("(?s).*href=\"http[^\"]*(/join[^\"]*)\".*", "$1");
    }

    private static Guest joined(Served served, String invitation, String name)
            throws IOException, InterruptedException {
        Guest guest = new Guest(served.address);
        HttpResponse<String> in = guest.post(
                invitation,
                "/join",
                "code",
                invitation.replaceFirst(".*code=", ""),
                "name",
                name,
                "password",
                "a long password");
        assertThat(in.body()).contains(name);
        return guest;
    }
}
