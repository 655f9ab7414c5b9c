package bendline.footage;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.image.Turn;
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

    @Property(tries = 60, edgeCases = EdgeCasesMode.NONE)
    void nativeMemoryIsTurnedAlike(
            @ForAll("turns") Turn turn,
            @ForAll @IntRange(min = 1, max = 50) int width,
            @ForAll @IntRange(min = 1, max = 50) int height,
            @ForAll boolean colour) {
        int depth = colour ? 3 : 1;
        int stride = width * depth + 5;
        byte[] padded = new byte[stride * height];
        new java.util.Random(width).nextBytes(padded);
        byte[] packed = new byte[width * height * depth];
        for (int y = 0; y < height; y++) {
            System.arraycopy(padded, y * stride, packed, y * width * depth, width * depth);
        }
        byte[] turned = new byte[packed.length];
        try (NativeTurn turner = new NativeTurn();
                BytePointer rows = new BytePointer(padded)) {
            turner.copy(turn, rows, stride, width, height, depth, turned);
        }
        assertThat(turned).isEqualTo(turn.apply(packed, width, height, depth));
    }
}
