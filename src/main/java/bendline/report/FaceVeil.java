package bendline.report;

import bendline.body.Faces;
import bendline.geometry.Point;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Ellipse2D;
import java.awt.image.BufferedImage;

/** Makes faces unrecognisable: what lies under a patch is reduced to a few coarse, smoothed fields and cannot be brought back. */
final class FaceVeil {

    /** Fields across a patch: too few to hold eyes or a mouth. */
    private static final int FIELDS = 4;

    private final Faces faces;

    FaceVeil(Faces faces) {
        this.faces = faces;
    }

    /** Whether there is a face to cover in a frame. */
    boolean covers(int frame) {
        return !faces.in(frame).isEmpty();
    }

    /** Covers the faces of a frame in its picture, in place. */
    void cover(BufferedImage image, int frame) {
        for (Faces.Spot spot : faces.in(frame)) {
            cover(image, spot.centre(), spot.radius());
        }
    }

    private static void cover(BufferedImage image, Point centre, double radius) {
        int left = (int) Math.max(0, Math.floor(centre.x() - radius));
        int top = (int) Math.max(0, Math.floor(centre.y() - radius));
        int right = (int) Math.min(image.getWidth(), Math.ceil(centre.x() + radius));
        int bottom = (int) Math.min(image.getHeight(), Math.ceil(centre.y() + radius));
        if (right - left < 2 || bottom - top < 2) {
            return;
        }
        BufferedImage coarse = means(image.getSubimage(left, top, right - left, bottom - top));
        Graphics2D g = image.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setClip(new Ellipse2D.Double(centre.x() - radius, centre.y() - radius, 2 * radius, 2 * radius));
        g.drawImage(coarse, left, top, right - left, bottom - top, null);
        g.dispose();
    }

    /** The mean colour of each field. */
    private static BufferedImage means(BufferedImage part) {
        BufferedImage out = new BufferedImage(FIELDS, FIELDS, BufferedImage.TYPE_3BYTE_BGR);
        for (int row = 0; row < FIELDS; row++) {
            for (int column = 0; column < FIELDS; column++) {
                int x0 = column * part.getWidth() / FIELDS;
                int y0 = row * part.getHeight() / FIELDS;
                int x1 = Math.max(x0 + 1, (column + 1) * part.getWidth() / FIELDS);
                int y1 = Math.max(y0 + 1, (row + 1) * part.getHeight() / FIELDS);
                out.setRGB(
                        column, row, mean(part, x0, y0, Math.min(x1, part.getWidth()), Math.min(y1, part.getHeight())));
            }
        }
        return out;
    }

    private static int mean(BufferedImage part, int x0, int y0, int x1, int y1) {
        long red = 0;
        long green = 0;
        long blue = 0;
        long n = Math.max(1, (long) (x1 - x0) * (y1 - y0));
        for (int y = y0; y < y1; y++) {
            for (int x = x0; x < x1; x++) {
                int rgb = part.getRGB(x, y);
                red += rgb >> 16 & 255;
                green += rgb >> 8 & 255;
                blue += rgb & 255;
            }
        }
        return (int) (red / n) << 16 | (int) (green / n) << 8 | (int) (blue / n);
    }
}
