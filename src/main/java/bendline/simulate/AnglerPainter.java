package bendline.simulate;

import bendline.geometry.Homography;
import bendline.geometry.Point;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.LinearGradientPaint;
import java.awt.RenderingHints;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.util.Random;

/** Draws the angler: what lies behind the rod first, the near arm and fist after it. */
final class AnglerPainter {

    private static final int[] JACKETS = {0x39412f, 0x26303f, 0x4a4a4c, 0x5b2f2a, 0x33403f, 0x6a6248};
    private static final int[] TROUSERS = {0x2c2f26, 0x31343b, 0x4b4436, 0x23262b};
    private static final int[] SKINS = {0xc99a7b, 0xb98262, 0x8d5c43, 0xd8ae92, 0x6b4532};
    private static final int[] CAPS = {0x2a2c2e, 0x414a35, 0x1f2d4a, 0x7a3b2c};

    private final Color jacket;
    private final Color trousers;
    private final Color skin;
    private final Color cap;
    private final Color boots = new Color(0x26221d);
    private final double stature;
    private final RodSpec rod;

    AnglerPainter(Scenario scenario) {
        Random random = new Random(scenario.seed() ^ 0xa11e5L);
        this.jacket = pick(JACKETS, random);
        this.trousers = pick(TROUSERS, random);
        this.skin = pick(SKINS, random);
        this.cap = pick(CAPS, random);
        this.stature = scenario.statureM();
        this.rod = scenario.rod();
    }

    private static Color pick(int[] colours, Random random) {
        return new Color(colours[random.nextInt(colours.length)]);
    }

    /** Joints at a moment. */
    Limbs limbs(Motion.Moment m) {
        return Limbs.holding(m, rod, stature);
    }

    /** Everything behind the rod. */
    void behind(Graphics2D g, PhoneCamera camera, Homography map, Limbs l) {
        smooth(g);
        Pen pen = new Pen(g, camera, map);
        double k = stature / 1.78;
        pen.limb(l.farHand(), 0.045 * k, l.farElbow(), 0.052 * k, jacket.darker());
        pen.limb(
                l.farElbow(),
                0.052 * k,
                new double[] {l.shoulder()[0] + 0.05, l.shoulder()[1] - 0.02},
                0.07 * k,
                jacket.darker());
        leg(pen, l.hip(), l.backKnee(), l.backFoot(), k, trousers.darker());
        leg(pen, l.hip(), l.frontKnee(), l.frontFoot(), k, trousers);
        pen.torso(l, k, jacket);
        pen.limb(l.neck(), 0.055 * k, l.head(), 0.06 * k, skin.darker());
        head(pen, l.head(), k);
        pen.blob(l.farHand(), 0.048 * k, 0.042 * k, skin);
    }

    /** The near arm and the fist on the grip. */
    void before(Graphics2D g, PhoneCamera camera, Homography map, Limbs l) {
        smooth(g);
        Pen pen = new Pen(g, camera, map);
        double k = stature / 1.78;
        pen.limb(l.shoulder(), 0.078 * k, l.nearElbow(), 0.056 * k, jacket);
        pen.limb(l.nearElbow(), 0.056 * k, wrist(l.nearElbow(), l.nearHand(), 0.86), 0.042 * k, jacket);
        pen.limb(wrist(l.nearElbow(), l.nearHand(), 0.85), 0.033 * k, l.nearHand(), 0.036 * k, skin);
        pen.blob(l.nearHand(), 0.050 * k, 0.046 * k, skin);
    }

    private void leg(Pen pen, double[] hip, double[] knee, double[] foot, double k, Color cloth) {
        pen.limb(hip, 0.105 * k, knee, 0.072 * k, cloth);
        pen.limb(knee, 0.074 * k, foot, 0.060 * k, cloth);
        pen.limb(
                new double[] {foot[0] - 0.05, foot[1] - 0.005},
                0.058 * k,
                new double[] {foot[0] + 0.15 * k, foot[1] - 0.02},
                0.040 * k,
                boots);
    }

    private void head(Pen pen, double[] head, double k) {
        pen.blob(head, 0.098 * k, 0.122 * k, skin);
        pen.limb(
                new double[] {head[0] + 0.085 * k, head[1] - 0.005},
                0.016 * k,
                new double[] {head[0] + 0.105 * k, head[1] - 0.02},
                0.012 * k,
                skin);
        pen.blob(new double[] {head[0] - 0.02, head[1] + 0.055 * k}, 0.100 * k, 0.078 * k, cap);
        pen.limb(
                new double[] {head[0] + 0.05, head[1] + 0.045 * k},
                0.022 * k,
                new double[] {head[0] + 0.16 * k, head[1] + 0.030 * k},
                0.010 * k,
                cap);
    }

    private static double[] wrist(double[] a, double[] b, double f) {
        return new double[] {a[0] + f * (b[0] - a[0]), a[1] + f * (b[1] - a[1])};
    }

    private static void smooth(Graphics2D g) {
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    }

    /** Draws shapes given in metres of the plane. */
    private record Pen(Graphics2D g, PhoneCamera camera, Homography map) {

        private Point at(double[] p) {
            return map.apply(camera.plane(p[0], p[1]));
        }

        private double px(double[] p, double metres) {
            return metres * camera.pxPerMetre(p[0], p[1]);
        }

        /** A tapered piece with rounded ends, lit from above. */
        void limb(double[] from, double r0, double[] to, double r1, Color colour) {
            Point a = at(from);
            Point b = at(to);
            double ra = px(from, r0);
            double rb = px(to, r1);
            Point d = b.minus(a);
            double n = Math.max(1e-6, d.norm());
            Point across = new Point(-d.y() / n, d.x() / n);
            Path2D path = new Path2D.Double(Path2D.WIND_NON_ZERO);
            path.moveTo(a.x() + across.x() * ra, a.y() + across.y() * ra);
            path.lineTo(b.x() + across.x() * rb, b.y() + across.y() * rb);
            path.lineTo(b.x() - across.x() * rb, b.y() - across.y() * rb);
            path.lineTo(a.x() - across.x() * ra, a.y() - across.y() * ra);
            path.closePath();
            double r = Math.max(ra, rb);
            Point up = across.y() > 0 ? across.times(-1) : across;
            g.setPaint(shade(a.plus(up.times(r)), a.minus(up.times(r)), colour));
            g.fill(path);
            g.fill(new Ellipse2D.Double(a.x() - ra, a.y() - ra, 2 * ra, 2 * ra));
            g.fill(new Ellipse2D.Double(b.x() - rb, b.y() - rb, 2 * rb, 2 * rb));
        }

        void blob(double[] p, double rx, double ry, Color colour) {
            Point c = at(p);
            double x = px(p, rx);
            double y = px(p, ry);
            g.setPaint(shade(new Point(c.x(), c.y() - y), new Point(c.x(), c.y() + y), colour));
            g.fill(new Ellipse2D.Double(c.x() - x, c.y() - y, 2 * x, 2 * y));
        }

        void torso(Limbs l, double k, Color colour) {
            Point s = at(l.shoulder());
            Point h = at(l.hip());
            double w = px(l.shoulder(), 0.135 * k);
            double v = px(l.hip(), 0.125 * k);
            Path2D path = new Path2D.Double();
            path.moveTo(s.x() - w, s.y() + 0.02 * w);
            path.curveTo(s.x() - 0.7 * w, s.y() - 0.62 * w, s.x() + 0.6 * w, s.y() - 0.62 * w, s.x() + w, s.y());
            path.curveTo(
                    s.x() + 1.15 * w, s.y() + 1.5 * w, h.x() + 1.05 * v, h.y() - 1.2 * v, h.x() + v, h.y() + 0.55 * v);
            path.lineTo(h.x() - v, h.y() + 0.55 * v);
            path.curveTo(h.x() - 1.0 * v, h.y() - 1.2 * v, s.x() - 1.1 * w, s.y() + 1.5 * w, s.x() - w, s.y());
            path.closePath();
            g.setPaint(shade(new Point(s.x() - 0.8 * w, s.y() - w), new Point(h.x() + v, h.y() + v), colour));
            g.fill(path);
        }

        private static LinearGradientPaint shade(Point light, Point dark, Color colour) {
            float[] stops = {0f, 0.45f, 1f};
            Color[] colours = {times(colour, 1.28), colour, times(colour, 0.62)};
            Point2D a = new Point2D.Double(light.x(), light.y());
            Point2D b = new Point2D.Double(dark.x() + 1e-3, dark.y() + 1e-3);
            return new LinearGradientPaint(a, b, stops, colours);
        }

        private static Color times(Color c, double f) {
            return new Color((int) Math.min(255, c.getRed() * f), (int) Math.min(255, c.getGreen() * f), (int)
                    Math.min(255, c.getBlue() * f));
        }
    }
}
