package bendline.cli;

import bendline.flight.Answer;
import bendline.flight.Gain;
import bendline.flight.KitLimits.Caution;
import bendline.flight.Outlook;
import bendline.flight.Outlook.Part;
import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** What the flight says, in lines of text. */
final class ReachText {

    private final PrintWriter out;

    ReachText(PrintWriter out) {
        this.out = out;
    }

    void print(Outlook o) {
        out.println("How far (two casts in three lie in the brackets)");
        line("expected", o.distanceM(), "%.0f m", "%.0f to %.0f");
        line("in still air", o.stillAirM(), "%.0f m", "%.0f to %.0f");
        line("in flight", o.flightSeconds(), "%.1f s", "%.1f to %.1f");
        line("line to spare", o.spareM(), "%.0f m more out than the straight way", "%.0f to %.0f");
        if (o.reachesClip().value() != null) {
            out.println(words(
                    "  %-14s in %.0f of 100 casts like this",
                    "to the clip", 100 * o.reachesClip().value()));
        }
        line("best angle", o.bestAngleDeg(), "%.0f°", "%.0f to %.0f");
        if (o.goodAngleDeg().value() != null) {
            out.println(words(
                    "  %-14s %.0f° to %.0f°, which give up less than 3 %% of the distance",
                    "good angles", o.goodAngleDeg().low(), o.goodAngleDeg().high()));
        }
        gains(o.gains());
        ten(o.nextTen());
        kit(o.kit());
        safety(o.cautions());
        o.notes().forEach(n -> out.println("Note: " + n));
    }

    private void line(String label, Answer a, String value, String interval) {
        if (a.value() == null) {
            out.println(words("  %-14s cannot tell: %s", label, a.basis()));
        } else {
            out.println(words("  %-14s " + value + " (" + interval + ")", label, a.value(), a.low(), a.high()));
        }
    }

    private void gains(List<Gain> gains) {
        if (gains.isEmpty()) {
            return;
        }
        out.println("Where the next metres are, the most for the effort first");
        for (Gain g : gains) {
            if (g.metres().value() != null) {
                out.println(words(
                        "  %+5.1f m (%+.1f to %+.1f)  %s; %s, %s",
                        g.metres().value(),
                        g.metres().low(),
                        g.metres().high(),
                        g.change().label(),
                        g.change().kind().id(),
                        g.change().effort().words()));
            }
        }
    }

    private void ten(Gain.@Nullable Together ten) {
        if (ten == null || ten.metres().value() == null) {
            return;
        }
        out.println(words(
                "The next ten metres: %s; together %+.0f m (%+.0f to %+.0f)",
                ten.steps().stream().map(g -> g.change().label()).collect(Collectors.joining("; then ")),
                ten.metres().value(),
                ten.metres().low(),
                ten.metres().high()));
    }

    private void kit(List<Part> parts) {
        out.println("Worked out with");
        for (Part p : parts) {
            Double value = p.value();
            String number = value == null
                    ? "not known"
                    : Quantities.plain(value)
                            + (Double.isFinite(p.plusMinus()) ? " ± " + Quantities.plain(p.plusMinus()) : "");
            out.println(words("  %-30s %s %s: %s", p.label(), number, p.unit(), p.basis()));
        }
    }

    private void safety(List<Caution> cautions) {
        out.println("Safety");
        for (Caution c : cautions) {
            out.println(words(
                    "  %s %s (%s)",
                    c.passed() ? "PAST THE USUAL LIMIT:" : "within the usual limit:", c.says(), c.source()));
        }
        out.println(
                "  Look behind and above before every cast, keep 30 m from power lines, never cast over people, protect the finger"
                        + " that holds the line. Local rules and a licensed coach come first.");
    }

    private static String words(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
