package bendline.footage;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Clips with bytes changed, cut out, doubled or torn off: each is read or refused in one sentence. A crash in native code
 * would end the test run. {@code -Dbendline.fuzz=20000} runs that many instead of a few.
 */
class MutatedClipsTest {

    private static final int COUNT = Integer.getInteger("bendline.fuzz", 150);
    private static final int[] TEMPTING = {0, 1, 0x7f, 0x80, 0xff};

    @TempDir
    Path folder;

    @Test
    void areReadOrRefusedInOneSentence() throws IOException {
        List<byte[]> seeds = seeds();
        int read = 0;
        int refused = 0;
        for (int i = 0; i < COUNT; i++) {
            Random random = new Random(i);
            Path file = folder.resolve("m.mp4");
            Files.write(file, mutated(seeds.get(i % seeds.size()), random));
            try {
                ClipInfo info = Footage.open(file).survey(done -> {});
                assertThat(info.frames()).as("seed %d", i).isGreaterThan(1);
                readAll(file, info.frames());
                read++;
            } catch (FootageException refusal) {
                assertThat(refusal.getMessage()).as("seed %d", i).endsWith(".").doesNotContain("\n");
                refused++;
            }
        }
        // Both outcomes must occur, or the mutations are too mild or too wild to test anything.
        assertThat(read).isGreaterThan(COUNT / 10);
        assertThat(refused).isGreaterThan(COUNT / 50);
    }

    private static void readAll(Path file, int frames) {
        int seen = 0;
        try (LumaReader reader = Footage.open(file).lumas();
                PictureReader pictures = Footage.open(file).pictures()) {
            while (reader.next() != null) {
                seen++;
            }
            pictures.next();
        }
        assertThat(seen).isEqualTo(frames);
    }

    private List<byte[]> seeds() throws IOException {
        List<byte[]> seeds = new ArrayList<>();
        Path clip = folder.resolve("seed");
        seeds.add(Files.readAllBytes(BarClip.write(clip, BarClip.steady(12, 30))));
        double[] uneven = {0, 0.03, 0.07, 0.1, 0.15, 0.16, 0.21, 0.25};
        seeds.add(Files.readAllBytes(BarClip.write(clip, uneven, new ClipWriterSettings(30, 400_000, 90, 240, 3))));
        List<byte[]> pictures = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            pictures.add(MjpegAvi.jpeg(BarClip.picture(i)));
        }
        seeds.add(Files.readAllBytes(MjpegAvi.write(clip, pictures, BarClip.WIDTH, BarClip.HEIGHT, 25)));
        return seeds;
    }

    private static byte[] mutated(byte[] seed, Random random) {
        byte[] bytes = seed.clone();
        int changes = 1 + random.nextInt(1 + random.nextInt(20));
        for (int i = 0; i < changes; i++) {
            // Half of the changes hit the index and headers, which come first in these files.
            int reach = random.nextBoolean() ? Math.min(1500, bytes.length) : bytes.length;
            int at = random.nextInt(reach);
            bytes[at] = (byte)
                    switch (random.nextInt(3)) {
                        case 0 -> random.nextInt(256);
                        case 1 -> TEMPTING[random.nextInt(TEMPTING.length)];
                        default -> bytes[at] ^ 1 << random.nextInt(8);
                    };
        }
        return switch (random.nextInt(6)) {
            case 0 -> Arrays.copyOf(bytes, 1 + random.nextInt(bytes.length));
            case 1 -> withoutStretch(bytes, random);
            default -> bytes;
        };
    }

    private static byte[] withoutStretch(byte[] bytes, Random random) {
        int from = random.nextInt(bytes.length);
        int length = Math.min(bytes.length - from, 1 + random.nextInt(64));
        byte[] shorter = new byte[bytes.length - length];
        System.arraycopy(bytes, 0, shorter, 0, from);
        System.arraycopy(bytes, from + length, shorter, from, shorter.length - from);
        return shorter;
    }
}
