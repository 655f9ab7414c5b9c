package bendline.simulate;

import bendline.geometry.Point;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.GradientPaint;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Things that stand about: posts, rods in rests, a seat box and a bucket. */
final class BankThings {

    private final Scenario scenario;
    private final Paint paint;
    private final PhoneCamera camera;
    private final Daylight light;
    private final Random random;
    /** x, z and height of each post, metres. */
    private final List<double[]> posts = new ArrayList<>();

    BankThings(Scenario scenario, Paint paint, PhoneCamera camera, Daylight light) {
        this.scenario = scenario;
        this.paint = paint;
        this.camera = camera;
        this.light = light;
        this.random = new Random(scenario.seed() ^ 0x711195L);
        for (int i = 0; i < scenario.scene().posts(); i++) {
            double x = camera.side() * (2.4 + 0.9 * i + 0.5 * random.nextDouble());
            posts.add(new double[] {x, -1.5 - 3.5 * random.nextDouble(), 0.5 + 1.3 * random.nextDouble()});
        }
    }

    /** Mirror images in the water, which ripple with it. */
    void mirrored() {
        Graphics2D g = graphics();
        g.setColor(new Color(40, 36, 28, 100));
        for (double[] p : posts) {
            Point foot = camera.scene(p[0], Shore.WATER_Y, p[1]);
            Point top = camera.scene(p[0], p[2], p[1]);
            g.setStroke(new BasicStroke(width(foot, top, p[2]), BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER));
            g.draw(new Line2D.Double(foot.x(), foot.y(), foot.x(), foot.y() + 0.7 * foot.distance(top)));
        }
        g.dispose();
    }

    /** The things themselves. */
    void paint() {
        Graphics2D g = graphics();
        int side = camera.side();
        for (double[] p : posts) {
            post(g, p);
        }
        for (int i = 0; i < scenario.scene().restRods(); i++) {
            restRod(g, side * (0.7 - 1.3 * i), -1.6 - 0.8 * i, side);
        }
        if (scenario.angler()) {
            double back = 1.5 + 0.7 * random.nextDouble();
            int[] boxes = {0x2f4a63, 0x3c4a35, 0x4a4c50, 0x5f3d32};
            box(g, side * -back, -1.1 + 0.4 * random.nextDouble(), 0.46, 0.36, boxes[random.nextInt(boxes.length)]);
            if (random.nextInt(3) > 0) {
                int[] buckets = {0x23262a, 0x5a5d5f, 0x3a4d3a};
                double x = -back + 0.55 + 0.3 * random.nextDouble();
                bucket(g, side * x, -0.6 + 0.3 * random.nextDouble(), 0.15, 0.27, buckets[random.nextInt(3)]);
            }
        }
        g.dispose();
    }

    private Graphics2D graphics() {
        Graphics2D g = paint.image.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
        g.translate(paint.margin, paint.margin);
        return g;
    }

    private static float width(Point foot, Point top, double tall) {
        return (float) Math.max(2, 0.085 * foot.distance(top) / (tall - Shore.WATER_Y));
    }

    private void post(Graphics2D g, double[] p) {
        Point foot = camera.scene(p[0], Shore.WATER_Y, p[1]);
        Point top = camera.scene(p[0], p[2], p[1]);
        float wide = width(foot, top, p[2]);
        g.setStroke(new BasicStroke(wide, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER));
        g.setPaint(new GradientPaint(
                (float) (foot.x() - wide / 2),
                0,
                colour(0x6d6050, 0.7),
                (float) (foot.x() + wide / 2),
                0,
                colour(0x4c4236, 0.1)));
        g.draw(new Line2D.Double(foot.x(), foot.y(), top.x(), top.y()));
    }

    private void restRod(Graphics2D g, double x, double z, int side) {
        double up = Math.toRadians(22 + 40 * random.nextDouble());
        double length = 3.2 + random.nextDouble();
        double[] butt = {x - side * 0.9 * Math.cos(up), 0.55};
        for (double f : new double[] {0.22, 0.46}) {
            double sx = butt[0] + side * f * length * Math.cos(up);
            double sy = butt[1] + f * length * Math.sin(up);
            if (f < 0.3 || sy < 1.5) {
                stick(g, camera.scene(sx, 0, z), camera.scene(sx, sy, z));
            }
        }
        int parts = 24;
        Point last = camera.scene(butt[0], butt[1], z);
        for (int i = 1; i <= parts; i++) {
            double f = (double) i / parts;
            double bend = 0.16 * f * f * f;
            Point here = camera.scene(
                    butt[0] + side * f * length * Math.cos(up) + side * 0.5 * bend,
                    butt[1] + f * length * Math.sin(up) - bend,
                    z);
            double ppm = here.distance(last) / (length / parts);
            g.setStroke(new BasicStroke(
                    (float) Math.max(1.1, (0.022 - 0.017 * f) * ppm), BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
            g.setColor(colour(f > 0.93 ? 0xb9b4a6 : 0x24262a, 0.5));
            g.draw(new Line2D.Double(last.x(), last.y(), here.x(), here.y()));
            last = here;
        }
    }

    private void stick(Graphics2D g, Point foot, Point top) {
        g.setStroke(new BasicStroke(2f));
        g.setColor(colour(0x55585a, 0.5));
        g.draw(new Line2D.Double(foot.x(), foot.y(), top.x(), top.y()));
    }

    private void box(Graphics2D g, double x, double z, double wide, double tall, int colour) {
        shadow(g, x, z, wide);
        Point a = camera.scene(x - wide / 2, 0, z);
        Point b = camera.scene(x + wide / 2, 0, z);
        Point c = camera.scene(x + wide / 2, tall, z);
        Point d = camera.scene(x - wide / 2, tall, z);
        Point e = camera.scene(x + wide / 2 - 0.05, tall + 0.02, z - 0.32);
        Point f = camera.scene(x - wide / 2 + 0.05, tall + 0.02, z - 0.32);
        g.setColor(colour(Paint.lit(colour, 1.25), 0.9));
        g.fill(shape(d, c, e, f));
        g.setPaint(new GradientPaint(
                (float) a.x(),
                (float) d.y(),
                colour(colour, 0.65),
                (float) b.x(),
                (float) a.y(),
                colour(colour, 0.15)));
        g.fill(shape(a, b, c, d));
        g.setColor(colour(Paint.lit(colour, 0.6), 0.3));
        g.setStroke(new BasicStroke(1.3f));
        double seam = d.y() + 0.3 * (a.y() - d.y());
        g.draw(new Line2D.Double(a.x(), seam, b.x(), seam));
    }

    private void bucket(Graphics2D g, double x, double z, double half, double tall, int colour) {
        shadow(g, x, z, 2 * half);
        Point a = camera.scene(x - 0.8 * half, 0, z);
        Point b = camera.scene(x + 0.8 * half, 0, z);
        Point c = camera.scene(x + half, tall, z);
        Point d = camera.scene(x - half, tall, z);
        g.setPaint(new GradientPaint(
                (float) d.x(), 0, colour(Paint.lit(colour, 1.7), 0.8), (float) c.x(), 0, colour(colour, 0.2)));
        g.fill(shape(a, b, c, d));
        double w = c.x() - d.x();
        g.setColor(colour(0x17181a, 0.2));
        g.fill(new Ellipse2D.Double(d.x(), d.y() - 0.12 * w, w, 0.24 * w));
    }

    private void shadow(Graphics2D g, double x, double z, double wide) {
        Point p = camera.scene(x, 0, z);
        double w = 1.3 * wide * camera.scene(x, 1, z).distance(p);
        g.setColor(new Color(20, 20, 12, 70));
        g.fill(new Ellipse2D.Double(p.x() - w / 2, p.y() - 0.10 * w, w, 0.22 * w));
    }

    private static Path2D shape(Point... points) {
        Path2D path = new Path2D.Double();
        path.moveTo(points[0].x(), points[0].y());
        for (int i = 1; i < points.length; i++) {
            path.lineTo(points[i].x(), points[i].y());
        }
        path.closePath();
        return path;
    }

    private Color colour(int rgb, double lit) {
        return new Color(light.on(rgb, lit));
    }
}
