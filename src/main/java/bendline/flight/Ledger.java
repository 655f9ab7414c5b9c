package bendline.flight;

/**
 * Where the rig's energy went between release and landing, joules.
 *
 * @param startJ energy of the rig at the release, its height over the water counted
 * @param endJ of the rig just before it lands
 * @param lineJ still moving with the line
 * @param rigAirJ to the air at the rig
 * @param spoolJ lost in drawing line off: half of what its own start takes, and all of spool, lip and rings
 * @param lineAirJ to the air along the line
 * @param bowJ into lifting the line and drawing out its bow
 */
public record Ledger(
        double startJ, double endJ, double lineJ, double rigAirJ, double spoolJ, double lineAirJ, double bowJ) {

    /** What the accounts fail to add up to, joules. */
    public double missingJ() {
        return startJ - endJ - lineJ - rigAirJ - spoolJ - lineAirJ - bowJ;
    }
}
