package bendline.body;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import bendline.geometry.Point;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** What is left of a network's answers when the last bits, in which computers differ, are taken off. */
class GrainTest {

    /** What adding up a thousand single-precision products in another order changes: some units in the last of 24 bits. */
    private static final double OTHER_ORDER = 1e-5;

    @Test
    void theLastBitsOfAnAnswerHardlyEverShow() {
        Random random = new Random(5);
        int differ = 0;
        for (int i = 0; i < 10_000; i++) {
            double share = random.nextDouble();
            double otherwise = share + OTHER_ORDER * (random.nextDouble() - 0.5);
            differ += Grain.place(share) == Grain.place(otherwise) ? 0 : 1;
        }
        assertTrue(differ < 100, differ + " of 10000");
    }

    @Test
    void takesOffNoMoreThanHalfAGrain() {
        Random random = new Random(6);
        for (int i = 0; i < 10_000; i++) {
            double share = 3 * random.nextDouble() - 1;
            assertEquals(share, Grain.place(share), 1.0 / 4096);
            double logit = 20 * random.nextDouble() - 10;
            assertEquals(1 / (1 + Math.exp(-logit)), Grain.likelihood(logit), 1.0 / 256);
        }
    }

    @Test
    void theNextSquareIsUprightAndOnWholePixels() {
        Region next = new Region(new Point(100.4999, 200.5001), 700.3, 0.2).upright();
        assertEquals(new Region(new Point(100, 201), 700, 0), next);
    }
}
