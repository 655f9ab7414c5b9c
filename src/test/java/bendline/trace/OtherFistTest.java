package bendline.trace;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.trace.BlankFitter.Fit;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A rod of 250 px from the upper hand, of which all but the innermost 15 shows, and whose butt is 50 px below that hand. */
class OtherFistTest {

    private static final double FREE = 250;
    private static final Point ORIGIN = new Point(40, 20);
    private static final RodLength.Estimate ROD = new RodLength.Estimate(FREE, 5, 1);

    private static Point up(int t) {
        return Point.direction(-Math.toRadians(40 + t));
    }

    private static Point hand(int t) {
        return new Point(500 + t, 600);
    }

    private static List<Look> looks(double longer) {
        List<Look> out = new ArrayList<>();
        for (int t = 0; t < 60; t++) {
            double to = FREE + (butt(t) ? longer : 0);
            Polyline line = new Polyline(List.of(hand(t).plus(up(t).times(15)), hand(t).plus(up(t).times(to))));
            out.add(new Look(t / 60.0, List.of(), new Fit(line, 0.5, 2, 0.01, 3, 100, 1, 0)));
        }
        return out;
    }

    private static boolean butt(int t) {
        return t >= 30 && t < 40;
    }

    private static List<Grasp> grasps(boolean slips) {
        List<Grasp> out = new ArrayList<>();
        for (int t = 0; t < 60; t++) {
            Point seen = slips && butt(t) ? hand(t).minus(up(t).times(50)) : hand(t);
            out.add(new Grasp(t, seen.plus(ORIGIN), 4));
        }
        return out;
    }

    @Test
    void theFistAtTheButtIsLeftOut() {
        List<Grasp> left = OtherFist.without(grasps(true), looks(0), ROD, ORIGIN);
        assertThat(left).hasSize(50).noneMatch(g -> butt(g.frame()));
    }

    /** Then the curve is too long, not the hand too low. */
    @Test
    void aHandOnARodWithLineBeyondItStays() {
        assertThat(OtherFist.without(grasps(false), looks(50), ROD, ORIGIN)).hasSize(60);
    }

    @Test
    void aFewFramesTellNothing() {
        List<Grasp> few = grasps(true).subList(25, 45);
        assertThat(OtherFist.without(few, looks(0), ROD, ORIGIN)).isSameAs(few);
    }
}
