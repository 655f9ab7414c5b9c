package bendline.stroke;

import bendline.geometry.Point;
import bendline.rod.BendException;
import bendline.rod.Bending;
import bendline.rod.Blank;
import bendline.rod.BlankShape;
import bendline.rod.Load;
import bendline.rod.Stiffness;
import bendline.rod.StillBend;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * How far this blank can be bent by this rig: at rest, by the rig's weight, and in a full cast, by the force it takes to bring
 * the rig to the speed of one. What a cast reached over the second says whether the rod was loaded for its weight.
 */
final class BendReach {

    /** Speed that carries 150 m in a vacuum from 45°, m/s: a worked example on an angler's physics page. */
    private static final double FULL_SPEED = 38.3;

    /** Radians of a full sweep: 80°, from 130 behind to 50 in front. Common practice, no source. */
    private static final double FULL_SWEEP = Math.toRadians(80);

    /** Largest over mean force, for one that rises and falls like a half sine. */
    private static final double PEAK_OVER_MEAN = Math.PI / 2;

    /** How far the force of a full cast may be another, over its value. Common practice, no source. */
    private static final double FORCE_SD = 0.25;

    /** Hands that turn about the shoulders: how far behind the grip the rod's turning point lies, metres. Common practice, no source. */
    private static final double BEHIND_HAND_M = 0.5;

    /**
     * By how much a load that comes within one swing of the rod bends it further than the same load at rest: half-sine pulses as
     * long as one to one and a half periods give 1.4 to 1.7 (shock spectra, textbook, from memory).
     */
    private static final double SWING = 1.5;

    /** What was told contradicts itself by so much, as a power of e of the stiffness: the rod is another one. */
    private static final double UNTOLD = 0.6;

    private static final int STATIONS = 12;

    private final @Nullable Blank blank;
    private final @Nullable Double rigKg;
    private final String why;

    BendReach(RodStiffness rod, @Nullable Double rigKg) {
        this.blank = rod.blank();
        this.rigKg = rigKg;
        this.why = rod.blank() == null ? rod.basis() : "needs the rig's mass";
    }

    /** @param bend what was read of the bend, and by how much that contradicts what was told of the rod */
    Map<Quantity, Measure> measures(StrokeReader.Readings all, Bend bend) {
        double doubt = bend.load().doubt();
        Map<Quantity, Measure> out = new EnumMap<>(Quantity.class);
        Blank b = blank;
        Double kg = rigKg;
        if (b == null || kg == null) {
            return unknown(out, why);
        }
        if (all.scale().doubtful()) {
            return unknown(out, all.scale().basis());
        }
        if (doubt > UNTOLD) {
            return unknown(
                    out,
                    String.format(
                            Locale.ROOT,
                            "the rod's ring or the rig speaks of a blank %.1f times as stiff or as soft: check the rod's length and"
                                    + " what you said of its stiffness",
                            Math.exp(doubt)));
        }
        try {
            told(out, b.withStiffness(b.stiffnessNm2(), Math.hypot(b.stiffnessRelativeSd(), doubt)), kg, all);
            share(out, all, BendDepth.sd(all, bend));
        } catch (BendException e) {
            return unknown(
                    out, "this rig would bend this blank beyond all measure: check the test curve and the rig's mass");
        }
        return out;
    }

    private static Map<Quantity, Measure> unknown(Map<Quantity, Measure> out, String why) {
        out.put(Quantity.REACH_STATIC, Quantity.REACH_STATIC.unknown(why));
        out.put(Quantity.REACH_DYNAMIC, Quantity.REACH_DYNAMIC.unknown(why));
        out.put(Quantity.LOADED_SHARE, Quantity.LOADED_SHARE.unknown(why));
        return out;
    }

    private void told(Map<Quantity, Measure> out, Blank b, double kg, StrokeReader.Readings all) {
        double hanging = kg * Stiffness.GRAVITY;
        double soft = b.stiffnessRelativeSd();
        Load hung = new Load(new Point(0, -hanging), StillBend.weight(b));
        double still = compression(b, hung, 1);
        double stillSd = farthest(b, hung, soft, still);
        out.put(
                Quantity.REACH_STATIC,
                Quantity.REACH_STATIC.known(
                        still,
                        stillSd,
                        "the rod held level with the rig hanging still, by the elastica of this blank"));
        double drop = all.scale().known()
                ? RigLine.drop(all.rod(), all.rod().time()[0], all.moments().fastestTurn())
                : Double.NaN;
        double dropM =
                Double.isNaN(drop) ? 0.3 * b.lengthM() : drop * all.scale().metresPerPixel();
        double way = FULL_SWEEP * (b.lengthM() + dropM);
        double acceleration = PEAK_OVER_MEAN * FULL_SPEED * FULL_SPEED / (2 * way);
        Load cast = swung(b, kg, SWING * acceleration);
        double full = compression(b, cast, 1);
        double off = Math.hypot(FORCE_SD, soft);
        double fullSd = farthest(b, cast, off, full);
        String basis = String.format(
                Locale.ROOT,
                "the bend while this rig and the blank itself are taken to %.0f m/s on the way of a full sweep, the rig pulling with"
                        + " %.0f N",
                FULL_SPEED,
                kg * acceleration);
        out.put(Quantity.REACH_DYNAMIC, Quantity.REACH_DYNAMIC.known(full, fullSd, basis));
    }

    private static void share(Map<Quantity, Measure> out, StrokeReader.Readings all, double depthSd) {
        Measure reach = out.get(Quantity.REACH_DYNAMIC);
        double full = reach.value();
        double fullSd = reach.plusMinus();
        double reached = Math.max(0, 1 - all.curves().chord().at(all.moments().peakBend()));
        double[] draws = new double[all.draws().moments().size()];
        for (int k = 0; k < draws.length; k++) {
            draws[k] = all.draws().numbers().get(k).getOrDefault(Quantity.COMPRESSION, Double.NaN);
        }
        double sd = Math.hypot(Math.hypot(Spread.of(draws), MeasureBook.CAMERA_RATIO), depthSd);
        double share = reached / full;
        out.put(
                Quantity.LOADED_SHARE,
                Double.isNaN(share) || Double.isNaN(sd)
                        ? Quantity.LOADED_SHARE.unknown("the rod was not followed well enough at its deepest bend")
                        : Quantity.LOADED_SHARE.known(
                                share,
                                share * Math.hypot(fullSd / full, sd / Math.max(1e-3, reached)),
                                "deepest compression over that within this blank's reach in a full cast with this rig"));
    }

    /** Rig and blank swung about the hands: an acceleration at the tip that falls in a straight line towards them. */
    private static Load swung(Blank b, double kg, double atTip) {
        List<Point> body = new ArrayList<>();
        for (int i = 0; i <= STATIONS; i++) {
            double s = b.lengthM() * i / STATIONS;
            double a = atTip * (s + BEHIND_HAND_M) / (b.lengthM() + BEHIND_HAND_M);
            body.add(new Point(0, -b.massAt(s) * a));
        }
        return new Load(new Point(0, -kg * atTip), body);
    }

    /**
     * By how much a blank that is softer or stiffer by its uncertainty is bent otherwise. Not half the way from one to the other: a
     * blank that lies along its load already is shortened most, and both of them less.
     */
    private static double farthest(Blank b, Load load, double off, double middle) {
        double softer = Math.abs(compression(b, load, 1 + off) - middle);
        double stiffer = Math.abs(compression(b, load, 1 / (1 + off)) - middle);
        return Math.max(softer, stiffer);
    }

    /** With a stiffness so many times less than its own. */
    private static double compression(Blank b, Load load, double softer) {
        Blank soft = b.withStiffness(b.stiffnessNm2() / softer, 0);
        BlankShape shape = new Bending(soft).under(0, load);
        return 1 - shape.chordRatio();
    }
}
