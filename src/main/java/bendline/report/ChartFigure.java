package bendline.report;

/** A chart on a page in both widths; on paper only the wide one. */
final class ChartFigure {

    private ChartFigure() {}

    /** Opens the figure, for a caption to follow; the caller closes it. */
    static void open(Html html, String wide, String narrow) {
        html.open("figure", "class", "chart");
        size(html, ChartSize.WIDE, wide);
        if (!html.paged()) {
            size(html, ChartSize.NARROW, narrow);
        }
    }

    private static void size(Html html, ChartSize size, String svg) {
        String words = html.reader().drawn(svg);
        html.open("div", "class", size.id())
                .raw(html.paged() ? words : Palette.themed(words))
                .close();
    }
}
