package bendline.cli;

import bendline.scene.Conditions;
import bendline.scene.Conditions.LineKind;
import bendline.scene.Conditions.RigType;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;

/** What was cast with and in what, every part optional. */
final class ConditionOptions {

    private static final double NEWTON_PER_KG = 9.80665;

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Option(
            names = "--rig-type",
            paramLabel = "TYPE",
            converter = TypeReader.class,
            description =
                    "open or loaded (a feeder that tumbles, its mouth open or plugged with bait), stem (a feeder held"
                            + " straight by a stem or tail), or bomb (a streamlined lead).")
    private @Nullable RigType type;

    @Option(
            names = "--empty-mass",
            paramLabel = "G",
            converter = Quantities.Grams.class,
            description = "Feeder or lead without bait, grams: 5 to 500. Other units may be written: 3oz, 0.09kg.")
    private @Nullable Double emptyG;

    @Option(
            names = "--bait",
            paramLabel = "G",
            converter = Quantities.Grams.class,
            description = "Bait put into it, grams: 0 to 300. Loaded weight is empty plus bait.")
    private @Nullable Double baitG;

    @Option(
            names = "--feeder-size",
            paramLabel = "WxL",
            description = "Body of the feeder, thickness by length in millimetres, for example 22x35.")
    private @Nullable String size;

    @Option(
            names = "--casting-weight",
            paramLabel = "G",
            converter = Quantities.Grams.class,
            description =
                    "Most that the rod is made to cast, grams: 10 to 500. Tells of its stiffness too, less than the test"
                            + " curve does.")
    private @Nullable Double castingG;

    @Option(
            names = "--line",
            paramLabel = "MM",
            converter = Quantities.Millimetres.class,
            description = "Diameter of the main line, millimetres: 0.05 to 0.6.")
    private @Nullable Double lineMm;

    @Option(
            names = "--line-kind",
            paramLabel = "KIND",
            converter = KindReader.class,
            description = "nylon or braid; taken as nylon where it isn't told.")
    private @Nullable LineKind kind;

    @Option(
            names = "--line-strength",
            paramLabel = "KG",
            converter = Quantities.Strength.class,
            description = "Breaking strain of the main line, kilograms: 0.5 to 50; 12lb may be written.")
    private @Nullable Double lineKg;

    @Option(
            names = "--leader-strength",
            paramLabel = "KG",
            converter = Quantities.Strength.class,
            description = "Breaking strain of the leader, kilograms: 0.5 to 100; 30lb may be written.")
    private @Nullable Double leaderKg;

    @Option(
            names = "--line-loss",
            paramLabel = "X,PM",
            description = "Loss at spool, lip and rings with its uncertainty, as \"reach fit\" prints it for your kit.")
    private @Nullable String loss;

    @Option(
            names = "--wind",
            paramLabel = "M/S",
            converter = Quantities.Speed.class,
            description = "Wind, metres a second: 0 to 25; 15km/h, 10mph and 8kn may be written.")
    private @Nullable Double windMps;

    @Option(
            names = "--wind-from",
            paramLabel = "DEG",
            description =
                    "Where it comes from: 0 straight into your face, 90 from the right, 180 from behind, 270 from the"
                            + " left. Taken as 0 where it isn't told.")
    private @Nullable Double windFromDeg;

    @Option(
            names = "--wind-height",
            paramLabel = "M",
            converter = Quantities.Metres.class,
            description =
                    "Where the wind is measured, metres: 2 on the bank (as where it isn't told), 10 for a forecast.")
    private @Nullable Double windHeightM;

    @Option(
            names = "--tip-height",
            paramLabel = "M",
            converter = Quantities.Metres.class,
            description = "Rod tip above the water at the release, metres: 0.3 to 30.")
    private @Nullable Double tipHeightM;

    @Option(
            names = "--clip",
            paramLabel = "M",
            converter = Quantities.Metres.class,
            description = "Line to the clip, from the rod tip, metres: 5 to 300; 100yd may be written.")
    private @Nullable Double clipM;

    @Option(
            names = "--measured",
            paramLabel = "M",
            converter = Quantities.Metres.class,
            description = "How far the rig landed, metres: 3 to 300. Then the loss of the kit is fitted.")
    private @Nullable Double measuredM;

    /** What was given, checked. */
    Conditions toConditions() {
        check("The empty weight", emptyG, 5, 500, "g");
        check("The bait", baitG, 0, 300, "g");
        check("The rod's casting weight", castingG, 10, 500, "g");
        check("The line's diameter", lineMm, 0.05, 0.6, "mm");
        check("The line's strength", lineKg, 0.51, 50.9, "kg");
        check("The leader's strength", leaderKg, 0.51, 101, "kg");
        check("The wind", windMps, 0, 25, "m/s");
        check("The wind's direction", windFromDeg, 0, 360, "degrees");
        check("The height of the wind", windHeightM, 1, 20, "m");
        check("The height of the tip", tipHeightM, 0.3, 30, "m");
        check("The clip", clipM, 5, 300, "m");
        check("The measured distance", measuredM, 3, 300, "m");
        if (baitG != null && emptyG == null) {
            throw wrongUse("Bait alone is no loaded weight; add --empty-mass, or give both together as --rig-mass.");
        }
        double[] body = size == null ? null : body(size);
        double[] told = loss == null ? null : lossOf(loss);
        try {
            return new Conditions(
                    new Conditions.Rig(
                            type,
                            thousandth(emptyG),
                            thousandth(baitG),
                            body == null ? null : body[0],
                            body == null ? null : body[1]),
                    new Conditions.Tackle(
                            thousandth(castingG),
                            kind,
                            thousandth(lineMm),
                            newton(lineKg),
                            newton(leaderKg),
                            told == null ? null : told[0],
                            told == null ? null : told[1]),
                    new Conditions.Wind(windMps, windFromDeg, windHeightM),
                    new Conditions.Outcome(tipHeightM, clipM, measuredM, null));
        } catch (IllegalArgumentException e) {
            throw wrongUse("The " + e.getMessage() + ".");
        }
    }

    private void check(String what, @Nullable Double value, double min, double max, String unit) {
        String complaint = Quantities.complaint(what, value, min, max, unit);
        if (complaint != null) {
            throw wrongUse(complaint);
        }
    }

    private static @Nullable Double thousandth(@Nullable Double value) {
        return value == null ? null : value / 1000;
    }

    private static @Nullable Double newton(@Nullable Double kilos) {
        return kilos == null ? null : kilos * NEWTON_PER_KG;
    }

    private double[] body(String text) {
        Matcher m = Pattern.compile("\\s*(\\d+(?:\\.\\d+)?)\\s*[xX×]\\s*(\\d+(?:\\.\\d+)?)\\s*")
                .matcher(text);
        if (!m.matches()) {
            throw wrongUse(
                    "The feeder's size \"" + text + "\" is not two numbers in millimetres; write for example 22x35.");
        }
        double wide = Double.parseDouble(m.group(1));
        double tall = Double.parseDouble(m.group(2));
        check("The feeder's thickness", wide, 10, 80, "mm");
        check("The feeder's length", tall, 10, 150, "mm");
        return new double[] {wide / 1000, tall / 1000};
    }

    private double[] lossOf(String text) {
        Matcher m = Pattern.compile("\\s*(\\d+(?:\\.\\d+)?)\\s*,\\s*(\\d+(?:\\.\\d+)?)\\s*")
                .matcher(text);
        if (!m.matches()) {
            throw wrongUse(
                    "The line loss \"" + text + "\" is not a number and its uncertainty; write for example 2.4,0.3.");
        }
        double value = Double.parseDouble(m.group(1));
        double sd = Double.parseDouble(m.group(2));
        check("The line loss", value, 0, 60, "");
        check("The line loss's uncertainty", sd, 0, 30, "");
        return new double[] {value, sd};
    }

    private ParameterException wrongUse(String sentence) {
        return new ParameterException(spec.commandLine(), sentence);
    }

    /** Reads the type of the rig. */
    static final class TypeReader implements ITypeConverter<RigType> {
        @Override
        public RigType convert(String text) {
            return switch (text.strip().toLowerCase(Locale.ROOT)) {
                case "open" -> RigType.FEEDER_OPEN;
                case "loaded" -> RigType.FEEDER_LOADED;
                case "stem" -> RigType.FEEDER_STEM;
                case "bomb" -> RigType.BOMB;
                default ->
                    throw new TypeConversionException(
                            "'" + text + "' is no type of rig; write open, loaded, stem or bomb");
            };
        }
    }

    /** Reads what the line is made of. */
    static final class KindReader implements ITypeConverter<LineKind> {
        @Override
        public LineKind convert(String text) {
            return switch (text.strip().toLowerCase(Locale.ROOT)) {
                case "nylon", "mono" -> LineKind.NYLON;
                case "braid" -> LineKind.BRAID;
                default -> throw new TypeConversionException("'" + text + "' is no kind of line; write nylon or braid");
            };
        }
    }
}
