package bendline.analysis;

import bendline.flight.Air;
import bendline.flight.KitLimits;
import bendline.flight.Line;
import bendline.flight.LossFit;
import bendline.flight.Outlook.Part;
import bendline.flight.Rig;
import bendline.flight.Spool;
import bendline.flight.Wind;
import bendline.scene.Conditions;
import bendline.scene.Conditions.LineKind;
import bendline.scene.Conditions.RigType;
import bendline.scene.Setup;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Turns what the user told of rig, tackle and wind into what flies, with what was not told filled in and said to be assumed. */
final class KitReader {

    /** A small distance feeder, 22 mm thick and 35 mm long; common practice, no source. */
    private static final double FEEDER_M = 0.022;

    private static final double FEEDER_LENGTH_M = 0.035;

    /** How well the drag of a rig of a known kind and size is known, and of one that is not told. */
    private static final double DRAG_SHARE = 0.15;

    private static final double SIZE_SHARE = 0.15;
    private static final double KIND_SHARE = 0.35;

    /** Line for distance feedering; common practice, no source. */
    private static final double LINE_M = 0.22e-3;

    private static final double LINE_SHARE = 0.15;

    /** Labels round and lines are not round. */
    private static final double TOLD_LINE_SHARE = 0.04;

    /** Published formulas for long cylinders differ by about as much, and a line off a spool is not straight. */
    private static final double LINE_DRAG_SHARE = 0.25;

    private static final double MASS_SHARE = 0.01;

    /** A wind told by a person, and one that nobody told: share of it, at least, and where nothing is told, m/s. */
    private static final double WIND_SHARE = 0.2;

    private static final double LEAST_WIND = 0.5;
    private static final double UNTOLD_WIND = 2;
    private static final double USUAL_WIND_M = 2;

    private final Setup setup;
    private final Conditions told;
    private final List<Part> parts = new ArrayList<>();
    private double dragShare = DRAG_SHARE;
    private double lineShare = TOLD_LINE_SHARE;
    private double windSd;

    KitReader(Setup setup) {
        this.setup = setup;
        this.told = setup.conditions();
    }

    /** What the numbers rest on, in the order of the report. */
    List<Part> parts() {
        return parts;
    }

    double dragShare() {
        return dragShare;
    }

    double lineShare() {
        return lineShare;
    }

    double windSd() {
        return windSd;
    }

    static double lineDragShare() {
        return LINE_DRAG_SHARE;
    }

    static double massShare() {
        return MASS_SHARE;
    }

    /** The rig, whose mass is known. */
    Rig rig(double massKg) {
        Conditions.Rig r = told.rig();
        boolean both = r.emptyKg() != null && r.baitKg() != null && setup.rigMassKg() == null;
        parts.add(new Part(
                "loadedMass",
                "loaded weight",
                1e3 * massKg,
                1e3 * MASS_SHARE * massKg,
                "g",
                both
                        ? words("%.0f g empty and %.0f g of bait", 1e3 * r.emptyKg(), 1e3 * r.baitKg())
                        : "as you gave it"));
        Rig rig = shape(massKg, r);
        parts.add(new Part(
                "dragArea",
                "drag area in flight",
                1e4 * rig.dragAreaM2(),
                1e4 * dragShare * rig.dragAreaM2(),
                "cm²",
                rigWords(r)));
        return rig;
    }

    private Rig shape(double massKg, Conditions.Rig r) {
        RigType type = r.type() == null ? RigType.FEEDER_LOADED : r.type();
        if (r.type() == null) {
            dragShare = KIND_SHARE;
        } else if (type != RigType.BOMB && (r.diameterM() == null || r.lengthM() == null)) {
            dragShare = Math.hypot(DRAG_SHARE, SIZE_SHARE);
        }
        if (type == RigType.BOMB) {
            return Rig.bomb(massKg);
        }
        double d = r.diameterM() == null ? FEEDER_M : r.diameterM();
        double l = r.lengthM() == null ? FEEDER_LENGTH_M : r.lengthM();
        Rig feeder = Rig.feeder(massKg, d, l, type == RigType.FEEDER_OPEN);
        return type == RigType.FEEDER_STEM ? feeder.withStem() : feeder;
    }

    private static String rigWords(Conditions.Rig r) {
        String size = r.diameterM() == null || r.lengthM() == null
                ? words("size not told, taken as %.0f × %.0f mm", 1e3 * FEEDER_M, 1e3 * FEEDER_LENGTH_M)
                : words("%.0f × %.0f mm", 1e3 * r.diameterM(), 1e3 * r.lengthM());
        if (r.type() == null) {
            return "kind of rig not told, taken as a plugged feeder that tumbles, " + size;
        }
        return switch (r.type()) {
            case BOMB -> "a lead that flies straight, with the drag of a ball";
            case FEEDER_OPEN -> "an open feeder that tumbles, " + size;
            case FEEDER_LOADED -> "a plugged feeder that tumbles, " + size;
            case FEEDER_STEM -> "a feeder held straight by a stem or tail, " + size;
        };
    }

    /** The line. */
    Line line() {
        Conditions.Tackle t = told.tackle();
        double d = t.lineM() == null ? LINE_M : t.lineM();
        lineShare = t.lineM() == null ? LINE_SHARE : TOLD_LINE_SHARE;
        boolean braid = t.lineKind() == LineKind.BRAID;
        String kind = braid ? "braid" : t.lineKind() == null ? "taken as nylon" : "nylon";
        parts.add(new Part(
                "lineDiameter",
                "main line",
                1e3 * d,
                1e3 * lineShare * d,
                "mm",
                (t.lineM() == null ? "not told, assumed; " : "as you gave it; ") + kind));
        return braid ? Line.braid(d) : Line.nylon(d);
    }

    /** Tells of the loss that flights are worked out with. */
    void loss(double loss, double plusMinus, String basis) {
        parts.add(new Part("loss", "loss at spool, lip and rings", loss, plusMinus, "× the line's own pull", basis));
    }

    /** The wind. */
    Wind wind() {
        Conditions.Wind w = told.wind();
        if (w.speedMps() == null) {
            windSd = UNTOLD_WIND;
            parts.add(new Part(
                    "headWind", "wind in the face", 0.0, windSd, "m/s", "not told, taken as calm, give or take"));
            return Wind.NONE;
        }
        double height = w.heightM() == null ? USUAL_WIND_M : w.heightM();
        double from = w.fromDeg() == null ? 0 : w.fromDeg();
        windSd = Math.max(LEAST_WIND, WIND_SHARE * w.speedMps());
        Wind wind = Wind.from(w.speedMps(), from, new Wind.Power(height, 0.11));
        String where = words(" at %.0f m; grows with height as over open water", height)
                + (w.fromDeg() == null ? "; direction not told, taken as straight into the face" : "");
        parts.add(new Part(
                "headWind", "wind in the face", -wind.alongMps() + 0.0, windSd, "m/s", "as you gave it," + where));
        if (Math.abs(wind.acrossMps()) > 0.05) {
            String side = wind.acrossMps() > 0 ? "from the left" : "from the right";
            parts.add(new Part(
                    "crossWind",
                    "wind across, " + side,
                    Math.abs(wind.acrossMps()),
                    windSd,
                    "m/s",
                    "as you gave it," + where));
        }
        return wind;
    }

    /** The air, which is taken as the standard's. */
    static Air air() {
        return Air.STANDARD;
    }

    /** The spool, whose size is not asked: what it does to the loss is small and fitted with it. */
    static Spool spool() {
        return Spool.USUAL;
    }

    /** What is known for the limits of the kit. */
    KitLimits.Kit limits(@Nullable Double clipPullN) {
        Conditions.Tackle t = told.tackle();
        return new KitLimits.Kit(setup.castMassKg(), t.leaderN(), t.lineN(), t.lineM(), t.castingKg(), clipPullN);
    }

    /** The loss to begin with: as told, else the usual one. */
    LossFit.Fitted toldLoss() {
        Conditions.Tackle t = told.tackle();
        if (t.loss() == null) {
            return new LossFit.Fitted(LossFit.USUAL, LossFit.USUAL * LossFit.USUAL_SHARE, 0, "not fitted yet, assumed");
        }
        double sd = t.lossPlusMinus() == null ? 0.2 * t.loss() : t.lossPlusMinus();
        return new LossFit.Fitted(t.loss(), sd, 0, "fitted before, as you gave it");
    }

    private static String words(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
