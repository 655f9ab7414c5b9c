package bendline.report;

import java.awt.Color;

/** Colours for drawing on film. Each line is drawn over a dark one, so it shows on sky and on trees. */
final class PictureColours {

    static final Color BLANK = new Color(0xff, 0xb4, 0x54);
    static final Color TIP = new Color(0x6f, 0xe6, 0xf2);
    static final Color RIG = new Color(0xe9, 0xc0, 0xff);
    static final Color CASING = new Color(0x10, 0x18, 0x1a);
    static final Color LETTERS = new Color(0xf6, 0xf4, 0xec);
    static final Color PLATE = new Color(0x10, 0x18, 0x1a, 0xc8);

    private PictureColours() {}
}
