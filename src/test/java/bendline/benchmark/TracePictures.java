package bendline.benchmark;

import bendline.footage.Footage;
import bendline.footage.Picture;
import bendline.footage.PictureReader;
import bendline.geometry.Point;
import bendline.geometry.Polyline;
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
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.IntPredicate;
import javax.imageio.ImageIO;
import org.jspecify.annotations.Nullable;

/**
 * Frames as PNG with the true rod in green and the traced one in magenta, rings round tips and rigs, enlarged and cut to
 * the rod.
 */
final class TracePictures {

    private static final Color TRUE = new Color(0, 220, 60);
    private static final Color TRACED = new Color(255, 0, 255);
    private static final int MARGIN_PX = 60;
    private static final double WIDTH_PX = 1600;

    private TracePictures() {}

    static void write(Footage footage, List<FrameScore> scores, IntPredicate which, Path folder) throws IOException {
        Files.createDirectories(folder);
        try (PictureReader reader = footage.pictures()) {
            for (Picture p = reader.next(); p != null; p = reader.next()) {
                if (which.test(p.index())) {
                    Path file = folder.resolve(String.format(Locale.ROOT, "frame%05d.png", p.index()));
                    ImageIO.write(drawn(p.image(), scores.get(p.index())), "png", file.toFile());
                }
            }
        }
    }

    private static BufferedImage drawn(BufferedImage frame, FrameScore score) {
        int[] box = box(frame, score);
        double zoom = Math.min(4, WIDTH_PX / (box[2] - box[0]));
        BufferedImage out = new BufferedImage(
                (int) ((box[2] - box[0]) * zoom), (int) ((box[3] - box[1]) * zoom), BufferedImage.TYPE_INT_RGB);
        Graphics2D g = out.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        g.scale(zoom, zoom);
        g.translate(-box[0], -box[1]);
        g.drawImage(frame, 0, 0, null);
        g.setStroke(new BasicStroke((float) (1 / zoom)));
        g.setColor(TRUE);
        line(g, score.truth().blank());
        ring(g, score.truth().tip(), 6);
        ring(g, score.truth().rig(), 9);
        g.setColor(TRACED);
        line(g, score.traced().blank());
        ring(g, score.traced().tip().position(), score.traced().tip().seen() ? 4 : 2);
        ring(g, score.traced().rig().position(), score.traced().rig().seen() ? 7 : 2);
        g.dispose();
        return out;
    }

    private static int[] box(BufferedImage frame, FrameScore score) {
        double x0 = Double.POSITIVE_INFINITY;
        double y0 = Double.POSITIVE_INFINITY;
        double x1 = Double.NEGATIVE_INFINITY;
        double y1 = Double.NEGATIVE_INFINITY;
        Polyline traced = score.traced().blank();
        List<Point> points = new ArrayList<>();
        if (score.truth().rod() != null) {
            points.addAll(score.truth().rod().points());
        }
        if (traced != null) {
            points.addAll(traced.points());
        }
        if (points.isEmpty()) {
            return new int[] {0, 0, frame.getWidth(), frame.getHeight()};
        }
        for (Point p : points) {
            x0 = Math.min(x0, p.x());
            y0 = Math.min(y0, p.y());
            x1 = Math.max(x1, p.x());
            y1 = Math.max(y1, p.y());
        }
        int left = (int) Math.max(0, Math.min(frame.getWidth() - 100.0, x0 - MARGIN_PX));
        int top = (int) Math.max(0, Math.min(frame.getHeight() - 100.0, y0 - MARGIN_PX));
        int right = (int) Math.max(left + 100.0, Math.min(frame.getWidth(), x1 + MARGIN_PX));
        int bottom = (int) Math.max(top + 100.0, Math.min(frame.getHeight(), y1 + MARGIN_PX));
        return new int[] {left, top, right, bottom};
    }

    private static void line(Graphics2D g, @Nullable Polyline line) {
        if (line == null) {
            return;
        }
        Path2D path = new Path2D.Double();
        path.moveTo(line.first().x(), line.first().y());
        line.points().forEach(p -> path.lineTo(p.x(), p.y()));
        g.draw(path);
    }

    private static void ring(Graphics2D g, @Nullable Point p, double radius) {
        if (p != null) {
            g.draw(new Ellipse2D.Double(p.x() - radius, p.y() - radius, 2 * radius, 2 * radius));
        }
    }
}
