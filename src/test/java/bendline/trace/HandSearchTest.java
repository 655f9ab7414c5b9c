package bendline.trace;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.geometry.Point;
import bendline.image.Plane;
import bendline.trace.BlankFitter.Fit;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** A drawn picture of the difference from a background: a straight dark rod out of a hand, bright line on from its tip. */
class HandSearchTest {

    private static final int WIDTH = 900;
    private static final int HEIGHT = 720;
    private static final Point HAND = new Point(220, 560);
    private static final double ROD_PX = 340;
    private static final Point ALONG = Point.direction(Math.toRadians(-40));
    private static final Point TIP = HAND.plus(ALONG.times(ROD_PX));
    private static final RodLength.Estimate ROD = new RodLength.Estimate(ROD_PX, 5, 1);

    /** @param lineDegrees by how much the line turns off at the tip */
    private static Plane picture(double lineDegrees) {
        Random random = new Random(3);
        float[] values = new float[WIDTH * HEIGHT];
        for (int i = 0; i < values.length; i++) {
            values[i] = (float) (0.6 * random.nextGaussian());
        }
        draw(values, HAND, ALONG, ROD_PX, -20);
        draw(values, TIP, Point.direction(ALONG.angle() + Math.toRadians(lineDegrees)), 260, 14);
        return new Plane(WIDTH, HEIGHT, values);
    }

    private static void draw(float[] values, Point from, Point along, double px, float level) {
        for (double s = 0; s < px; s += 0.5) {
            Point p = from.plus(along.times(s));
            for (int dx = -1; dx <= 1; dx++) {
                for (int dy = -1; dy <= 1; dy++) {
                    int x = (int) p.x() + dx;
                    int y = (int) p.y() + dy;
                    if (x >= 0 && y >= 0 && x < WIDTH && y < HEIGHT) {
                        values[y * WIDTH + x] = level;
                    }
                }
            }
        }
    }

    private static Fit found(double lineDegrees, Point hand) {
        Plane plane = picture(lineDegrees);
        List<Look> looks = List.of(new Look(0, List.of(), null));
        return new HandSearch(t -> plane, HEIGHT, ROD, Paint.UNKNOWN)
                .searched(looks, List.of(0), Map.of(0, hand))
                .get(0)
                .chosen();
    }

    @Test
    void theBlankEndsWhereTheRodDoesThoughLineRunsStraightOn() {
        Fit fit = found(0, HAND);
        assertThat(fit).isNotNull();
        assertThat(fit.line().last().distance(TIP)).isLessThan(2 * fit.alongSdPx());
        assertThat(fit.alongSdPx()).isBetween(4.0, 12.0);
    }

    @Test
    void aLineThatTurnsOffIsNotFollowed() {
        Fit fit = found(30, HAND);
        assertThat(fit).isNotNull();
        assertThat(fit.line().last().distance(TIP)).isLessThan(8);
    }

    @Test
    void whatTheHandCantHoldIsLeftAlone() {
        assertThat(found(30, HAND.plus(new Point(150, 40)))).isNull();
    }
}
