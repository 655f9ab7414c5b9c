package bendline.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What can be made again never takes more than it may. */
class FrameShelfTest {

    @TempDir
    private Path temp;

    private void clip(String id, int minutesAgo) throws IOException {
        Path folder = Files.createDirectories(temp.resolve("frames").resolve(id));
        for (int i = 0; i < 4; i++) {
            Files.write(folder.resolve(i + ".jpg"), new byte[1000]);
        }
        Files.setLastModifiedTime(folder, FileTime.from(Instant.now().minusSeconds(60L * minutesAgo)));
    }

    private List<String> kept() throws IOException {
        try (Stream<Path> inside = Files.list(temp.resolve("frames"))) {
            return inside.map(p -> p.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void picturesThatNobodyLookedAtForLongestGoFirst() throws IOException {
        clip("a", 40);
        clip("b", 30);
        clip("c", 20);
        clip("d", 10);
        FrameShelf shelf = new FrameShelf(temp.resolve("frames"), 12_000);
        shelf.looked("a");
        shelf.tidy();
        assertThat(kept()).containsExactly("a", "c", "d");
        shelf.tidy();
        assertThat(kept()).as("what fits stays").containsExactly("a", "c", "d");
    }

    @Test
    void theNewestStaysThoughItTakesMoreThanAllMay() throws IOException {
        clip("a", 40);
        clip("b", 30);
        new FrameShelf(temp.resolve("frames"), 100).tidy();
        assertThat(kept()).containsExactly("b");
    }

    @Test
    void nothingToTidyIsNoTrouble() throws IOException {
        new FrameShelf(temp.resolve("frames"), 100).tidy();
        assertThat(temp.resolve("frames")).doesNotExist();
    }

    @Test
    void onlySoManyAreRememberedAndWhatGoesIsTold() {
        List<String> gone = new ArrayList<>();
        Newest<String, Integer> newest = new Newest<>(2, gone::add);
        newest.put("a", 1);
        newest.put("b", 2);
        newest.get("a");
        newest.put("c", 3);
        assertThat(newest).containsOnlyKeys("a", "c");
        assertThat(gone).containsExactly("b");
    }
}
