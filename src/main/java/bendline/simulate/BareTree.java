package bendline.simulate;

import bendline.geometry.Point;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Line2D;
import java.util.Random;

/** A leafless tree near by: a trunk that forks again and again into twigs as thin as a rod tip. */
final class BareTree {

    private static final int BARK = 0x4a4034;

    private final PhoneCamera camera;
    private final Daylight light;
    private final Random random;
    private final double z;

    BareTree(PhoneCamera camera, Daylight light, double z, long seed) {
        this.camera = camera;
        this.light = light;
        this.z = z;
        this.random = new Random(seed ^ 0xba4eL);
    }

    /** Paints it with its foot at x metres, about so many metres tall. */
    void paint(Paint paint, double x, double tall) {
        Graphics2D g = paint.image.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        g.translate(paint.margin, paint.margin);
        branch(g, x, 0, Math.PI / 2 + 0.15 * (random.nextDouble() - 0.5), tall * 0.26, tall * 0.028, 8);
        g.dispose();
    }

    private void branch(Graphics2D g, double x, double y, double angle, double length, double half, int left) {
        double ex = x;
        double ey = y;
        double way = angle;
        double lit = 0.22 + 0.25 * random.nextDouble();
        int parts = 4;
        for (int i = 0; i < parts; i++) {
            way += 0.30 * (random.nextDouble() - 0.5);
            double nx = ex + length / parts * Math.cos(way);
            double ny = ey + length / parts * Math.sin(way);
            bar(g, ex, ey, nx, ny, half * (1 - 0.28 * i / parts), lit);
            ex = nx;
            ey = ny;
            if (left < 7 && i > 0 && random.nextInt(4) == 0) {
                twig(g, ex, ey, way + (random.nextBoolean() ? 0.8 : -0.8), length * 0.4, half * 0.35);
            }
        }
        if (left == 1) {
            return;
        }
        int forks = random.nextInt(4) == 0 ? 3 : 2;
        for (int i = 0; i < forks; i++) {
            double spread = 0.35 + 0.45 * random.nextDouble();
            double turn = (i - (forks - 1) / 2.0) * 2 * spread / Math.max(1, forks - 1);
            double lift = 0.12 * (Math.PI / 2 - way);
            double share = 0.62 + 0.25 * random.nextDouble();
            branch(g, ex, ey, way + turn + lift, length * share, half * (0.55 + 0.17 * random.nextDouble()), left - 1);
        }
    }

    private void twig(Graphics2D g, double x, double y, double angle, double length, double half) {
        double mx = x + 0.5 * length * Math.cos(angle);
        double my = y + 0.5 * length * Math.sin(angle);
        bar(g, x, y, mx, my, half, 0.35);
        double bent = angle + 0.5 * (random.nextDouble() - 0.5);
        bar(g, mx, my, mx + 0.5 * length * Math.cos(bent), my + 0.5 * length * Math.sin(bent), 0.6 * half, 0.35);
    }

    private void bar(Graphics2D g, double x0, double y0, double x1, double y1, double half, double lit) {
        Point a = camera.scene(x0, y0, z);
        Point b = camera.scene(x1, y1, z);
        double ppm = camera.scene(x0, y0 + 1, z).distance(a);
        double wide = Math.max(0.9, 2 * half * ppm);
        g.setStroke(new BasicStroke((float) wide, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
        g.setColor(new Color(light.on(BARK, lit)));
        g.draw(new Line2D.Double(a.x(), a.y(), b.x(), b.y()));
        if (wide > 3) {
            g.setStroke(new BasicStroke((float) (0.35 * wide), BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND));
            g.setColor(new Color(light.on(BARK, lit + 0.18)));
            double off = 0.2 * wide;
            g.draw(new Line2D.Double(a.x() - off, a.y(), b.x() - off, b.y()));
        }
    }
}
