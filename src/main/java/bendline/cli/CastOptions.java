package bendline.cli;

import bendline.book.Distance;
import bendline.book.Kit;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** What is written down of a cast. */
final class CastOptions {

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Option(names = "--kit", paramLabel = "NAME", description = "What it was made with; see book kit.")
    @Nullable
    String kit;

    @Option(names = "--technique", paramLabel = "NAME", description = "The way of casting that was tried.")
    @Nullable
    String technique;

    @Option(names = "--wraps", paramLabel = "N", description = "Distance in turns of line round two sticks.")
    private @Nullable Double wraps;

    @Option(
            names = "--wrap-length",
            paramLabel = "M",
            description = "From stick to stick and back to the next turn, metres; 3.6576 (four yards) unless told.")
    private double wrapM = Distance.USUAL_WRAP_M;

    @Option(names = "--turns", paramLabel = "N", description = "Distance in turns of the reel's handle.")
    private @Nullable Double turns;

    @Option(
            names = "--turn-length",
            paramLabel = "M",
            description = "Line that a turn brings in, metres; else what the kit says.")
    private @Nullable Double turnM;

    @Option(names = "--metres", paramLabel = "M", description = "Distance in metres.")
    private @Nullable Double metres;

    @Option(
            names = "--give-or-take",
            paramLabel = "M",
            description = "How well --metres is known, 68 %%; 1 unless told.")
    private double giveOrTake = 1;

    @Option(names = "--hit-clip", paramLabel = "yes|no", description = "Whether the line came to the clip.")
    private @Nullable String hitClip;

    @Option(names = "--bait-on", paramLabel = "yes|no", description = "Whether the bait was still on.")
    private @Nullable String baitOn;

    @Option(names = "--note", paramLabel = "TEXT", description = "Anything else.")
    String note = "";

    @Nullable
    Boolean hitClip() {
        return yesNo("--hit-clip", hitClip);
    }

    @Nullable
    Boolean baitOn() {
        return yesNo("--bait-on", baitOn);
    }

    private @Nullable Boolean yesNo(String option, @Nullable String text) {
        if (text == null) {
            return null;
        }
        return switch (text.toLowerCase(Locale.ROOT)) {
            case "yes", "y" -> true;
            case "no", "n" -> false;
            default -> throw wrongUse(option + " is yes or no, not \"" + text + "\".");
        };
    }

    /** The distance that was given, or null. */
    @Nullable
    Distance distance(@Nullable Kit with) {
        int given = (wraps == null ? 0 : 1) + (turns == null ? 0 : 1) + (metres == null ? 0 : 1);
        if (given > 1) {
            throw wrongUse("A distance is given once: --wraps, --turns or --metres.");
        }
        try {
            if (wraps != null) {
                return Distance.wraps(wraps, wrapM);
            }
            if (turns != null) {
                Double length = turnM != null ? turnM : with == null ? null : with.turnM();
                if (length == null) {
                    throw wrongUse(
                            "--turns needs the line that a turn brings in; add --turn-length M, or kit that has it.");
                }
                return Distance.turns(turns, length);
            }
            return metres == null ? null : Distance.metres(metres, giveOrTake);
        } catch (IllegalArgumentException e) {
            throw wrongUse("The " + e.getMessage() + ".");
        }
    }

    private ParameterException wrongUse(String sentence) {
        return new ParameterException(spec.commandLine(), sentence);
    }
}
