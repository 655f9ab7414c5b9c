package bendline.technique;

import bendline.stroke.Measure;
import bendline.stroke.Stroke;
import bendline.technique.Criterion.Answer;
import bendline.technique.Finding.Check;
import bendline.technique.Finding.State;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Plain words with numbers in them. */
final class Sentences {

    private static final Pattern BRACES = Pattern.compile("\\{(\\w+)}");

    private Sentences() {}

    /** What was seen of a fault, without the numbers; nothing unless it was found. */
    static String brief(State state, List<Answer> answers) {
        if (state != State.FOUND) {
            return "";
        }
        String seen = joined(answers, State.FOUND, a -> a.criterion().seen());
        return seen.substring(0, 1).toUpperCase(Locale.ROOT) + seen.substring(1) + ".";
    }

    /** What was seen of a fault. */
    static String says(State state, List<Answer> answers, int needed) {
        String seen = joined(answers, State.FOUND, Sentences::found);
        String open = joined(answers, State.CANNOT_TELL, Sentences::open);
        String against = joined(answers, State.CLEAR, Sentences::clear);
        StringBuilder out = new StringBuilder();
        switch (state) {
            case FOUND -> out.append("Seen: ").append(seen).append('.');
            case CLEAR -> {
                out.append("Not seen: ").append(against).append('.');
                sentence(out, "By itself this decides nothing: ", seen);
            }
            case CANNOT_TELL -> {
                out.append("Cannot tell, since ").append(needed == 1 ? "the one sign" : "too few of the signs");
                out.append(" can be read: ").append(open).append('.');
                sentence(out, "Speaks for it: ", seen);
            }
        }
        if (state != State.CLEAR) {
            sentence(out, "Speaks against it: ", against);
        }
        return out.toString();
    }

    private static void sentence(StringBuilder out, String start, String rest) {
        if (!rest.isEmpty()) {
            out.append(' ').append(start).append(rest).append('.');
        }
    }

    private static String joined(List<Answer> answers, State state, Function<Answer, String> words) {
        return answers.stream().filter(a -> a.state() == state).map(words).collect(Collectors.joining("; "));
    }

    private static String found(Answer a) {
        return a.criterion().seen() + " ("
                + a.checks().stream()
                        .filter(c -> c.verdict() == State.FOUND)
                        .map(Sentences::number)
                        .collect(Collectors.joining(", "))
                + ")";
    }

    private static String clear(Answer a) {
        return a.checks().stream().map(Sentences::number).collect(Collectors.joining(", "));
    }

    private static String open(Answer a) {
        return a.checks().stream()
                .filter(c -> c.verdict() == State.CANNOT_TELL)
                .map(c -> c.measure().value() == null
                        ? c.measure().label() + " unknown: " + c.measure().basis()
                        : number(c) + ", which is " + near(c))
                .collect(Collectors.joining(", "));
    }

    private static String near(Check c) {
        double off = Math.abs(c.measure().value() - c.limit());
        return off <= c.measure().plusMinus()
                ? "as near to the limit as its uncertainty"
                : "not twice its uncertainty beyond the limit";
    }

    private static String number(Check c) {
        Measure m = c.measure();
        if (m.value() == null) {
            return m.label() + ": " + m.basis();
        }
        return m.label() + " " + value(m) + " ± " + uncertainty(m) + ", "
                + (c.worseAbove() ? "wanted at most " : "wanted at least ") + text(c.limit(), m.unit());
    }

    /** A text in which every {measure} is replaced by its number, or null where one of them is not known. */
    static @Nullable String filled(String template, Stroke stroke) {
        Matcher m = BRACES.matcher(template);
        StringBuilder out = new StringBuilder();
        while (m.find()) {
            Measure measure = stroke.measure(m.group(1));
            if (measure.value() == null) {
                return null;
            }
            m.appendReplacement(out, Matcher.quoteReplacement(value(measure)));
        }
        m.appendTail(out);
        return out.toString();
    }

    private static String value(Measure m) {
        Double v = m.value();
        return text(v == null ? Double.NaN : v, m.unit());
    }

    /** An uncertainty as its number is rounded, but never as none. */
    private static String uncertainty(Measure m) {
        double sd = m.plusMinus();
        boolean finer = m.unit().equals("deg") && sd < 0.95;
        return finer ? String.format(Locale.ROOT, "%.1f°", Math.max(0.1, sd)) : text(sd, m.unit());
    }

    /** A number with its unit, rounded to what a person can use. */
    static String text(double value, String unit) {
        return switch (unit) {
            case "deg" -> String.format(Locale.ROOT, "%.0f°", value);
            case "deg/s" -> String.format(Locale.ROOT, "%.0f° a second", value);
            case "1/s" -> String.format(Locale.ROOT, "%.1f a second", value);
            case "s" -> String.format(Locale.ROOT, "%.2f s", value);
            case "1" -> String.format(Locale.ROOT, Math.abs(value) < 1 ? "%.2f" : "%.1f", value);
            default -> String.format(Locale.ROOT, "%.1f %s", value, unit);
        };
    }
}
