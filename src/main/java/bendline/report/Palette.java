package bendline.report;

import java.awt.Color;
import java.util.EnumSet;

/**
 * The report's colours: paper, ink and three that stand for a thing on every picture. Each thing also has a line style or a
 * shape of its own, so nothing is told by colour alone. Charts are drawn in the light ones; inside the page the names take
 * their place, so that the style sheet can turn them for a dark screen.
 */
enum Palette {
    /** Background. */
    PAPER("paper", new Color(0xf8, 0xf6, 0xf0)),
    /** Text and axes. */
    INK("ink", new Color(0x1c, 0x2b, 0x2e)),
    /** Lesser text. */
    SOFT("soft", new Color(0x4b, 0x5b, 0x5d)),
    /** Grid lines and frames. */
    RULE("rule", new Color(0xcb, 0xcf, 0xc6)),
    /** The blank; a solid line. */
    BLANK("blank", new Color(0xa6, 0x3d, 0x10)),
    /** The tip; beads. */
    TIP("tip", new Color(0x00, 0x62, 0x70)),
    /** The rig; a diamond. */
    RIG("rig", new Color(0x6b, 0x3f, 0x8c));

    private final String id;
    private final Color light;

    Palette(String id, Color light) {
        this.id = id;
        this.light = light;
    }

    /** On light paper. */
    Color light() {
        return light;
    }

    /** The style sheet's name for it. */
    String variable() {
        return "var(--" + id + ")";
    }

    /** The colour as the SVG writer spells it. */
    String inSvg() {
        return "rgb(" + light.getRed() + "," + light.getGreen() + "," + light.getBlue() + ")";
    }

    /** The colour as a style sheet spells it. */
    String hex() {
        return String.format(java.util.Locale.ROOT, "#%06x", light.getRGB() & 0xffffff);
    }

    /** Replaces the fixed colours of a drawing by the style sheet's names. */
    static String themed(String svg) {
        String out = svg;
        for (Palette p : EnumSet.allOf(Palette.class)) {
            out = out.replace(p.inSvg(), p.variable());
        }
        return out;
    }

    /** Replaces the style sheet's names by the fixed colours, for paper. */
    static String fixed(String markup) {
        String out = markup;
        for (Palette p : EnumSet.allOf(Palette.class)) {
            out = out.replace(p.variable(), p.hex());
        }
        return out;
    }
}
