package bendline.flight;

import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;

/** What the line does to the rig at one moment, while it runs off the spool or once the clip holds it. */
final class BowedLine {

    /** The pull and the payout rest on each other; so many rounds settle them to far under a thousandth. */
    private static final int ROUNDS = 3;

    /** A rod's tip in line with the held line, N/m; common practice, no source. Far stiffer than a long line. */
    private static final double ROD_GIVES = 15;

    /** Damping of line, rod and the arms that give with it, as a time constant, s; common practice, no source. */
    private static final double DAMPING_SECONDS = 0.1;

    private final Shot shot;
    private final Line line;
    private final double perMetre;

    BowedLine(Shot shot) {
        this.shot = shot;
        this.line = shot.tackle().line();
        this.perMetre = line.massPerMetre();
    }

    /**
     * The line's doing.
     *
     * @param pullN tension where it meets the rig
     * @param payout speed at which it runs through the rings, m/s
     * @param bowRate rate of the bow, m/s
     * @param atTipN tension at the rod tip
     * @param alongN skin friction along it
     * @param headN weight of the line between the heights of tip and rig
     */
    record Doing(double pullN, double payout, Vector3D bowRate, double atTipN, double alongN, double headN) {}

    /** While it runs: the rig's acceleration without the line is needed, since line already running pushes or holds by its mass. */
    Doing running(Moment m, Vector3D free) {
        Vector3D wind = wind(m);
        double windAlong = wind.dotProduct(m.chord);
        double lossAndLip = shot.tackle().loss() * shot.tackle().spool().lipFactor(m.lengthM, line.diameterM());
        double head = perMetre * Moment.GRAVITY * m.place.getY();
        double lineMass = perMetre * m.lengthM;
        double chordGain = free.dotProduct(m.chord) + m.turning.getNormSq() / Math.max(m.chordM, 0.1);
        double share = 1 + lineMass / shot.rig().massKg() * m.endOfLine().dotProduct(m.chord);
        double payout = Math.max(0, m.chordRate);
        Doing doing = null;
        for (int i = 0; i < ROUNDS; i++) {
            double atTip = perMetre * payout * payout * (1 + lossAndLip);
            double along = line.dragAlong(m.lengthM, payout - windAlong, shot.air());
            double pull = Math.max(0, (atTip + along + head + lineMass * chordGain) / share);
            double middle = Math.max(0, 0.5 * (atTip + pull) - perMetre * payout * payout);
            Vector3D bowRate = bowRate(m, middle, wind);
            payout = Math.max(0, m.lengthRate(bowRate));
            doing = new Doing(pull, payout, bowRate, atTip, along, head);
        }
        return doing;
    }

    /** Once held: a spring that only pulls, with the rod's give in line. */
    Doing held(Moment m, double heldM) {
        double stiffness = 1 / (heldM / line.stretchForce() + 1 / ROD_GIVES);
        double stretch = m.lengthM - heldM;
        double pull = stretch > 0 ? Math.max(0, stiffness * (stretch + DAMPING_SECONDS * m.chordRate)) : 0;
        return new Doing(pull, 0, bowRate(m, pull, wind(m)), 0, 0, 0);
    }

    private Vector3D wind(Moment m) {
        return windAt(shot, m.meanLineM());
    }

    static Vector3D windAt(Shot shot, double aboveTipM) {
        Wind w = shot.wind();
        if (w.calm()) {
            return Vector3D.ZERO;
        }
        double share = w.share(shot.start().heightM() + aboveTipM);
        return new Vector3D(w.alongMps() * share, 0, w.acrossMps() * share);
    }

    /**
     * Rate of the bow of a line that slides along itself, is carried by the wind and is drawn straight by its tension against the
     * air: the mean over the line of its speed across itself.
     */
    private Vector3D bowRate(Moment m, double tension, Vector3D wind) {
        Vector3D across = wind.subtract(wind.dotProduct(m.chord), m.chord);
        Vector3D down = new Vector3D(0, -1, 0);
        Vector3D weight = down.subtract(down.dotProduct(m.chord), m.chord).scalarMultiply(perMetre * Moment.GRAVITY);
        Vector3D force = weight.subtract(8 * tension / (m.softM * m.softM), m.bow);
        double size = force.getNorm();
        double drawn = size > 0 ? line.speedAcross(size, shot.air()) / size : 0;
        return across.add(drawn, force)
                .scalarMultiply(1.5)
                .subtract(m.chordM * m.chordRate / (m.softM * m.softM), m.bow)
                .subtract(0.75, m.turning)
                .subtract(m.bow.dotProduct(m.turning) / Math.max(m.chordM, 0.1), m.chord);
    }
}
