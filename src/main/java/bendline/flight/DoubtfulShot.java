package bendline.flight;

import java.util.function.ToDoubleFunction;

/**
 * A shot and how well it is known. Doubts are carried through by drawing shots, not by derivatives: at the best angle the derivative
 * vanishes although the distance can only be less, and a rig that may or may not reach the clip has none.
 *
 * @param shot as well as it is known
 * @param doubt how well that is
 */
public record DoubtfulShot(Shot shot, Doubt doubt) {

    private static final double SLOWEST_MPS = 1;

    /** One way it may have been. */
    Shot drawn(double[] z) {
        Shot.Start s = shot.start();
        double speed = Math.max(SLOWEST_MPS, s.speedMps() + doubt.speedMps() * z[0]);
        double angle = Math.max(-0.3, Math.min(1.4, s.angleRad() + doubt.angleRad() * z[1]));
        double height = Math.max(0.3, s.heightM() + doubt.heightM() * z[2]);
        Rig rig = shot.rig();
        Rig drawnRig =
                rig.withMass(rig.massKg() * share(doubt.massShare(), z[3])).withDrag(share(doubt.dragShare(), z[4]));
        Wind w = shot.wind();
        return new Shot(
                new Shot.Start(Math.min(120, speed), angle, height),
                drawnRig,
                tackle(z),
                w.with(w.alongMps() + doubt.windMps() * z[8], w.acrossMps() + doubt.windMps() * z[9]),
                shot.air());
    }

    private Shot.Tackle tackle(double[] z) {
        Line line = shot.tackle().line();
        if (line.none()) {
            return shot.tackle();
        }
        Line drawn = line.withDiameter(line.diameterM() * share(doubt.lineShare(), z[5]))
                .withDragFactor(line.dragFactor() * share(doubt.lineDragShare(), z[6]));
        return shot.tackle().withLine(drawn).withLoss(shot.tackle().loss() * share(doubt.lossShare(), z[7]));
    }

    /** A factor about 1 that can't turn negative. */
    static double share(double sd, double z) {
        return Math.exp(Math.max(-1, Math.min(1, sd)) * z);
    }

    /** A number of every drawn shot. */
    double[] each(double[][] draws, ToDoubleFunction<Shot> number) {
        double[] out = new double[draws.length];
        for (int i = 0; i < draws.length; i++) {
            out[i] = number.applyAsDouble(drawn(draws[i]));
        }
        return out;
    }

    /** The same doubts about another shot. */
    public DoubtfulShot with(Shot other) {
        return new DoubtfulShot(other, doubt);
    }

    /** Another doubt about the same shot. */
    public DoubtfulShot with(Doubt other) {
        return new DoubtfulShot(shot, other);
    }
}
