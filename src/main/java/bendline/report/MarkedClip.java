package bendline.report;

import bendline.analysis.ClipAnalysis;
import bendline.footage.ClipWriter;
import bendline.footage.ClipWriterSettings;
import bendline.image.VideoPlanes;
import bendline.stroke.Event;
import bendline.stroke.Kinematics;
import bendline.stroke.Stroke;
import java.awt.BasicStroke;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Writes the clip again with what was followed drawn in. The picture keeps every pixel it has; words and numbers stand on a
 * strip added under it, the live bend, where it is wanted, on a panel beside it.
 */
final class MarkedClip implements AutoCloseable {

    /** Bits a pixel and second at which the picture keeps its grain. */
    private static final double BITS_PER_PIXEL = 0.12;

    /** Width of the panel over the longer side of the picture. */
    private static final double PANEL_SHARE = 0.36;

    private final ClipAnalysis analysis;
    private final CastPainter painter;
    private final ClipWriter writer;
    private final VideoPlanes canvas;
    private final Reader reader;
    private final StrokePace pace;
    private final ShownFrames shown;
    private final @Nullable BendPanel panel;
    private final int pictureWidth;
    private final int width;
    private final int stripTop;
    private final int height;
    private final Overlay overlay;
    private final Board side;
    private final Board under;
    private final int fontSize;
    private final Font font;
    private final Font bold;

    MarkedClip(ClipAnalysis analysis, Path file, ReportOptions options) throws IOException {
        this.analysis = analysis;
        this.painter = new CastPainter(analysis);
        this.reader = options.reader();
        this.pace = new StrokePace(analysis, options.marked().slower());
        this.shown = new ShownFrames(analysis);
        this.pictureWidth = analysis.info().width() / 2 * 2;
        // An odd last row goes with its pair under the strip.
        int pictureHeight = analysis.info().height();
        this.stripTop = pictureHeight / 2 * 2;
        this.fontSize = Math.max(12, pictureWidth / 36);
        boolean beside = options.marked().bendPanel() && !analysis.casts().isEmpty();
        int panelWidth = beside ? (int) (PANEL_SHARE * Math.max(pictureWidth, pictureHeight)) / 2 * 2 : 0;
        this.width = pictureWidth + panelWidth;
        this.panel = beside ? new BendPanel(analysis, panelWidth, pictureHeight, fontSize) : null;
        this.height = stripTop + 4 * fontSize;
        this.overlay = new Overlay(width, height);
        this.side = new Board(Math.max(2, panelWidth), stripTop);
        this.under = new Board(width, 4 * fontSize);
        this.font = new Font(Font.SANS_SERIF, Font.PLAIN, fontSize);
        this.bold = new Font(Font.SANS_SERIF, Font.BOLD, fontSize);
        double step = analysis.info().medianStepSeconds();
        double rate = Math.max(1, Math.min(1000, 1 / step));
        int bits = (int) Math.max(1e6, Math.min(4e7, BITS_PER_PIXEL * width * height * Math.min(rate, 60)));
        this.canvas = VideoPlanes.black(width, height);
        this.writer = new ClipWriter(
                file, width, height, ClipWriterSettings.of(rate, bits).inHaste());
    }

    /** Whether a frame should be added; others may be left out. */
    boolean wants(int frame) {
        return shown.hold(frame);
    }

    /**
     * Adds the next frame that is shown.
     *
     * @param frame decoded frames counted from 0
     * @param seconds clip time
     * @param picture as stored; copied
     */
    void add(int frame, double seconds, VideoPlanes picture) throws IOException {
        canvas.put(picture, 0, 0);
        Graphics2D over = overlay.clean();
        over.clipRect(0, 0, pictureWidth, stripTop);
        painter.paint(over, frame, Math.max(1, pictureWidth / 960.0));
        over.dispose();
        overlay.onto(canvas);
        if (panel != null) {
            beside(panel, frame);
        }
        strip(frame, seconds);
        writer.write(canvas, pace.shownAt(seconds));
    }

    private void beside(BendPanel panel, int frame) {
        Graphics2D g = side.clean(PictureColours.CASING);
        Stroke stroke = painter.strokeAt(frame);
        if (stroke != null) {
            Kinematics k = stroke.kinematics();
            int i = frame - k.firstFrame();
            double compression = i >= 0 && i < k.size() ? 1 - k.chordRatio()[i] : Double.NaN;
            panel.paint(g, stroke, frame, compression);
        }
        g.dispose();
        side.onto(canvas, pictureWidth, 0);
    }

    private void strip(int frame, double seconds) {
        Graphics2D g = under.clean(PictureColours.CASING);
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        Stroke stroke = painter.strokeAt(frame);
        timeBar(g, seconds);
        if (Lettering.works()) {
            g.setColor(PictureColours.LETTERS);
            g.setFont(bold);
            g.drawString(reader.say(happening(stroke, seconds)), fontSize / 2, (int) (1.9 * fontSize));
            g.setFont(font);
            g.drawString(reader.say(numbers(stroke, frame, seconds)), fontSize / 2, (int) (3.3 * fontSize));
        }
        g.dispose();
        under.onto(canvas, 0, stripTop);
    }

    /** The clip from end to end, the casts as bars, their moments as ticks, and where we are. */
    private void timeBar(Graphics2D g, double seconds) {
        double y = 0.35 * fontSize;
        double bar = Math.max(2, fontSize / 6.0);
        g.setColor(PictureColours.LETTERS);
        g.fill(new Rectangle2D.Double(0, y + bar / 2 - 0.5, width, 1));
        for (var cast : analysis.casts()) {
            Stroke s = cast.stroke();
            double from = x(analysis.info().times().get(s.firstFrame()));
            g.fill(new Rectangle2D.Double(from, y, x(analysis.info().times().get(s.lastFrame())) - from, bar));
            g.setStroke(new BasicStroke((float) Math.max(1, bar / 3)));
            for (Event e : known(s)) {
                g.draw(new Line2D.Double(x(e.seconds()), y - bar, x(e.seconds()), y + 2 * bar));
            }
        }
        g.setColor(PictureColours.BLANK);
        double here = x(seconds);
        g.fill(new Rectangle2D.Double(here - bar, y - 1.5 * bar, 2 * bar, 4 * bar));
    }

    private double x(double seconds) {
        return width * seconds / Math.max(1e-9, analysis.info().durationSeconds());
    }

    private static List<Event> known(Stroke stroke) {
        return stroke.events().values().stream()
                .filter(e -> e.seconds() != null)
                .sorted(Comparator.comparing(Event::seconds))
                .toList();
    }

    /** The last moment that has passed; before the first one and between casts, what the clip shows. */
    private String happening(@Nullable Stroke stroke, double seconds) {
        if (stroke == null) {
            return analysis.casts().isEmpty() ? "No cast found in this clip" : "No cast here";
        }
        String cast = analysis.casts().size() > 1 ? "Cast " + stroke.number() + "   " : "";
        return cast
                + known(stroke).stream()
                        .filter(e -> e.seconds() <= seconds)
                        .reduce((first, second) -> second)
                        .map(e -> Words.of("%s, %.2f s", EventWords.label(e.kind()), e.seconds()))
                        .orElse("Before the backswing")
                + (pace.slowAt(seconds)
                        ? Words.of(pace.slower() % 1 == 0 ? "   slowed %.0f ×" : "   slowed %.1f ×", pace.slower())
                        : "");
    }

    private String numbers(@Nullable Stroke stroke, int frame, double seconds) {
        String time = Words.of("%.2f s", seconds);
        if (stroke == null) {
            return time;
        }
        Kinematics k = stroke.kinematics();
        int i = frame - k.firstFrame();
        boolean tipSeen = analysis.trace().frames().get(frame).tip().seen();
        return time
                + shown("   butt %.0f°", i, k.buttAngleRad(), 180 / Math.PI)
                + (i >= 0 && i < k.size() && Double.isFinite(k.chordRatio()[i])
                        ? Words.of("   compressed %.0f %%", Math.max(0, 100 * (1 - k.chordRatio()[i])))
                        : "")
                + shown("   tip %.0f m/s", i, k.tipSpeed(), 1)
                + (tipSeen ? "" : "   tip not seen");
    }

    private static String shown(String format, int i, double[] series, double factor) {
        return i >= 0 && i < series.length && Double.isFinite(series[i]) ? Words.of(format, factor * series[i]) : "";
    }

    @Override
    public void close() throws IOException {
        writer.close();
    }
}
