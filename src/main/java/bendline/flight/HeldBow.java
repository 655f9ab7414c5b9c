package bendline.flight;

/** The bow of a line that is held, once the rig lies: what wind and weight make of it against the pull on the rod. */
public final class HeldBow {

    private HeldBow() {}

    /**
     * How far the middle of the line is from the straight between rod tip and rig, m: a shallow parabola under an even load.
     *
     * @param lengthM of line in the air
     * @param pullN on it
     * @param acrossMps wind across it
     */
    public static double depthM(Line line, double lengthM, double pullN, double acrossMps, Air air) {
        Amounts.check("line out", lengthM, 1, 400, "m");
        Amounts.check("pull on the line", pullN, 0.01, 500, "N");
        double weight = line.massPerMetre() * Moment.GRAVITY;
        double wind = line.dragAcross(acrossMps, air);
        return Math.hypot(weight, wind) * lengthM * lengthM / (8 * pullN);
    }
}
