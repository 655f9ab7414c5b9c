package bendline.report;

import bendline.flight.Change.Kind;
import bendline.flight.Gain;
import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.font.FontRenderContext;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/** What each step is worth, as bars with their intervals under their words. */
final class GainChart {

    private static final int LINE = 18;
    private static final int BAR = 14;
    private static final int GAP = 14;
    private static final int AXIS = 24;

    /** Room for the numbers right of the bars. */
    private static final int NUMBERS = 104;

    private static final double RULED = 5;

    private final List<Gain> gains;
    private final double least;
    private final double most;

    GainChart(List<Gain> gains) {
        this.gains = gains.stream().filter(g -> g.metres().value() != null).toList();
        this.least = Math.min(
                0, this.gains.stream().mapToDouble(g -> g.metres().low()).min().orElse(0));
        this.most = Math.max(
                1, this.gains.stream().mapToDouble(g -> g.metres().high()).max().orElse(1));
    }

    /** The drawing. */
    String draw(ChartSize size, String id) {
        List<List<String>> labels = gains.stream().map(g -> wrapped(g, size)).toList();
        int height = AXIS + 6;
        for (List<String> l : labels) {
            height += l.size() * LINE + BAR + GAP;
        }
        SvgSheet sheet = new SvgSheet(id, size.width(), height, title());
        int total = height;
        return sheet.draw(g -> paint(g, size, labels, total));
    }

    private String title() {
        StringBuilder out = new StringBuilder("Metres gained by each step: ");
        for (Gain g : gains) {
            out.append(Words.of("%s %+.0f; ", g.change().label(), g.metres().value()));
        }
        return out.toString();
    }

    private void paint(Graphics2D g, ChartSize size, List<List<String>> labels, int height) {
        double perMetre = (size.width() - NUMBERS) / (most - least);
        double nought = -least * perMetre;
        g.setFont(size.font());
        grid(g, perMetre, nought, height);
        double y = 0;
        for (int i = 0; i < gains.size(); i++) {
            for (String line : labels.get(i)) {
                y += LINE;
                g.setPaint(Palette.INK.light());
                g.drawString(line, 0, (int) y - 4);
            }
            bar(g, gains.get(i), perMetre, nought, y);
            Gain gain = gains.get(i);
            g.setPaint(Palette.INK.light());
            g.setFont(size.boldFont());
            g.drawString(number(gain), size.width() - NUMBERS + 8, (int) y + BAR - 2);
            g.setFont(size.font());
            y += BAR + GAP;
        }
    }

    private static String number(Gain g) {
        return Words.of("%+.1f ± %.1f m", g.metres().value(), g.metres().plusMinus())
                .replace('-', '−');
    }

    private void grid(Graphics2D g, double perMetre, double nought, int height) {
        double step = most - least > 12 ? 5 : most - least > 5 ? 2 : 1;
        for (double m = step * Math.ceil(least / step); m <= most; m += step) {
            double x = nought + m * perMetre;
            g.setPaint(m == 0 ? Palette.SOFT.light() : Palette.RULE.light());
            g.setStroke(new BasicStroke(1f));
            g.draw(new Line2D.Double(x, 4, x, height - AXIS));
            g.setPaint(Palette.INK.light());
            String text = Words.of(m == 0 ? "0" : "%.0f m", m);
            int wide = g.getFontMetrics().stringWidth(text);
            g.drawString(text, (int) Math.max(0, x - wide / 2.0), height - 6);
        }
    }

    private static void bar(Graphics2D g, Gain gain, double perMetre, double nought, double y) {
        double value = gain.metres().value();
        double from = nought + Math.min(0, value) * perMetre;
        double wide = Math.max(1, Math.abs(value) * perMetre);
        Rectangle2D box = new Rectangle2D.Double(from, y, wide, BAR);
        // Labels and grid must not shine through.
        g.setPaint(Palette.PAPER.light());
        g.fill(box);
        g.setPaint(Palette.SOFT.light());
        g.setStroke(new BasicStroke(1.2f));
        if (gain.change().kind() == Kind.KIT) {
            g.fill(box);
        } else if (gain.change().kind() == Kind.TECHNIQUE) {
            for (double x = from + RULED; x < from + wide; x += RULED) {
                g.draw(new Line2D.Double(x, y, x, y + BAR));
            }
        }
        g.draw(box);
        double middle = y + BAR / 2.0;
        double low = nought + gain.metres().low() * perMetre;
        double high = nought + gain.metres().high() * perMetre;
        whisker(g, Palette.PAPER, 5f, low, high, middle);
        whisker(g, Palette.INK, 2f, low, high, middle);
    }

    private static void whisker(Graphics2D g, Palette colour, float width, double low, double high, double middle) {
        g.setPaint(colour.light());
        g.setStroke(new BasicStroke(width));
        g.draw(new Line2D.Double(low, middle, high, middle));
        g.draw(new Line2D.Double(low, middle - 4, low, middle + 4));
        g.draw(new Line2D.Double(high, middle - 4, high, middle + 4));
    }

    private static List<String> wrapped(Gain g, ChartSize size) {
        String text = Words.capital(g.change().label()) + " ("
                + g.change().kind().id() + ", " + g.change().effort().words() + ")";
        FontRenderContext context = new FontRenderContext(null, true, true);
        List<String> out = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : text.split(" ", -1)) {
            // A tenth is kept free: the reader's font may be wider than ours.
            if (line.length() > 0
                    && 1.1
                                    * size.font()
                                            .getStringBounds(line + " " + word, context)
                                            .getWidth()
                            > size.width()) {
                out.add(line.toString());
                line.setLength(0);
            }
            line.append(line.length() == 0 ? "" : " ").append(word);
        }
        out.add(line.toString());
        return out;
    }
}
