package bendline.flight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import bendline.flight.Shot.Tackle;
import java.util.List;
import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The line behind the rig. */
class BowedLineTest {

    /**
     * A line with neither tension nor weight lies where the rig has been. Behind a rig in free fall that is a parabola, whose
     * middle is g t²/8 above the middle of its chord, so the bow must grow by g t/4 times the cosine of the chord.
     */
    @Test
    void aFreeLineLiesWhereTheRigHasBeen() {
        double t = 2;
        double c = Math.cos(0.6) * 40;
        double s = Math.sin(0.6) * 40;
        double g = Moment.GRAVITY;
        Vector3D place = new Vector3D(c * t, s * t - 0.5 * g * t * t, 0);
        Vector3D up = new Vector3D(-place.getY(), place.getX(), 0).normalize();
        double cos = place.getX() / place.getNorm();
        double depth = g * t * t / 8 * cos;
        Vector3D bow = up.scalarMultiply(depth);
        double[] y = {place.getX(), place.getY(), 0, c, s - g * t, 0, bow.getX(), bow.getY(), bow.getZ(), 0, 0, 0, 0};
        // So thin and thus light that only the air across it and the sliding count, and the loss is nought.
        Shot shot = Shots.strong().with(new Tackle(Line.nylon(5e-5).withDragFactor(0), Spool.USUAL, 0, Shots.NO_CLIP));
        BowedLine.Doing doing = new BowedLine(shot).running(new Moment(y), new Vector3D(0, -g, 0));
        // d/dt (g t²/8 cos) with the chord's cosine rising slowly as it turns down.
        double later = t + 1e-4;
        double cosLater = c * later / Math.hypot(c * later, s * later - 0.5 * g * later * later);
        double rate = (g * later * later / 8 * cosLater - depth) / 1e-4;
        assertThat(doing.bowRate().dotProduct(up)).isCloseTo(rate, within(0.2 * rate));
        assertThat(doing.payout()).isCloseTo(Math.hypot(c, s - g * t), within(0.03 * c));
    }

    /** The accounts add up; what is missing is the inertia of the bow, which is left out. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 2, 8})
    void energyIsAccountedFor(double loss) {
        Shot strong = Shots.strong();
        Ledger l =
                new Flyer(1e-9).fly(strong.with(strong.tackle().withLoss(loss))).ledger();
        assertThat(Math.abs(l.missingJ())).isLessThan(0.012 * l.startJ());
        assertThat(List.of(l.rigAirJ(), l.spoolJ(), l.lineAirJ())).allMatch(j -> j > 0.03 * l.startJ());
    }

    @Test
    void withoutALineTheAirAtTheRigTakesAllThatIsLost() {
        Ledger l = new Flyer(1e-10).fly(Shots.strong().with(Tackle.NONE)).ledger();
        assertThat(l.missingJ()).isCloseTo(0, within(1e-5));
    }

    /** A published sensitivity study of fly lines: drag across is some 50 times the drag along at the same speed. */
    @Test
    void dragAcrossIsSomeFiftyTimesTheDragAlong() {
        Line line = Line.nylon(0.25e-3);
        double along = line.dragAlong(50, 30, Air.STANDARD) / 50;
        double across = line.dragAcross(30, Air.STANDARD);
        assertThat(across / along).isBetween(30.0, 70.0);
    }

    /** Cylinders across the stream: 2.4 at Reynolds number 20, 1.45 at 100, 1.2 at 1000 (curve in White, from memory). */
    @Test
    void dragAcrossFollowsTheCylindersCurve() {
        double d = 0.25e-3;
        for (double[] point : new double[][] {{20, 2.4}, {100, 1.45}, {1000, 1.2}}) {
            double v = point[0] * Air.STANDARD.kinematicViscosity() / d;
            double drag = Line.nylon(d).dragAcross(v, Air.STANDARD) / (0.5 * 1.225 * d * v * v);
            assertThat(drag).isCloseTo(point[1], within(0.15 * point[1]));
        }
    }

    @Test
    void speedAcrossUndoesDragAcross() {
        Line line = Line.nylon(0.2e-3);
        assertThat(line.speedAcross(line.dragAcross(3.7, Air.STANDARD), Air.STANDARD))
                .isCloseTo(3.7, within(1e-9));
    }

    @Test
    void aThinnerLineFliesFarther() {
        double last = 0;
        for (double d : new double[] {0.35, 0.30, 0.25, 0.20, 0.15}) {
            Shot s = Shots.strong();
            double here = Shots.distance(s.with(s.tackle().withLine(Line.nylon(d * 1e-3))));
            assertThat(here).isGreaterThan(last);
            last = here;
        }
        assertThat(last).isLessThan(Shots.distance(Shots.strong().with(Tackle.NONE)));
    }

    @Test
    void anEmptyingSpoolDragsMore() {
        Spool full = Spool.USUAL;
        assertThat(full.lipFactor(0, 0.25e-3)).isEqualTo(1);
        assertThat(full.lipFactor(150, 0.25e-3)).isGreaterThan(full.lipFactor(50, 0.25e-3));
        Spool low = new Spool(0.065, 0.03, 0.006);
        assertThat(low.diameterM(100, 0.25e-3)).isEqualTo(full.diameterM(100, 0.25e-3));
    }

    @Test
    void windAgainstWithAndAcrossDoesWhatItShould() {
        Shot s = Shots.strong();
        double still = Shots.distance(s);
        assertThat(Shots.distance(s.with(new Wind(-5, 0, Wind.Profile.OVER_WATER))))
                .isLessThan(still - 5);
        assertThat(Shots.distance(s.with(new Wind(5, 0, Wind.Profile.OVER_WATER))))
                .isGreaterThan(still + 5);
        Flight left = new Flyer().fly(s.with(new Wind(0, 5, Wind.Profile.OVER_WATER)));
        Flight right = new Flyer().fly(s.with(new Wind(0, -5, Wind.Profile.OVER_WATER)));
        assertThat(left.driftM()).isGreaterThan(3).isCloseTo(-right.driftM(), within(1e-6));
        assertThat(left.distanceM()).isCloseTo(right.distanceM(), within(1e-6)).isLessThan(still);
    }

    @Test
    void theClipHoldsTheRigAndNodsTheTip() {
        Shot s = Shots.strong();
        Flight f = new Flyer().fly(s.with(s.tackle().clippedAt(100)));
        assertThat(f.clipped()).isTrue();
        assertThat(f.tightSeconds()).isBetween(2.5, f.seconds());
        assertThat(f.distanceM()).isLessThan(104);
        assertThat(f.peakPullN()).isBetween(2.0, 30.0);
        Flight stiff =
                new Flyer().fly(s.with(s.tackle().withLine(Line.braid(0.22e-3)).clippedAt(100)));
        assertThat(stiff.peakPullN()).isGreaterThan(f.peakPullN());
        Flight farClip = new Flyer().fly(s.with(s.tackle().clippedAt(250)));
        assertThat(farClip.clipped()).isFalse();
        assertThat(farClip.distanceM()).isCloseTo(Shots.distance(s), within(1e-3));
    }
}
