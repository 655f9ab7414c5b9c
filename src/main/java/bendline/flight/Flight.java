package bendline.flight;

/**
 * A flight from the release to the water.
 *
 * @param distanceM level, from under the rod tip to where the rig lands
 * @param alongM the same in the direction of the cast
 * @param driftM to the right of it
 * @param seconds until it lands
 * @param apexM highest point above the water
 * @param landingMps speed on landing
 * @param landingRad angle of the path below level on landing
 * @param bowM how far the middle of the line is from the straight between tip and rig on landing
 * @param spareM line beyond that straight on landing
 * @param tightSeconds when the clip took hold of the line, which nods the tip; NaN where it did not
 * @param peakPullN strongest pull of the held line; NaN where it was not held
 * @param ledger where the energy went; of a clipped flight up to the clip
 */
public record Flight(
        double distanceM,
        double alongM,
        double driftM,
        double seconds,
        double apexM,
        double landingMps,
        double landingRad,
        double bowM,
        double spareM,
        double tightSeconds,
        double peakPullN,
        Ledger ledger) {

    /** Whether the clip stopped it. */
    public boolean clipped() {
        return !Double.isNaN(tightSeconds);
    }

    /** Line off the spool on landing, m. */
    double lineM(Shot shot) {
        return Math.hypot(distanceM, shot.start().heightM()) + spareM;
    }
}
