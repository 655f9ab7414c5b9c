package bendline.web;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.CookieManager;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The program serving in a process of its own, and a browser without a screen to ask it. */
final class Served implements AutoCloseable {

    final Process process;
    final String address;
    final List<String> said = new ArrayList<>();

    Served(Path book, String... more) throws IOException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx256m",
                "-cp",
                System.getProperty("java.class.path"),
                "bendline.cli.Main",
                "serve",
                "--port",
                "0",
                "--book",
                book.toString()));
        command.addAll(List.of(more));
        process = new ProcessBuilder(command).redirectErrorStream(true).start();
        BufferedReader says =
                new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
        String found = null;
        // What is printed last says who may come in.
        for (String line = says.readLine(); line != null; line = says.readLine()) {
            said.add(line);
            if (line.startsWith("Bendline: ")) {
                found = line.substring("Bendline: ".length()).replaceAll("/$", "");
            }
            if (line.startsWith("Only this computer") && !List.of(more).contains("--club")
                    || line.contains("/join?code=")
                    || line.startsWith("Pairing code: ")) {
                break;
            }
        }
        if (found == null) {
            throw new IOException("serve ended: " + said);
        }
        address = found;
    }

    /** Ends it as a power cut would. */
    void kill() throws InterruptedException {
        process.descendants().forEach(ProcessHandle::destroyForcibly);
        process.destroyForcibly();
        process.waitFor();
    }

    @Override
    public void close() throws InterruptedException {
        kill();
    }

    /** One who asks; keeps cookies. */
    static final class Guest {

        private static final Pattern PROOF = Pattern.compile("name=\"page\" content=\"([0-9a-f]+)\"");

        private final String address;
        private final HttpClient client = HttpClient.newBuilder()
                .cookieHandler(new CookieManager())
                .followRedirects(HttpClient.Redirect.NORMAL)
                .build();

        Guest(String address) {
            this.address = address;
        }

        HttpResponse<String> get(String path) throws IOException, InterruptedException {
            return send(HttpRequest.newBuilder(URI.create(address + path)).GET());
        }

        HttpResponse<String> send(HttpRequest.Builder request) throws IOException, InterruptedException {
            return client.send(request.build(), BodyHandlers.ofString());
        }

        String proof(String page) throws IOException, InterruptedException {
            Matcher m = PROOF.matcher(get(page).body());
            if (!m.find()) {
                throw new IOException(page + " is no page of ours");
            }
            return m.group(1);
        }

        HttpResponse<String> post(String from, String path, String... fields) throws IOException, InterruptedException {
            StringBuilder form = new StringBuilder("page=" + proof(from));
            for (int i = 0; i < fields.length; i += 2) {
                form.append('&')
                        .append(fields[i])
                        .append('=')
                        .append(URLEncoder.encode(fields[i + 1], StandardCharsets.UTF_8));
            }
            return send(HttpRequest.newBuilder(URI.create(address + path))
                    .header("Content-Type", "application/x-www-form-urlencoded")
                    .header("Accept", "text/html")
                    .POST(BodyPublishers.ofString(form.toString())));
        }

        HttpResponse<String> tus(String method, String path, byte[] body, String... headers)
                throws IOException, InterruptedException {
            HttpRequest.Builder r = HttpRequest.newBuilder(URI.create(address + path))
                    .header("Tus-Resumable", "1.0.0")
                    .header("X-Bendline-Page", proof("/"))
                    .method(method, body.length == 0 ? BodyPublishers.noBody() : BodyPublishers.ofByteArray(body));
            if (headers.length > 0) {
                r.headers(headers);
            }
            return send(r);
        }

        /** Begins an upload and says where it lies. */
        String begin(String name, long length) throws IOException, InterruptedException {
            HttpResponse<String> made = tus(
                    "POST",
                    "/files",
                    new byte[0],
                    "Upload-Length",
                    Long.toString(length),
                    "Upload-Metadata",
                    "filename " + Base64.getEncoder().encodeToString(name.getBytes(StandardCharsets.UTF_8)));
            if (made.statusCode() != 201) {
                throw new IOException(made.statusCode() + " " + made.body());
            }
            return made.headers().firstValue("Location").orElseThrow();
        }

        HttpResponse<String> go(String upload, long offset, byte[] bytes) throws IOException, InterruptedException {
            return tus(
                    "PATCH",
                    upload,
                    bytes,
                    "Upload-Offset",
                    Long.toString(offset),
                    "Content-Type",
                    "application/offset+octet-stream");
        }

        /** Sends a clip whole and says what it is called now. */
        String upload(String name, byte[] bytes) throws IOException, InterruptedException {
            String at = begin(name, bytes.length);
            go(at, 0, bytes);
            return get("/arrived/" + at.substring(at.lastIndexOf('/') + 1)).body();
        }

        /** Waits until a clip's page says that it is over. */
        String over(String clip) throws IOException, InterruptedException {
            for (int i = 0; i < 600; i++) {
                String page = get("/clips/" + clip).body();
                if (page.contains("data-state=\"done\"") || page.contains("data-state=\"failed\"")) {
                    return page;
                }
                Thread.sleep(200);
            }
            throw new IOException("the analysis doesn't end");
        }
    }
}
