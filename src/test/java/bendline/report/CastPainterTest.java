package bendline.report;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.analysis.ClipAnalysis;
import bendline.geometry.Homography;
import bendline.geometry.Point;
import bendline.scene.CameraMotion;
import bendline.trace.Trace;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.util.Collections;
import org.junit.jupiter.api.Test;

class CastPainterTest {

    private static final int FRAME = 145;

    private static BufferedImage painted(ClipAnalysis analysis, int frame) {
        BufferedImage image = new BufferedImage(AnalyticCast.WIDTH, AnalyticCast.HEIGHT, BufferedImage.TYPE_3BYTE_BGR);
        Graphics2D g = image.createGraphics();
        new CastPainter(analysis).paint(g, frame, 1.5);
        g.dispose();
        return image;
    }

    private static Color at(BufferedImage image, Point p) {
        return new Color(image.getRGB((int) Math.floor(p.x()), (int) Math.floor(p.y())));
    }

    private static double far(Color a, Color b) {
        return Math.max(
                Math.abs(a.getRed() - b.getRed()),
                Math.max(Math.abs(a.getGreen() - b.getGreen()), Math.abs(a.getBlue() - b.getBlue())));
    }

    @Test
    void theBlankIsDrawnWhereItWasMeasured() {
        BufferedImage image = painted(AnalyticCast.analysis(Path.of("x")), FRAME);
        var blank = AnalyticCast.blank(AnalyticCast.seconds(FRAME));
        for (double share : new double[] {0.3, 0.5, 0.7, 0.85}) {
            assertThat(far(at(image, blank.at(share * blank.length())), PictureColours.BLANK))
                    .as("colour at %s of the blank", share)
                    .isLessThan(60);
        }
    }

    @Test
    void nothingIsDrawnWhereNothingWasMeasured() {
        BufferedImage image = painted(AnalyticCast.analysis(Path.of("x")), AnalyticCast.GAP_FROM + 1);
        var blank = AnalyticCast.blank(AnalyticCast.seconds(AnalyticCast.GAP_FROM + 1));
        assertThat(at(image, blank.at(0.6 * blank.length()))).isEqualTo(Color.BLACK);
        assertThat(at(image, blank.last())).isEqualTo(Color.BLACK);
    }

    @Test
    void theDrawingFollowsAMovingPhone() {
        ClipAnalysis still = AnalyticCast.analysis(Path.of("x"));
        Trace t = still.trace();
        Point shift = new Point(37, -21);
        // Picture to reference: the picture lies 37 px right of and 21 px above the reference.
        Homography back = new Homography(1, 0, -shift.x(), 0, 1, -shift.y(), 0, 0);
        Trace moved = new Trace(
                t.width(),
                t.height(),
                t.frames(),
                new CameraMotion(Collections.nCopies(AnalyticCast.FRAMES, back), 43, true),
                t.freeLengthPx(),
                t.freeLengthSdPx(),
                null);
        BufferedImage image = painted(
                new ClipAnalysis(still.clip(), still.info(), still.setup(), moved, still.quality(), still.casts()),
                FRAME);
        var blank = AnalyticCast.blank(AnalyticCast.seconds(FRAME));
        Point there = blank.at(0.5 * blank.length()).plus(shift);
        assertThat(far(at(image, there), PictureColours.BLANK)).isLessThan(60);
    }
}
