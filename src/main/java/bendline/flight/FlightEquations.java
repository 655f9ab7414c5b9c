package bendline.flight;

import bendline.flight.BowedLine.Doing;
import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;
import org.apache.commons.math3.ode.FirstOrderDifferentialEquations;
import org.jspecify.annotations.Nullable;

/** The rig as a point with drag and weight, the line behind it as a parabola over its chord. */
final class FlightEquations implements FirstOrderDifferentialEquations {

    private static final Vector3D WEIGHT = new Vector3D(0, -Moment.GRAVITY, 0);

    private final Shot shot;
    private final BowedLine line;
    private final boolean bare;
    private final double heldM;

    /** @param heldM line length once the clip holds it; infinite while it runs */
    FlightEquations(Shot shot, double heldM) {
        this.shot = shot;
        this.line = new BowedLine(shot);
        this.bare = shot.tackle().line().none();
        this.heldM = heldM;
    }

    @Override
    public int getDimension() {
        return Moment.SIZE;
    }

    @Override
    public void computeDerivatives(double t, double[] y, double[] dy) {
        Moment m = new Moment(y);
        Vector3D drag = drag(m);
        Vector3D free = WEIGHT.add(1 / shot.rig().massKg(), drag);
        put(dy, 0, m.speed);
        if (bare) {
            put(dy, 3, free);
            put(dy, 6, Vector3D.ZERO);
            accounts(dy, m, drag, null);
            return;
        }
        Doing doing = doing(m, free);
        put(dy, 3, free.subtract(doing.pullN() / shot.rig().massKg(), m.endOfLine()));
        put(dy, 6, doing.bowRate());
        accounts(dy, m, drag, doing);
    }

    /** What the line does in a state. */
    Doing doing(Moment m) {
        return doing(m, WEIGHT.add(1 / shot.rig().massKg(), drag(m)));
    }

    private Doing doing(Moment m, Vector3D free) {
        return Double.isInfinite(heldM) ? line.running(m, free) : line.held(m, heldM);
    }

    private Vector3D drag(Moment m) {
        Vector3D through = m.speed.subtract(BowedLine.windAt(shot, m.place.getY()));
        return through.scalarMultiply(
                -0.5 * shot.air().densityKgPerM3() * shot.rig().dragAreaM2() * through.getNorm());
    }

    /** Where the rig's energy goes, W: the air at the rig, the spool, the air along the line, the line's own lift and bow. */
    private void accounts(double[] dy, Moment m, Vector3D drag, @Nullable Doing doing) {
        int a = Moment.ACCOUNTS;
        dy[a] = -drag.dotProduct(m.speed);
        if (doing == null) {
            dy[a + 1] = 0;
            dy[a + 2] = 0;
            dy[a + 3] = 0;
            return;
        }
        double perMetre = shot.tackle().line().massPerMetre();
        double payout = doing.payout();
        dy[a + 1] = doing.atTipN() * payout - 0.5 * perMetre * payout * payout * payout;
        dy[a + 2] = doing.alongN() * payout;
        dy[a + 3] = doing.headN() * payout + doing.pullN() * (m.endOfLine().dotProduct(m.speed) - payout);
    }

    private static void put(double[] into, int at, Vector3D v) {
        into[at] = v.getX();
        into[at + 1] = v.getY();
        into[at + 2] = v.getZ();
    }
}
