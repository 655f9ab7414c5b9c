package bendline.report;

import java.awt.Font;

/** The two widths charts are drawn in, so that their text is never scaled below 12 pixels on a screen. */
enum ChartSize {
    /** For tablets, desks and paper, shown at 680 pixels and wider. */
    WIDE("wide", 720, 13, 46),
    /** For phones, shown from 280 pixels. */
    NARROW("narrow", 300, 13, 34);

    private final String id;
    private final int width;
    private final int fontSize;
    private final int leftMargin;

    ChartSize(String id, int width, int fontSize, int leftMargin) {
        this.id = id;
        this.width = width;
        this.fontSize = fontSize;
        this.leftMargin = leftMargin;
    }

    /** Style class and part of element names. */
    String id() {
        return id;
    }

    /** Width of the drawing, user units. */
    int width() {
        return width;
    }

    /** Room left of the plot for the numbers of the axis, user units. */
    int leftMargin() {
        return leftMargin;
    }

    /** Text of axes and labels. */
    Font font() {
        return new Font(Font.SANS_SERIF, Font.PLAIN, fontSize);
    }

    /** Text that matters more. */
    Font boldFont() {
        return new Font(Font.SANS_SERIF, Font.BOLD, fontSize);
    }
}
