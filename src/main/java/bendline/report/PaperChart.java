package bendline.report;

import java.awt.Font;
import java.awt.font.FontRenderContext;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A chart for the PDF. The PDF library draws the letters of an SVG as shapes, so that they could neither be selected nor searched;
 * the words are therefore taken out of the drawing and laid over it as text of the page.
 */
final class PaperChart {

    /** Width on paper, in the 96th parts of an inch of style sheets: 182 mm between margins, so that letters keep 9 points. */
    private static final double WIDTH = 688;

    private static final Pattern SIZES = Pattern.compile(" width=\"(\\d+)\" height=\"(\\d+)\"");
    private static final Pattern WORDS = Pattern.compile("<text((?: [\\w-]+=\"[^\"]*\")*)>([^<]*)</text>");
    private static final Pattern ATTRIBUTE = Pattern.compile(" ([\\w-]+)=\"([^\"]*)\"");

    /** From the top of a line as high as its letters to where they stand, over their size: Liberation Sans and its kin. */
    private static final double ASCENT = 0.85;

    private static final FontRenderContext METRICS = new FontRenderContext(null, true, true);

    private final String svg;
    private final double scale;
    private final double height;

    private PaperChart(String svg, int width, int height) {
        this.svg = svg;
        this.scale = WIDTH / width;
        this.height = height;
    }

    /** Markup of the page for a drawing by {@link SvgSheet}. */
    static String of(String svg) {
        Matcher m = SIZES.matcher(svg);
        if (!m.find()) {
            throw new IllegalArgumentException("a drawing without a size");
        }
        return new PaperChart(svg, Integer.parseInt(m.group(1)), Integer.parseInt(m.group(2))).markup();
    }

    private String markup() {
        StringBuilder words = new StringBuilder();
        String lines = WORDS.matcher(svg).replaceAll(m -> laid(m, words) ? "" : Matcher.quoteReplacement(m.group()));
        // The library takes the size of a drawing from its attributes.
        String sized = SIZES.matcher(lines)
                .replaceFirst(Words.of(" width=\"%.0f\" height=\"%.0f\"", WIDTH, scale * height))
                .replace(Palette.PAPER.inSvg(), "white");
        return Words.of("<div class=\"sheet\" style=\"height:%.0fpx\">", scale * height) + sized + words + "</div>";
    }

    /** Words that stand upright; the box is as wide as the drawing took them to be, and they stand in its middle. */
    private boolean laid(MatchResult m, StringBuilder to) {
        Map<String, String> drawn = new TreeMap<>();
        ATTRIBUTE.matcher(m.group(1)).results().forEach(a -> drawn.put(a.group(1), a.group(2)));
        if (drawn.containsKey("transform")) {
            return false;
        }
        boolean bold = "bold".equals(drawn.get("font-weight"));
        double size = Double.parseDouble(drawn.getOrDefault("font-size", "13px").replace("px", ""));
        double x = Double.parseDouble(drawn.getOrDefault("x", "0"));
        double y = Double.parseDouble(drawn.getOrDefault("y", "0"));
        to.append(Words.of(
                "<%s style=\"left:%.1fpx;top:%.1fpx;width:%.1fpx;font-size:%.2fpx;color:%s\">%s</%1$s>",
                bold ? "b" : "span",
                scale * x,
                scale * (y - ASCENT * size),
                scale * width(m.group(2), bold, size),
                scale * size,
                drawn.getOrDefault("fill", "black"),
                m.group(2)));
        return true;
    }

    private static double width(String escaped, boolean bold, double size) {
        Font font = new Font(Font.SANS_SERIF, bold ? Font.BOLD : Font.PLAIN, 1).deriveFont((float) size);
        return font.getStringBounds(escaped.replaceAll("&\\w+;", "x"), METRICS).getWidth();
    }
}
