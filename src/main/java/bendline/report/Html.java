package bendline.report;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Set;
import java.util.regex.Pattern;

/** Builds markup; text and attribute values are escaped here and nowhere else. */
public final class Html {

    private static final Set<String> INLINE = Set.of("a", "b", "span", "code");

    private static final Pattern HEADING = Pattern.compile("h[1-6]");

    private static final Pattern UNIT = Pattern.compile("(?<=±) |(?<=\\d) (?=(?:%|s|ms|m|m/s|px|g|±|°/s)(?![\\w]))");

    private final StringBuilder out = new StringBuilder();
    private final Deque<String> open = new ArrayDeque<>();
    private final Reader reader;
    private final boolean paged;
    private int deeper;

    /** For a screen, with points and metric units. */
    public Html() {
        this(Reader.PLAIN, false);
    }

    /** For a reader at a screen. */
    public Html(Reader reader) {
        this(reader, false);
    }

    /**
     * For a reader.
     *
     * @param paged whether it is for sheets of paper rather than a screen
     */
    Html(Reader reader, boolean paged) {
        this.reader = reader;
        this.paged = paged;
    }

    /** Whom it is for. */
    Reader reader() {
        return reader;
    }

    /** Whether it is for sheets of paper rather than a screen. */
    boolean paged() {
        return paged;
    }

    /** From here on headings are so many levels deeper than they say, as those of one cast among several are. */
    void deeper(int levels) {
        deeper = levels;
    }

    /** How many levels deeper than they say headings are. */
    int deeper() {
        return deeper;
    }

    /**
     * Opens an element.
     *
     * @param attributes names and values in turn
     */
    public Html open(String tag, String... attributes) {
        start(tag, attributes);
        open.push(level(tag));
        return this;
    }

    /** Closes the innermost open element. */
    public Html close() {
        ended(open.pop());
        return this;
    }

    /** An element that holds nothing. */
    public Html single(String tag, String... attributes) {
        start(tag, attributes);
        out.insert(out.length() - 1, " /");
        return this;
    }

    /** An element that holds text only. */
    public Html leaf(String tag, String text, String... attributes) {
        start(tag, attributes);
        out.append(escaped(tied(reader.say(text))));
        end(tag);
        return this;
    }

    /** An element that holds a name, in which nothing is a number. */
    Html name(String tag, String name, String... attributes) {
        start(tag, attributes);
        out.append(escaped(name));
        end(tag);
        return this;
    }

    /** Text. */
    public Html text(String text) {
        out.append(escaped(tied(reader.say(text))));
        return this;
    }

    /**
     * A heading of this level with the sign of a part that can be folded away; on paper it is open. What is folded stands behind its
     * heading, not inside it: browsers leave out of a print what lies in a closed {@code details}, a style sheet can't bring it back
     * in all of them, and pages have no scripts.
     */
    Html fold(String heading, String text) {
        if (paged) {
            return open("div", "class", "fold").leaf(heading, text);
        }
        open("details").open("summary").leaf(heading, text).close().close();
        return open("div", "class", "folded");
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
        out.append('<').append(level(tag));
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
        ended(level(tag));
    }

    private void ended(String tag) {
        out.append("</").append(tag).append(INLINE.contains(tag) ? ">" : ">\n");
    }

    private String level(String tag) {
        return HEADING.matcher(tag).matches() ? "h" + Math.min(6, tag.charAt(1) - '0' + deeper) : tag;
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
