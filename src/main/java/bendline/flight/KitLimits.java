package bendline.flight;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** Where a kit goes past the usual limits. Practice, not law: local rules and the makers' words come first. */
public final class KitLimits {

    private static final double POUND_N = 4.4482216;
    static final double OUNCE_KG = 0.028349523;

    /** Leader: ten pounds of breaking strain for every ounce cast. Common practice in many places, no standard behind it. */
    private static final double POUNDS_PER_OUNCE = 10;

    /** Share of the line's strength that a knot may leave; half at worst. Common practice, no source. */
    private static final double KNOT = 0.5;

    private KitLimits() {}

    /**
     * What is known of a kit; null where it is not.
     *
     * @param rigKg as cast
     * @param leaderN breaking strain of the leader
     * @param lineN breaking strain of the main line
     * @param lineM diameter of the main line
     * @param castingKg most that the rod is made to cast
     * @param clipPullN strongest pull when the clip stops the rig
     */
    public record Kit(
            @Nullable Double rigKg,
            @Nullable Double leaderN,
            @Nullable Double lineN,
            @Nullable Double lineM,
            @Nullable Double castingKg,
            @Nullable Double clipPullN) {}

    /**
     * One limit looked at.
     *
     * @param id in files, kebab-case
     * @param passed whether the kit goes past it
     * @param says what was found, with the numbers
     * @param source where the limit comes from
     */
    public record Caution(String id, boolean passed, String says, String source) {}

    /** Breaking strain that a leader should have for a rig, N. */
    public static double leaderFor(double rigKg) {
        return POUNDS_PER_OUNCE * POUND_N * rigKg / OUNCE_KG;
    }

    /** Whether nothing that is known of rod and leader forbids a rig so heavy. */
    static boolean carries(Kit kit, double rigKg) {
        Double most = kit.castingKg();
        return (most == null || rigKg <= most) && leaderHolds(kit, rigKg);
    }

    /** Whether nothing that is known of the leader says that it is too weak for a rig. */
    static boolean leaderHolds(Kit kit, double rigKg) {
        Double leader = kit.leaderN();
        return leader == null || leader >= leaderFor(rigKg);
    }

    /** Whether a main line is thick enough for a rig at full power, going by the rules for tournaments. */
    static boolean thickEnough(double lineM, double rigKg) {
        return 1e3 * lineM >= leastLineMm(1e3 * rigKg) - 1e-9;
    }

    /** UK Surfcasting Federation's tournament rules: least main line for the weight, mm; none for light ones. */
    private static double leastLineMm(double grams) {
        if (grams < 50) {
            return 0;
        }
        return grams <= 100 ? 0.25 : grams <= 125 ? 0.28 : grams <= 150 ? 0.31 : 0.35;
    }

    /** The limits that can be looked at. */
    public static List<Caution> of(Kit kit) {
        List<Caution> out = new ArrayList<>();
        Double rig = kit.rigKg();
        if (rig != null) {
            leader(rig, kit, out);
            rod(rig, kit.castingKg(), out);
            diameter(rig, kit.lineM(), out);
        }
        weaker(kit, out);
        clip(kit, out);
        return out;
    }

    private static void leader(double rig, Kit kit, List<Caution> out) {
        double needed = leaderFor(rig);
        Double has = kit.leaderN() != null ? kit.leaderN() : kit.lineN();
        if (has == null) {
            return;
        }
        String what = kit.leaderN() != null ? "leader" : "main line, cast without a leader,";
        out.add(new Caution(
                "leader-strength",
                has < needed,
                words(
                        "For %.0f g the leader should hold %.0f kg (%.0f lb); the %s holds %.1f kg (%.0f lb).",
                        1e3 * rig, kilos(needed), needed / POUND_N, what, kilos(has), has / POUND_N),
                "ten pounds to the ounce cast: common practice among shore anglers, no standard behind it"));
    }

    private static void rod(double rig, @Nullable Double most, List<Caution> out) {
        if (most == null) {
            return;
        }
        out.add(new Caution(
                "casting-weight",
                rig > most,
                words(
                        "The rig is %.0f g with its bait; the rod is made to cast %.0f g at most.",
                        1e3 * rig, 1e3 * most),
                "the rod maker's figure, as you gave it"));
    }

    private static void diameter(double rig, @Nullable Double line, List<Caution> out) {
        double grams = 1e3 * rig;
        if (line == null || grams < 50) {
            return;
        }
        double least = leastLineMm(grams);
        out.add(
                new Caution(
                        "line-diameter",
                        !thickEnough(line, rig),
                        words(
                                "For %.0f g at full power, tournament casters use a main line of at least %.2f mm and a leader of 0.65 mm or"
                                        + " more; yours is %.2f mm.",
                                grams, least, 1e3 * line),
                        "UK Surfcasting Federation tournament rules; thinner line than that is a crack-off waiting if you cast as hard"));
    }

    private static void weaker(Kit kit, List<Caution> out) {
        if (kit.leaderN() != null && kit.lineN() != null && kit.leaderN() < kit.lineN()) {
            out.add(new Caution(
                    "leader-weaker",
                    true,
                    words(
                            "The leader (%.1f kg) is weaker than the main line (%.1f kg); it takes the force of the cast.",
                            kilos(kit.leaderN()), kilos(kit.lineN())),
                    "common practice, no source"));
        }
    }

    private static void clip(Kit kit, List<Caution> out) {
        Double pull = kit.clipPullN();
        Double line = kit.lineN();
        if (pull == null || line == null) {
            return;
        }
        out.add(new Caution(
                "clip-pull",
                pull > KNOT * line,
                words(
                        "Stopped dead by the clip the rig pulls with up to %.1f kg; a knot may leave half of the line's %.1f kg. Raise"
                                + " the rod to meet it.",
                        kilos(pull), kilos(line)),
                "worked out from the flight; half for a knot is common practice, no source"));
    }

    private static double kilos(double newton) {
        return newton / Moment.GRAVITY;
    }

    private static String words(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
