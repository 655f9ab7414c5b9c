package bendline.flight;

import bendline.flight.Shot.Start;
import bendline.flight.Shot.Tackle;

/** Shots to test with. */
final class Shots {

    static final double NO_CLIP = Double.POSITIVE_INFINITY;

    /** The gravity that flights are worked out with. */
    static final double G = 9.80665;

    private Shots() {}

    /** No line, level ground, still air of a density of 1; {@code k = Cd A / (2 m)} is the drag over mass and speed squared. */
    static Shot bare(double speed, double angleDeg, double height, double k) {
        Rig rig = new Rig(0.1, 0.2 * k, 0, 0);
        return new Shot(
                new Start(speed, Math.toRadians(angleDeg), height), rig, Tackle.NONE, Wind.NONE, new Air(1, 1.8e-5));
    }

    /** A strong cast of a 90 g lead on 0.22 mm nylon in still air. */
    static Shot strong() {
        return new Shot(
                new Start(54, Math.toRadians(38), 5),
                Rig.bomb(0.09),
                new Tackle(Line.nylon(0.22e-3), Spool.USUAL, 2, NO_CLIP),
                Wind.NONE,
                Air.STANDARD);
    }

    static double distance(Shot shot) {
        return new Flyer().fly(shot).distanceM();
    }
}
