package bendline.stroke;

/**
 * The pull on the rod's tip and what the bend holds, one entry per bend arc. Arrays are shared, do not write to them; NaN where
 * nothing was read. All empty where no stiffness of the blank is known.
 *
 * @param clipSeconds clip time
 * @param realSeconds real time
 * @param newtons size of the pull
 * @param newtonsSd its 68 % uncertainty
 * @param directionRad where it pulls: 0 towards the water, π/2 up, π back
 * @param directionSd its 68 % uncertainty, radians
 * @param energyJ energy held in the bend
 * @param energySd its 68 % uncertainty
 * @param bendCentre mean place of the bend, share of the length from hand to tip
 * @param withoutInertiaN size of the pull if the blank had no mass: what its inertia and weight add to the bend
 * @param basis what it rests on, or why nothing was read
 */
public record LoadCurve(
        double[] clipSeconds,
        double[] realSeconds,
        double[] newtons,
        double[] newtonsSd,
        double[] directionRad,
        double[] directionSd,
        double[] energyJ,
        double[] energySd,
        double[] bendCentre,
        double[] withoutInertiaN,
        String basis) {

    /** Nothing was read. */
    static LoadCurve nothing(String why) {
        double[] none = {};
        return new LoadCurve(none, none, none, none, none, none, none, none, none, none, why);
    }

    /** Whether there is anything. */
    public boolean known() {
        return clipSeconds.length > 0;
    }

    /** Number of entries. */
    public int size() {
        return clipSeconds.length;
    }
}
