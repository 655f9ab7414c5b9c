package bendline.simulate;

import bendline.geometry.Homography;
import bendline.geometry.Point;
import java.util.List;

/** Draws rod, reel, line and rig into a sub-frame. */
final class RodPainter {

    private static final int BLANK = 0x1d2024;
    private static final int HANDLE = 0x2b2320;
    private static final int RINGS = 0x34383c;
    private static final int REEL = 0x3c4046;
    private static final int LINE = 0xb9bcb4;
    private static final int RIG = 0x4a4c42;
    /** The last hand's breadth of the tip is painted. */
    private static final double PAINTED_M = 0.32;
    /** Rings, whippings and the phone's sharpening make a blank look wider than it is. */
    private static final double WIDENING = 1.5;

    private static final double THINNEST_PX = 0.6;

    private final RodSpec rod;
    private final RigSpec rig;
    private final int tip;

    RodPainter(Scenario scenario) {
        this.rod = scenario.rod();
        this.rig = scenario.rig();
        this.tip = switch (scenario.tipColour()) {
            case PLAIN -> BLANK;
            case WHITE -> 0xe9e6dc;
            case ORANGE -> 0xe8501c;
            case YELLOW -> 0xc9d432;
        };
    }

    /** How far in pixels the fastest thing goes between two moments; decides the number of sub-frames. */
    double way(PhoneCamera camera, Motion.Moment a, Motion.Moment b) {
        double tipWay = camera.plane(a.tipX(), a.tipY()).distance(camera.plane(b.tipX(), b.tipY()));
        double rigWay = camera.plane(a.rigX(), a.rigY()).distance(camera.plane(b.rigX(), b.rigY()));
        return a.line() == RigLine.State.LYING ? tipWay : Math.max(tipWay, Math.min(rigWay, 150));
    }

    /** Draws one moment. */
    void draw(StreakCanvas canvas, PhoneCamera camera, Homography map, Motion.Moment m) {
        line(canvas, camera, map, m);
        List<double[]> along = RodShape.along(m, rod);
        Point last = null;
        for (int i = 0; i < along.size(); i++) {
            double[] p = along.get(i);
            Point here = map.apply(camera.plane(p[0], p[1]));
            if (last != null) {
                double ppm = camera.pxPerMetre(p[0], p[1]);
                piece(canvas, last, along.get(i - 1)[2], here, p[2], ppm);
            }
            last = here;
        }
        reel(canvas, camera, map, m);
    }

    private void piece(StreakCanvas canvas, Point a, double sa, Point b, double sb, double ppm) {
        double ra = halfWidth(sa, ppm);
        double rb = halfWidth(sb, ppm);
        int colour = sb <= 0.001 ? HANDLE : sa > rod.freeLengthM() - PAINTED_M ? tip : BLANK;
        canvas.stroke(a.x(), a.y(), ra, b.x(), b.y(), rb, colour, 0.5, 1);
        if (sa > 0.4 && ringBetween(sa, sb)) {
            double drop = Math.max(0.8, 0.012 * ppm);
            canvas.stroke(b.x(), b.y(), ra, b.x(), b.y() + drop, 0.5, RINGS, 0, 0.6);
        }
    }

    /** Rings sit closer together towards the tip. */
    private boolean ringBetween(double sa, double sb) {
        double l = rod.freeLengthM();
        int before = (int) (9 * Math.pow(sa / l, 1.6));
        int after = (int) (9 * Math.pow(sb / l, 1.6));
        return after > before;
    }

    private double halfWidth(double s, double ppm) {
        double d = s < 0 ? 1.5 * rod.diameterAt(0) : WIDENING * rod.diameterAt(s);
        return Math.max(THINNEST_PX, 0.5 * d * ppm);
    }

    private void reel(StreakCanvas canvas, PhoneCamera camera, Homography map, Motion.Moment m) {
        double cos = Math.cos(m.angle());
        double sin = Math.sin(m.angle());
        double ppm = camera.pxPerMetre(m.handX(), m.handY());
        // A fixed-spool reel on its foot hangs under the handle, towards the ground when the rod points forward.
        double[][] parts = {
            {0.0, 0.0, 0.012, 0.0, 0.06, 0.012}, {-0.03, 0.075, 0.024, 0.03, 0.075, 0.030},
            {0.03, 0.075, 0.031, 0.075, 0.075, 0.027}, {-0.02, 0.09, 0.010, -0.045, 0.13, 0.014}
        };
        for (double[] part : parts) {
            Point a = beside(camera, map, m, cos, sin, part[0], part[1]);
            Point b = beside(camera, map, m, cos, sin, part[3], part[4]);
            canvas.stroke(a.x(), a.y(), part[2] * ppm, b.x(), b.y(), part[5] * ppm, REEL, 0.45, 1);
        }
    }

    /** A place along the handle and off it towards the reel's side, metres from the upper hand. */
    private static Point beside(
            PhoneCamera camera, Homography map, Motion.Moment m, double cos, double sin, double along, double off) {
        return map.apply(camera.plane(m.handX() + along * cos + off * sin, m.handY() + along * sin - off * cos));
    }

    private void line(StreakCanvas canvas, PhoneCamera camera, Homography map, Motion.Moment m) {
        if (m.line() == RigLine.State.LYING) {
            return;
        }
        Point tipPx = map.apply(camera.plane(m.tipX(), m.tipY()));
        Point rigPx = map.apply(camera.plane(m.rigX(), m.rigY()));
        double sag = sag(m);
        Point last = tipPx;
        int parts = sag > 0.01 || m.line() != RigLine.State.HELD ? 10 : 2;
        for (int i = 1; i <= parts; i++) {
            double f = (double) i / parts;
            double x = m.tipX() + f * (m.rigX() - m.tipX());
            double y = m.tipY() + f * (m.rigY() - m.tipY()) - 4 * sag * f * (1 - f);
            Point here = map.apply(camera.plane(x, y));
            canvas.stroke(last.x(), last.y(), 0.35, here.x(), here.y(), 0.35, LINE, 0, 0.55);
            last = here;
        }
        feeder(canvas, camera, rigPx, tipPx, m);
    }

    /** A slack line hangs through by what it is too long. */
    private double sag(Motion.Moment m) {
        if (m.line() != RigLine.State.HELD) {
            return 0;
        }
        double d = Math.hypot(m.rigX() - m.tipX(), m.rigY() - m.tipY());
        double spare = Math.max(0, rig.dropM() - d);
        return Math.min(0.5 * rig.dropM(), Math.sqrt(3.0 / 8 * d * spare));
    }

    private void feeder(StreakCanvas canvas, PhoneCamera camera, Point at, Point tipPx, Motion.Moment m) {
        double ppm = camera.pxPerMetre(m.rigX(), m.rigY());
        double long2 = 0.5 * 0.055 * Math.cbrt(rig.massG() / 80) * ppm * 1.25;
        double r = Math.max(1.1, 0.5 * 0.034 * Math.cbrt(rig.massG() / 80) * ppm * 1.25);
        double dx = tipPx.x() - at.x();
        double dy = tipPx.y() - at.y();
        double n = Math.hypot(dx, dy);
        double ux = n > 0 ? dx / n * long2 : 0;
        double uy = n > 0 ? dy / n * long2 : -long2;
        canvas.stroke(at.x() - ux, at.y() - uy, r, at.x() + ux, at.y() + uy, r, RIG, 0.4, 1);
    }
}
