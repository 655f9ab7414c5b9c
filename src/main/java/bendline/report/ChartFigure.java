package bendline.report;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A chart on a page in both widths; on paper only the wide one. */
final class ChartFigure {

    /** Width on paper, in the 96th parts of an inch of style sheets: 182 mm between margins, so that letters keep 9 points. */
    private static final double PAPER_WIDTH = 688;

    private static final Pattern SIZES = Pattern.compile(" width='(\\d+)' height='(\\d+)'");

    private ChartFigure() {}

    /** Opens the figure, for a caption to follow; the caller closes it. */
    static void open(Html html, String wide, String narrow) {
        html.open("figure", "class", "chart");
        if (html.paged()) {
            size(html, ChartSize.WIDE, onPaper(html.reader().drawn(wide)));
        } else {
            size(html, ChartSize.WIDE, Palette.themed(html.reader().drawn(wide)));
            size(html, ChartSize.NARROW, Palette.themed(html.reader().drawn(narrow)));
        }
    }

    private static void size(Html html, ChartSize size, String svg) {
        html.open("div", "class", size.id()).raw(svg).close();
    }

    /** The PDF library takes the size of a drawing from its attributes. */
    private static String onPaper(String svg) {
        Matcher m = SIZES.matcher(svg);
        if (!m.find()) {
            return svg;
        }
        double height = PAPER_WIDTH * Integer.parseInt(m.group(2)) / Integer.parseInt(m.group(1));
        return svg.substring(0, m.start())
                + Words.of(" width=\"%.0f\" height=\"%.0f\"", PAPER_WIDTH, height)
                + svg.substring(m.end());
    }
}
