package bendline.footage;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Frames that are given back are written over; all others stay as they are. */
class SparesTest {

    private static final int FRAMES = 12;

    @TempDir
    private Path dir;

    @Test
    void anArrayIsUsedAgainOnlyForItsOwnLength() {
        Spares spares = new Spares();
        byte[] used = new byte[6];
        spares.give(used);
        assertThat(spares.take(5)).isNotSameAs(used).hasSize(5);
        assertThat(spares.take(6)).isSameAs(used);
        assertThat(spares.take(6)).isNotSameAs(used);
    }

    @Test
    void framesThatWereKeptAreNotTouched() throws IOException {
        Footage clip = clip();
        List<byte[]> kept = pixels(clip, false);
        try (LumaReader reader = clip.tinted()) {
            List<Frame> held = new ArrayList<>();
            for (Frame f = reader.next(); f != null; f = reader.next()) {
                if (f.index() % 3 == 0) {
                    held.add(f);
                } else {
                    reader.giveBack(f);
                }
            }
            assertThat(held).hasSize(FRAMES / 3);
            assertThat(held).allSatisfy(f -> assertThat(f.luma().pixels()).isEqualTo(kept.get(f.index())));
        }
    }

    @Test
    void framesAreTheSameWhetherGivenBackOrNot() throws IOException {
        Footage clip = clip();
        List<byte[]> kept = pixels(clip, false);
        assertThat(pixels(clip, true))
                .hasSize(FRAMES)
                .zipSatisfy(kept, (a, b) -> assertThat(a).isEqualTo(b));
        assertThat(kept.get(1)).isNotEqualTo(kept.get(2));
    }

    @Test
    void oneArrayServesForAllFramesThatAreGivenBack() throws IOException {
        try (LumaReader reader = clip().lumas()) {
            byte[] first = null;
            for (Frame f = reader.next(); f != null; f = reader.next()) {
                first = first == null ? f.luma().pixels() : first;
                assertThat(f.luma().pixels()).isSameAs(first);
                reader.giveBack(f);
            }
        }
    }

    private Footage clip() throws IOException {
        return Footage.open(BarClip.write(dir.resolve("bars.mp4"), BarClip.steady(FRAMES, 30)));
    }

    /** A copy of each frame's pixels. */
    private static List<byte[]> pixels(Footage clip, boolean giveBack) {
        List<byte[]> out = new ArrayList<>();
        try (LumaReader reader = clip.tinted()) {
            for (Frame f = reader.next(); f != null; f = reader.next()) {
                out.add(f.luma().pixels().clone());
                if (giveBack) {
                    reader.giveBack(f);
                }
            }
        }
        return out;
    }
}
