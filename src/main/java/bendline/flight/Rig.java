package bendline.flight;

/**
 * What flies: its mass and the areas it opposes to the air. A drag area is drag coefficient times frontal area, so that the drag
 * is ½ · density · drag area · speed².
 *
 * @param massKg as cast, bait included
 * @param endOnM2 drag area flying end on
 * @param broadsideM2 drag area flying across itself
 * @param tumble 0 flies end on all the way, 1 turns over and over all the way
 */
public record Rig(double massKg, double endOnM2, double broadsideM2, double tumble) {

    private static final double LEAD_KG_PER_M3 = 11_340;

    /** How much wider a pear of lead is than a ball of the same weight; common practice, no source. */
    private static final double PEAR = 1.05;

    /** A smooth ball between Reynolds numbers of 1e3 and 2e5: White, Fluid Mechanics (from memory); a lead at 40 m/s has 8e4. */
    private static final double BALL_DRAG = 0.47;

    /** Mean over a turn of |cos| or |sin|: what a body that turns over evenly shows of either side. */
    private static final double MEAN_SIDE = 2 / Math.PI;

    /** Checks ranges. */
    public Rig {
        Amounts.check("rig mass", massKg, 0.001, 1, "kg");
        Amounts.check("drag area end on", endOnM2, 0, 0.02, "m2");
        Amounts.check("drag area broadside", broadsideM2, 0, 0.04, "m2");
        Amounts.check("tumble", tumble, 0, 1, "");
    }

    /** A streamlined lead that flies heavy end first: a ball of lead, a twentieth wider. */
    public static Rig bomb(double massKg) {
        double d = PEAR * Math.cbrt(6 * massKg / (Math.PI * LEAD_KG_PER_M3));
        double area = BALL_DRAG * Math.PI / 4 * d * d;
        return new Rig(massKg, area, area, 0);
    }

    /**
     * A feeder that turns over and over: a cylinder with flat ends. With its mouth open it is taken half way between a flat end
     * and an open cup; common practice, no source.
     *
     * @param open whether the mouth is open to the stream; false when plugged with bait
     */
    public static Rig feeder(double massKg, double diameterM, double lengthM, boolean open) {
        Amounts.check("feeder diameter", diameterM, 0.01, 0.08, "m");
        Amounts.check("feeder length", lengthM, 0.01, 0.15, "m");
        double slender = lengthM / diameterM;
        double flat = DragTables.cylinderEndOn(slender);
        double end = open ? 0.5 * (flat + DragTables.OPEN_CUP) : flat;
        return new Rig(
                massKg,
                end * Math.PI / 4 * diameterM * diameterM,
                DragTables.cylinderBroadside(slender) * lengthM * diameterM,
                1);
    }

    /** The same, held straight behind a stem or by a tail, so that it flies end on. */
    public Rig withStem() {
        return new Rig(massKg, endOnM2, broadsideM2, 0);
    }

    /** The same body with another mass. */
    public Rig withMass(double newMassKg) {
        return new Rig(newMassKg, endOnM2, broadsideM2, tumble);
    }

    /** The same with its drag areas multiplied. */
    public Rig withDrag(double factor) {
        return new Rig(massKg, endOnM2 * factor, broadsideM2 * factor, tumble);
    }

    /** Mean drag area in flight, m². */
    public double dragAreaM2() {
        return (1 - tumble) * endOnM2 + tumble * MEAN_SIDE * (endOnM2 + broadsideM2);
    }
}
