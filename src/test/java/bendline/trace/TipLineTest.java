package bendline.trace;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.geometry.Point;
import bendline.image.Plane;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Lines drawn into noise of one unit; the places are where they were drawn. */
class TipLineTest {

    private static final int SIZE = 500;
    private static final double ROD_PX = 400;
    private static final Point TIP = new Point(250.5, 60.5);

    private final float[] values = noise(11);

    private static float[] noise(long seed) {
        Random random = new Random(seed);
        float[] out = new float[SIZE * SIZE];
        for (int i = 0; i < out.length; i++) {
            out[i] = (float) random.nextGaussian();
        }
        return out;
    }

    /** Draws two pixels wide; {@code bow} is how far its middle lies beside the straight way, pixels. */
    private void line(Point from, Point to, double bow, float strength) {
        Point way = to.minus(from);
        Point across = new Point(-way.y(), way.x()).times(1 / way.norm());
        int n = (int) (3 * way.norm());
        for (int i = 0; i <= n; i++) {
            double u = i / (double) n;
            Point p = from.plus(way.times(u)).plus(across.times(4 * bow * u * (1 - u)));
            dot(p, strength);
            dot(p.plus(across), strength);
        }
    }

    private void dot(Point p, float strength) {
        values[(int) p.y() * SIZE + (int) p.x()] = strength;
    }

    private TipLine fromTip() {
        return new TipLine(new Plane(SIZE, SIZE, values), new boolean[SIZE * SIZE], TIP, ROD_PX);
    }

    private static Point below(double px, double degrees) {
        double a = Math.toRadians(degrees);
        return TIP.plus(new Point(px * Math.sin(a), px * Math.cos(a)));
    }

    @Test
    void aLineEndsWhereItWasDrawnTo() {
        for (double degrees : new double[] {-70, -20, 0, 35}) {
            float[] before = values.clone();
            Point end = below(140, degrees);
            line(TIP, end, 0, 9);
            Point found = fromTip().end();
            assertThat(found).as("at %s degrees", degrees).isNotNull();
            assertThat(found.distance(end)).as("at %s degrees", degrees).isLessThan(6);
            System.arraycopy(before, 0, values, 0, before.length);
        }
    }

    @Test
    void aSlightBowAndShortGapsAreNoEnd() {
        Point end = below(150, 20);
        line(TIP, end, 4, -8);
        for (int k = 0; k < 12; k++) {
            dot(below(70 + k, 20), 0);
        }
        assertThat(fromTip().end().distance(end)).isLessThan(6);
    }

    @Test
    void noiseShowsNoLine() {
        for (long seed = 1; seed <= 8; seed++) {
            System.arraycopy(noise(seed), 0, values, 0, values.length);
            assertThat(fromTip().end()).as("seed %s", seed).isNull();
        }
    }

    @Test
    void aLineThatDoesNotComeFromTheTipIsAnother() {
        line(below(160, -60), below(160, 60), 0, 9);
        assertThat(fromTip().end()).isNull();
    }

    @Test
    void aPieceOfLineIsToldFromTheThingAtItsEnd() {
        line(TIP, below(140, 0), 0, 9);
        assertThat(fromTip().goesOn(new Blob(below(60, 0), 100, 8, 2), 25)).isTrue();
        assertThat(fromTip().goesOn(new Blob(below(140, 0), 100, 8, 6), 25)).isFalse();
        assertThat(fromTip().goesOn(new Blob(below(60, 50), 100, 8, 6), 25)).isFalse();
    }
}
