package bendline.web;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.report.Reader;
import bendline.web.Served.Guest;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A disk that fills up is told of before anything is lost. */
class FullDiskTest {

    @TempDir
    private Path temp;

    /** A workbench that ends at once: what is analysed doesn't matter here. */
    private ServeSettings settings() {
        List<String> workbench =
                List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-version");
        return new ServeSettings(
                temp.resolve("book"), 0, false, false, 2_000_000_000, 1_000_000, Reader.PLAIN, workbench, "test");
    }

    @Test
    void aFullDiskIsToldBeforeItBitesAndNothingThatArrivedIsLost() throws IOException, InterruptedException {
        AtomicLong free = new AtomicLong(1_500_000_000);
        try (WebServer server = WebServer.start(settings(), free::get)) {
            Guest guest = new Guest(server.address().replaceAll("/$", ""));
            assertThat(guest.get("/").body()).contains("The disk is nearly full: 1.5 GB are left");
            HttpResponse<String> large = guest.tus("POST", "/files", new byte[0], "Upload-Length", "500000000");
            assertThat(large.statusCode()).isEqualTo(507);
            assertThat(large.body()).contains("room for 1.5 GB", "make room");

            byte[] clip = new byte[300_000];
            Arrays.fill(clip, (byte) 7);
            String upload = guest.begin("cast.mp4", clip.length);
            assertThat(guest.go(upload, 0, Arrays.copyOf(clip, 100_000)).statusCode())
                    .isEqualTo(204);
            free.set(300_050_000);
            HttpResponse<String> more = guest.go(upload, 100_000, Arrays.copyOfRange(clip, 100_000, clip.length));
            assertThat(more.statusCode()).isEqualTo(507);
            assertThat(more.body()).contains("What has arrived stays");
            assertThat(guest.tus("HEAD", upload, new byte[0]).headers().firstValue("Upload-Offset"))
                    .hasValue("100000");

            free.set(450_000_000);
            assertThat(guest.go(upload, 100_000, Arrays.copyOfRange(clip, 100_000, clip.length))
                            .statusCode())
                    .as("goes on where it stopped")
                    .isEqualTo(204);
            String id = guest.get("/arrived/" + upload.substring(upload.lastIndexOf('/') + 1))
                    .body();
            String page = guest.get("/clips/" + id).body();
            for (int i = 0; i < 50 && !page.contains("Make room"); i++) {
                Thread.sleep(100);
                page = guest.get("/clips/" + id).body();
            }
            assertThat(page).contains("data-state=\"waiting\"", "450 MB are left", "begins by itself");
            assertThat(guest.post("/", "/clips/" + id + "/notes", "seconds", "0", "words", "still kept")
                            .statusCode())
                    .as("notes find room in the reserve")
                    .isEqualTo(204);
            free.set(50_000_000_000L);
            assertThat(guest.over(id)).as("begun by itself").contains("data-state=\"failed\"");
            assertThat(guest.get("/").body()).contains("50.0 GB free on the disk.");
        }
    }

    @ParameterizedTest
    @CsvSource({
        "1, 1 MB",
        "2679506, 3 MB",
        "999999999, 1000 MB",
        "1000000000, 1.0 GB",
        "12345678901, 12.3 GB",
        "250000000000, 250 GB"
    })
    void sizesAreWrittenAsPeopleReadThem(long bytes, String words) {
        assertThat(Room.words(bytes)).isEqualTo(words);
    }
}
