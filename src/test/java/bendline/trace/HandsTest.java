package bendline.trace;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class HandsTest {

    private static final Point HANDS = new Point(400, 500);

    /** A rod of 300 px held at the hands, leading in a direction, seen from a part of the way out. */
    private static Polyline rod(double degrees, double length) {
        Point unit = new Point(Math.cos(Math.toRadians(degrees)), -Math.sin(Math.toRadians(degrees)));
        return new Polyline(List.of(HANDS.plus(unit.times(30)), HANDS.plus(unit.times(30 + length))));
    }

    private static List<Polyline> swing() {
        List<Polyline> out = new ArrayList<>();
        for (int i = 0; i < 20; i++) {
            out.add(rod(45, 300));
        }
        for (int i = 0; i < 12; i++) {
            out.add(rod(50 + 9 * i, 300));
        }
        return out;
    }

    @Test
    void linesMeetWhereTheyAreHeldHoweverLongTheRodWaitsInOneDirection() {
        Hands off = new Hands(HANDS.plus(new Point(60, 90)), swing());
        assertThat(off.meeting().distance(HANDS)).isLessThan(0.5);
    }

    @Test
    void strayLinesDoNotMoveTheMeeting() {
        List<Polyline> curves = swing();
        curves.add(new Polyline(List.of(new Point(100, 100), new Point(390, 120))));
        curves.add(new Polyline(List.of(new Point(700, 700), new Point(420, 640))));
        assertThat(new Hands(HANDS, curves).meeting().distance(HANDS)).isLessThan(8);
    }

    @Test
    void aPlaceThatLooksAlongTheRestingRodOnlyIsNotTheHands() {
        List<Polyline> resting = new ArrayList<>();
        for (int i = 0; i < 30; i++) {
            resting.add(rod(225 + i % 3, 300));
        }
        Hands tip = new Hands(HANDS.plus(new Point(220, -220)), resting);
        Hands hands = new Hands(HANDS, swing());
        assertThat(Hands.likeliest(List.of(tip, hands))).isSameAs(hands);
        assertThat(Hands.likeliest(List.of(new Hands(HANDS, List.of())))).isNull();
    }

    @Test
    void aPlaceBesideTheHandsSeesMoreDirectionsButIsNotWhereTheyMeet() {
        List<Polyline> fewer = swing().subList(0, 29);
        Hands beside = new Hands(HANDS.plus(new Point(-160, 20)), swing());
        assertThat(Hands.likeliest(List.of(beside, new Hands(HANDS, fewer))).pivot())
                .isEqualTo(HANDS);
    }

    @Test
    void oneDirectionTellsNoMeeting() {
        Point pivot = new Point(333, 444);
        assertThat(new Hands(pivot, List.of(rod(45, 300), rod(45, 300), rod(46, 300))).meeting())
                .isEqualTo(pivot);
    }
}
