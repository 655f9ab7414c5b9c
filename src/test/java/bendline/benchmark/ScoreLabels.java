package bendline.benchmark;

import bendline.footage.ClipInfo;
import bendline.footage.Footage;
import bendline.footage.Picture;
import bendline.footage.PictureReader;
import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.scene.Mark;
import bendline.scene.Setup;
import bendline.trace.RodTracker;
import bendline.trace.Trace;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import javax.imageio.ImageIO;
import org.jspecify.annotations.Nullable;

/**
 * Follows a rod through real footage with grip and tip marked on one labelled frame and prints how far the traced blank
 * lies from what a person sees: {@code ScoreLabels CLIP LABELS FRAME [DIR]}. Into the folder go the labelled frames,
 * enlarged, labels in green, the trace in magenta.
 */
public final class ScoreLabels {

    private static final int ZOOM = 4;

    private ScoreLabels() {}

    /** Runs it. */
    public static void main(String[] args) throws Exception {
        HandLabels labels = HandLabels.read(args[1]);
        HandLabels.Label marked = labels.at(Integer.parseInt(args[2]));
        Footage footage = Footage.open(Path.of(args[0]));
        ClipInfo info = footage.survey(f -> {});
        Mark mark = new Mark(info.times().get(marked.frame()), marked.grip(), marked.tip());
        Setup setup = new Setup(null, null, null, null, null, null, List.of(mark));
        Trace trace = RodTracker.follow(footage, info, setup, f -> {});
        System.out.printf(
                Locale.ROOT,
                "%s, mark on frame %s%s: %s%n",
                args[1],
                args[2],
                trace.trouble() == null ? "" : ", TROUBLE " + trace.trouble(),
                LabelScore.of(trace, labels));
        if (args.length > 3) {
            pictures(footage, labels, trace, Path.of(args[3]));
        }
    }

    private static void pictures(Footage footage, HandLabels labels, Trace trace, Path folder) throws IOException {
        Files.createDirectories(folder);
        try (PictureReader reader = footage.pictures()) {
            for (Picture p = reader.next(); p != null; p = reader.next()) {
                int frame = p.index();
                for (HandLabels.Label label : labels.between(frame, frame).frames()) {
                    String name = String.format(Locale.ROOT, "frame%05d.png", frame);
                    BufferedImage drawn =
                            drawn(p.image(), label, trace.inPicture(frame).blank());
                    ImageIO.write(drawn, "png", folder.resolve(name).toFile());
                }
            }
        }
    }

    private static BufferedImage drawn(BufferedImage frame, HandLabels.Label label, @Nullable Polyline blank) {
        int top = (int)
                Math.max(0, label.blank().stream().mapToDouble(Point::y).min().orElse(0) - 60);
        int bottom = (int) Math.min(
                frame.getHeight(),
                label.blank().stream().mapToDouble(Point::y).max().orElse(0) + 60);
        BufferedImage out =
                new BufferedImage(frame.getWidth() * ZOOM, (bottom - top) * ZOOM, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = out.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.scale(ZOOM, ZOOM);
        g.translate(0, -top);
        g.drawImage(frame, 0, 0, null);
        g.setStroke(new BasicStroke(1f / ZOOM));
        g.setColor(Color.GREEN);
        ring(g, label.grip());
        label.blank().forEach(p -> ring(g, p));
        if (label.tip() != null) {
            ring(g, label.tip());
        }
        if (blank != null) {
            g.setColor(Color.MAGENTA);
            Path2D path = new Path2D.Double();
            path.moveTo(blank.first().x(), blank.first().y());
            blank.points().forEach(p -> path.lineTo(p.x(), p.y()));
            g.draw(path);
        }
        g.dispose();
        return out;
    }

    private static void ring(Graphics2D g, Point p) {
        g.draw(new Ellipse2D.Double(p.x() - 1.5, p.y() - 1.5, 3, 3));
    }
}
