package bendline.report;

/** A chart on a page in both widths; on paper only the wide one. */
final class ChartFigure {

    private ChartFigure() {}

    /** Opens the figure, for a caption to follow; the caller closes it. */
    static void open(Html html, String wide, String narrow) {
        html.open("figure", "class", "chart");
        if (html.paged()) {
            html.raw(PaperChart.of(html.reader().drawn(wide)));
        } else {
            size(html, ChartSize.WIDE, Palette.themed(html.reader().drawn(wide)));
            size(html, ChartSize.NARROW, Palette.themed(html.reader().drawn(narrow)));
        }
    }

    private static void size(Html html, ChartSize size, String svg) {
        html.open("div", "class", size.id()).raw(svg).close();
    }
}
