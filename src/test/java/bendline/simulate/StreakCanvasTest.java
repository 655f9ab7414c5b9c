package bendline.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Light gathered over an exposure: nothing lost, nothing shifted. */
class StreakCanvasTest {

    private static final int SIZE = 80;

    @Test
    void aThinStrokeLiesWhereItIsDrawn() {
        for (double y : new double[] {40.0, 40.25, 40.5, 40.8}) {
            StreakCanvas canvas = new StreakCanvas(SIZE, SIZE);
            canvas.stroke(10, y, 0.6, 70, y, 0.6, 0, 0, 1);
            canvas.endSubFrame(1);
            assertThat(centre(canvas, 40)).isEqualTo(y, within(0.02));
        }
    }

    @Test
    void aMovingStrokeSmearsEvenlyOverItsWay() {
        StreakCanvas canvas = new StreakCanvas(SIZE, SIZE);
        int parts = 40;
        for (int i = 0; i < parts; i++) {
            double y = 20 + 30 * (i + 0.5) / parts;
            canvas.stroke(10, y, 0.8, 70, y, 0.8, 0, 0, 1);
            canvas.endSubFrame(1.0 / parts);
        }
        byte[] frame = white();
        canvas.layOver(frame);
        double inside = lost(frame, 40, 35);
        for (int row = 24; row < 46; row++) {
            assertThat(lost(frame, 40, row)).isEqualTo(inside, within(0.15 * inside));
        }
        assertThat(lost(frame, 40, 12)).isZero();
    }

    /** A dark stroke takes as much light while it moves as while it stands. */
    @Test
    void aMovingStrokeTakesTheLightOfAStandingOne() {
        StreakCanvas still = new StreakCanvas(SIZE, SIZE);
        still.stroke(10, 40, 1.2, 70, 40, 1.2, 0, 0, 1);
        still.endSubFrame(1);
        StreakCanvas moving = new StreakCanvas(SIZE, SIZE);
        for (int i = 0; i < 20; i++) {
            moving.stroke(10, 30 + i, 1.2, 70, 30 + i, 1.2, 0, 0, 1);
            moving.endSubFrame(1 / 20.0);
        }
        double standing = total(still);
        assertThat(total(moving)).isEqualTo(standing, within(0.03 * standing));
    }

    @Test
    void forgetsWhatWasLaidOver() {
        StreakCanvas canvas = new StreakCanvas(SIZE, SIZE);
        canvas.stroke(10, 40, 1, 70, 40, 1, 0, 0, 1);
        canvas.endSubFrame(1);
        canvas.layOver(white());
        byte[] second = white();
        canvas.layOver(second);
        assertThat(second).containsOnly((byte) 255);
    }

    private static byte[] white() {
        byte[] frame = new byte[3 * SIZE * SIZE];
        java.util.Arrays.fill(frame, (byte) 255);
        return frame;
    }

    /** Linear light missing from white, 0 to 1. */
    private static double lost(byte[] frame, int column, int row) {
        double v = (frame[3 * (row * SIZE + column)] & 255) / 255.0;
        return 1 - v * v;
    }

    private static double centre(StreakCanvas canvas, int column) {
        byte[] frame = white();
        canvas.layOver(frame);
        double sum = 0;
        double weighted = 0;
        for (int row = 0; row < SIZE; row++) {
            double w = lost(frame, column, row);
            sum += w;
            weighted += w * (row + 0.5);
        }
        return weighted / sum;
    }

    private static double total(StreakCanvas canvas) {
        byte[] frame = white();
        canvas.layOver(frame);
        double sum = 0;
        for (int row = 0; row < SIZE; row++) {
            sum += lost(frame, 40, row);
        }
        return sum;
    }
}
