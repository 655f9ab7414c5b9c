package bendline.image;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class TurnTest {

    /** a b c over d e f. */
    private static final byte[] LETTERS = "abcdef".getBytes(java.nio.charset.StandardCharsets.US_ASCII);

    private static String laid(Turn turn) {
        return new String(turn.apply(LETTERS, 3, 2, 1), java.nio.charset.StandardCharsets.US_ASCII);
    }

    @Test
    void turnsClockwise() {
        assertThat(laid(Turn.NONE)).isEqualTo("abcdef");
        assertThat(laid(new Turn(90, false))).isEqualTo("da" + "eb" + "fc");
        assertThat(laid(new Turn(180, false))).isEqualTo("fedcba");
        assertThat(laid(new Turn(270, false))).isEqualTo("cf" + "be" + "ad");
    }

    @Test
    void mirrorsBeforeItTurns() {
        assertThat(laid(new Turn(0, true))).isEqualTo("cbafed");
        assertThat(laid(new Turn(90, true))).isEqualTo("fc" + "eb" + "da");
    }

    @Test
    void keepsTheBytesOfAPixelTogether() {
        byte[] two = {1, 2, 3, 4};
        assertThat(new Turn(180, false).apply(two, 2, 1, 2)).containsExactly(3, 4, 1, 2);
    }

    @Test
    void readsMatricesAndForgivesNearMisses() {
        assertThat(Turn.nearest(1, 0, 0, 1)).isEqualTo(Turn.NONE);
        assertThat(Turn.nearest(0, 1, -1, 0)).isEqualTo(new Turn(90, false));
        assertThat(Turn.nearest(-0.99, 0.1, -0.1, -0.99)).isEqualTo(new Turn(180, false));
        assertThat(Turn.nearest(-1, 0, 0, 1)).isEqualTo(new Turn(0, true));
        assertThat(Turn.nearest(1, 0, 0, -1)).isEqualTo(new Turn(180, true));
        assertThat(Turn.nearest(0, 0, 0, 0)).isEqualTo(Turn.NONE);
        assertThatThrownBy(() -> new Turn(45, false)).hasMessageContaining("45");
    }

    @Provide
    Arbitrary<Turn> turns() {
        return Arbitraries.integers().between(0, 7).map(i -> new Turn(i % 4 * 90, i > 3));
    }

    @Property(tries = 200, edgeCases = EdgeCasesMode.NONE)
    void oneAfterAnotherIsOneTurn(
            @ForAll("turns") Turn first,
            @ForAll("turns") Turn second,
            @ForAll @IntRange(min = 1, max = 70) int width,
            @ForAll @IntRange(min = 1, max = 70) int height) {
        byte[] picture = new byte[width * height];
        new java.util.Random(width * 71L + height).nextBytes(picture);
        byte[] half = first.apply(picture, width, height, 1);
        int w = first.swapsSides() ? height : width;
        int h = first.swapsSides() ? width : height;
        byte[] twice = second.apply(half, w, h, 1);
        assertThat(first.then(second).apply(picture, width, height, 1)).isEqualTo(twice);
        assertThat(first.inverse().apply(half, w, h, 1)).isEqualTo(picture);
    }
}
