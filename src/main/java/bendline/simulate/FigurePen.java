package bendline.simulate;

import bendline.geometry.Homography;
import bendline.geometry.Point;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.LinearGradientPaint;
import java.awt.Shape;
import java.awt.geom.Area;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;

/** Draws the parts of a figure, given in metres of the plane, in stuff that moves with them and light from above. */
record FigurePen(Graphics2D g, PhoneCamera camera, Homography map) {

    private Point at(Point p) {
        return map.apply(camera.plane(p.x(), p.y()));
    }

    private double px(Point p, double metres) {
        return metres * camera.pxPerMetre(p.x(), p.y());
    }

    /** A tapered piece with rounded ends. */
    void limb(Point from, double r0, Point to, double r1, Stuff stuff) {
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
        Area area = new Area(path);
        area.add(new Area(new Ellipse2D.Double(a.x() - ra, a.y() - ra, 2 * ra, 2 * ra)));
        area.add(new Area(new Ellipse2D.Double(b.x() - rb, b.y() - rb, 2 * rb, 2 * rb)));
        double r = Math.max(ra, rb);
        Point up = across.y() > 0 ? across.times(-1) : across;
        fill(area, stuff, a, a.plus(up.times(r)), a.minus(up.times(r)));
    }

    /** An ellipse with half axes in metres. */
    void blob(Point p, double rx, double ry, Stuff stuff) {
        Point c = at(p);
        double x = px(p, rx);
        double y = px(p, ry);
        fill(
                new Ellipse2D.Double(c.x() - x, c.y() - y, 2 * x, 2 * y),
                stuff,
                c,
                new Point(c.x() - 0.3 * x, c.y() - y),
                new Point(c.x() + 0.3 * x, c.y() + y));
    }

    /** Chest and belly in a jacket with a hem, a pocket and a seam. */
    void torso(Limbs l, double k, Stuff stuff) {
        Point s = at(l.chest());
        Point h = at(l.pelvis());
        double w = px(l.chest(), 0.135 * k);
        double v = px(l.pelvis(), 0.130 * k);
        Path2D path = new Path2D.Double();
        path.moveTo(s.x() - w, s.y() + 0.02 * w);
        path.curveTo(s.x() - 0.7 * w, s.y() - 0.62 * w, s.x() + 0.6 * w, s.y() - 0.62 * w, s.x() + w, s.y());
        path.curveTo(
                s.x() + 1.15 * w,
                s.y() + 1.5 * w,
                h.x() + 1.05 * v,
                h.y() - 1.2 * v,
                h.x() + 1.08 * v,
                h.y() + 0.75 * v);
        path.lineTo(h.x() - 1.05 * v, h.y() + 0.8 * v);
        path.curveTo(h.x() - v, h.y() - 1.2 * v, s.x() - 1.1 * w, s.y() + 1.5 * w, s.x() - w, s.y());
        path.closePath();
        fill(path, stuff, s, new Point(s.x() - 0.9 * w, s.y() - w), new Point(h.x() + v, h.y() + 1.2 * v));
        dark(new Path2D.Double(), h.x() - 1.0 * v, h.y() + 0.62 * v, h.x() + 1.02 * v, h.y() + 0.58 * v, 0.07 * v);
        dark(new Path2D.Double(), h.x() - 0.1 * v, h.y() - 0.45 * v, h.x() + 0.62 * v, h.y() - 0.5 * v, 0.06 * v);
        dark(new Path2D.Double(), s.x() + 0.05 * w, s.y() + 0.6 * w, h.x() - 0.2 * v, h.y() - 0.6 * v, 0.04 * v);
    }

    private void dark(Path2D path, double x0, double y0, double x1, double y1, double wide) {
        path.moveTo(x0, y0);
        path.quadTo((x0 + x1) / 2, (y0 + y1) / 2 + 2 * wide, x1, y1);
        g.setStroke(new java.awt.BasicStroke((float) Math.max(0.8, wide)));
        g.setColor(new Color(0, 0, 0, 70));
        g.draw(path);
    }

    private void fill(Shape shape, Stuff stuff, Point anchor, Point light, Point dark) {
        double tile = Math.max(24, 0.75 * camera.pxPerMetre(0, 1));
        g.setPaint(stuff.cloth().at(anchor.x(), anchor.y(), tile));
        g.fill(shape);
        float[] stops = {0f, 0.35f, 0.6f, 1f};
        Color[] veils = {
            new Color(255, 250, 235, 62), new Color(255, 250, 235, 10), new Color(0, 0, 0, 20), new Color(0, 0, 0, 118)
        };
        Point2D from = new Point2D.Double(light.x(), light.y());
        Point2D to = new Point2D.Double(dark.x() + 1e-3, dark.y() + 1e-3);
        g.setPaint(new LinearGradientPaint(from, to, stops, veils));
        g.fill(shape);
    }
}
