package bendline.report;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Set;
import java.util.regex.Pattern;

/** Builds markup; text and attribute values are escaped here and nowhere else. */
public final class Html {

    private static final Set<String> INLINE = Set.of("a", "b", "span");

    private static final Pattern UNIT = Pattern.compile("(?<=±) |(?<=\\d) (?=(?:%|s|ms|m|m/s|px|g|±|°/s)(?![\\w]))");

    private final StringBuilder out = new StringBuilder();
    private final Deque<String> open = new ArrayDeque<>();

    /**
     * Opens an element.
     *
     * @param attributes names and values in turn
     */
    public Html open(String tag, String... attributes) {
        start(tag, attributes);
        open.push(tag);
        return this;
    }

    /** Closes the innermost open element. */
    public Html close() {
        end(open.pop());
        return this;
    }

    /** An element that holds nothing. */
    public Html single(String tag, String... attributes) {
        start(tag, attributes);
        return this;
    }

    /** An element that holds text only. */
    public Html leaf(String tag, String text, String... attributes) {
        start(tag, attributes);
        out.append(escaped(tied(text)));
        end(tag);
        return this;
    }

    /** Text. */
    public Html text(String text) {
        out.append(escaped(tied(text)));
        return this;
    }

    /** Markup that is known to be sound. */
    public Html raw(String markup) {
        out.append(markup);
        return this;
    }

    private void start(String tag, String... attributes) {
        if (attributes.length % 2 != 0) {
            throw new IllegalArgumentException("an attribute of <" + tag + "> has no value");
        }
        out.append('<').append(tag);
        for (int i = 0; i < attributes.length; i += 2) {
            out.append(' ')
                    .append(attributes[i])
                    .append("=\"")
                    .append(escaped(attributes[i + 1]))
                    .append('"');
        }
        out.append('>');
    }

    /** A line break after an element inside a line would show as a space. */
    private void end(String tag) {
        out.append("</").append(tag).append(INLINE.contains(tag) ? ">" : ">\n");
    }

    /** Text in which a number keeps its unit and its sign at the end of a line. */
    static String tied(String text) {
        return UNIT.matcher(text).replaceAll("\u00a0");
    }

    /** Text with the characters that mean something in markup replaced. */
    static String escaped(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }

    @Override
    public String toString() {
        if (!open.isEmpty()) {
            throw new IllegalStateException("<" + open.peek() + "> was not closed");
        }
        return out.toString();
    }
}
