package bendline.footage;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.image.Turn;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import org.bytedeco.javacpp.BytePointer;

class NativeTurnTest {

    @Provide
    Arbitrary<Turn> turns() {
        return Arbitraries.integers().between(0, 7).map(i -> new Turn(i % 4 * 90, i > 3));
    }

    /** The library's turn on one side, the two of the heap, colour and grey, on the other. */
    @Property(tries = 100, edgeCases = EdgeCasesMode.NONE)
    void nativeMemoryAndTheHeapAreTurnedAlike(
            @ForAll("turns") Turn turn,
            @ForAll @IntRange(min = 1, max = 150) int width,
            @ForAll @IntRange(min = 1, max = 150) int height) {
        int stride = 3 * width + 5;
        byte[] padded = new byte[stride * height];
        new Random(width).nextBytes(padded);
        byte[] packed = new byte[3 * width * height];
        for (int y = 0; y < height; y++) {
            System.arraycopy(padded, y * stride, packed, y * 3 * width, 3 * width);
        }
        byte[] turned = new byte[packed.length];
        try (NativeTurn turner = new NativeTurn();
                BytePointer rows = new BytePointer(padded)) {
            turner.copy(turn, rows, stride, width, height, turned);
        }
        assertThat(turn.apply(packed, width, height, 3)).isEqualTo(turned);
        assertThat(turn.apply(blue(packed), width, height, 1)).isEqualTo(blue(turned));
    }

    private static byte[] blue(byte[] colours) {
        byte[] out = new byte[colours.length / 3];
        for (int i = 0; i < out.length; i++) {
            out[i] = colours[3 * i];
        }
        return out;
    }
}
