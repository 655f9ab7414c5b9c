package bendline.flight;

/**
 * How well each part of a shot is known, 68 %. Shares are of the number itself.
 *
 * @param speedMps launch speed
 * @param angleRad launch angle
 * @param heightM height of the tip
 * @param massShare rig mass
 * @param dragShare drag area of the rig
 * @param lineShare line diameter
 * @param lineDragShare skin friction of the line
 * @param lossShare loss at spool, lip and rings
 * @param windMps wind, along and across each
 */
public record Doubt(
        double speedMps,
        double angleRad,
        double heightM,
        double massShare,
        double dragShare,
        double lineShare,
        double lineDragShare,
        double lossShare,
        double windMps) {

    /** Everything known exactly. */
    public static final Doubt NONE = new Doubt(0, 0, 0, 0, 0, 0, 0, 0, 0);

    /** The same of a kit whose loss was fitted: what is wrong with the drags of rig and line is then in the loss. */
    public Doubt withFittedLoss(double newLossShare) {
        return new Doubt(speedMps, angleRad, heightM, massShare, 0, lineShare, 0, newLossShare, windMps);
    }
}
