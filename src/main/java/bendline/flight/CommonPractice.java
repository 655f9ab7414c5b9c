package bendline.flight;

import bendline.flight.LossFit.Fitted;
import bendline.flight.LossFit.Kind;
import bendline.flight.LossFit.Known;
import bendline.flight.Shot.Start;
import bendline.flight.Shot.Tackle;
import java.util.List;

/**
 * What distance anglers say of each other's casts, none of it from a source, against the model with plain numbers and one loss
 * fitted to the first of them.
 */
public final class CommonPractice {

    /** A strong overhead cast of 90 g, m/s. */
    private static final double SPEED = 54;

    private static final double ANGLE = Math.toRadians(36);
    private static final double TIP_M = 5;
    private static final double LINE_M = 0.22e-3;

    /** Straight into the face, measured at head height: 6 m/s at the 10 m of a forecast, a moderate to fresh breeze. */
    private static final double HEADWIND = 5;

    private static final double LEAD_KG = 0.090;
    private static final double FEEDER_KG = 0.074;
    private static final double LEAD_REACHES_M = 135;

    private static final Flyer FLYER = new Flyer();

    private CommonPractice() {}

    /**
     * One saying.
     *
     * @param what the saying
     * @param from the least it can be taken to mean
     * @param to the most
     * @param model what the model makes of it
     * @param unit of all three
     * @param fitted whether the loss was fitted to it
     */
    public record Row(String what, double from, double to, double model, String unit, boolean fitted) {

        /** Whether the model's number is what is said. */
        public boolean holds() {
            return model >= from && model <= to;
        }
    }

    /** The numbers the model is given. */
    public static String given() {
        return "Given: the 90 g lead leaves at 54 m/s and 36° from a tip 5 m above the water, on 0.22 mm nylon, into a headwind of"
                + " 5 m/s at head height; the 74 g feeder, 22 × 35 mm, gets the same energy and tumbles. One loss is fitted, to the"
                + " first line.";
    }

    /** The loss that takes the lead as far as it is said to go. */
    public static Fitted fitted() {
        return LossFit.fit(List.of(new Known(new DoubtfulShot(lead(), Doubt.NONE), Kind.DISTANCE, LEAD_REACHES_M, 1)));
    }

    /** All the sayings. */
    public static List<Row> rows() {
        double loss = fitted().loss();
        Shot lead = lead().with(lead().tackle().withLoss(loss));
        double v = Change.speedWith(SPEED, LEAD_KG, FEEDER_KG, 0);
        Rig feeder = Rig.feeder(FEEDER_KG, 0.022, 0.035, false);
        Shot tumbling = lead.with(feeder).with(lead.start().atSpeed(v));
        double feederM = FLYER.fly(tumbling).distanceM();
        double stemM = FLYER.fly(tumbling.with(feeder.withStem())).distanceM();
        ReelTurns big = ReelTurns.counted(100, 112);
        ReelTurns small = ReelTurns.counted(100, 124);
        return List.of(
                new Row(
                        "a 90 g lead into a stiff headwind",
                        130,
                        140,
                        FLYER.fly(lead).distanceM(),
                        "m",
                        true),
                new Row("a 74 g loaded feeder, same rod, line and wind", 100, 110, feederM, "m", false),
                new Row("a stem that stops the tumble gives back", 10, 15, stemM - feederM, "m", false),
                new Row("100 turns of a reel that needs 112 for 100 m", 80, 90, big.metresFor(100), "m", false),
                new Row("100 turns of a smaller one that needs 124", 80, 90, small.metresFor(100), "m", false),
                new Row("90 g is about three ounces", 2.8, 3.2, LEAD_KG / KitLimits.OUNCE_KG, "oz", false),
                new Row(
                        "bow at 150 m, line held with 50 g of pull, still air",
                        2,
                        3,
                        HeldBow.depthM(lead.tackle().line(), 150, 0.05 * Moment.GRAVITY, 0, Air.STANDARD),
                        "m",
                        false));
    }

    private static Shot lead() {
        return new Shot(
                new Start(SPEED, ANGLE, TIP_M),
                Rig.bomb(LEAD_KG),
                new Tackle(Line.nylon(LINE_M), Spool.USUAL, 0, Double.POSITIVE_INFINITY),
                new Wind(-HEADWIND, 0, Wind.Profile.OVER_WATER),
                Air.STANDARD);
    }
}
