package bendline.simulate;

import bendline.geometry.Homography;
import bendline.geometry.Point;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.util.Random;
import org.jspecify.annotations.Nullable;

/** Draws the angler: what lies behind the rod first, the near arm and fist after it. */
final class AnglerPainter {

    private static final int[] JACKETS = {0x39412f, 0x26303f, 0x4a4a4c, 0x5b2f2a, 0x33403f, 0x6a6248};
    private static final int[] TROUSERS = {0x2c2f26, 0x31343b, 0x4b4436, 0x23262b};
    private static final int[] SKINS = {0xc99a7b, 0xb98262, 0x8d5c43, 0xd8ae92, 0x6b4532};
    private static final int[] CAPS = {0x2a2c2e, 0x414a35, 0x1f2d4a, 0x7a3b2c};

    private final Stuff jacket;
    private final Stuff shade;
    private final Stuff trousers;
    private final Stuff farTrousers;
    private final Stuff skin;
    private final Stuff neck;
    private final Stuff cap;
    private final Stuff hair;
    private final Stuff boots;
    private final double stature;
    private final RodSpec rod;

    AnglerPainter(Scenario scenario) {
        this(scenario, scenario.seed());
    }

    /** Somebody dressed by a seed. */
    AnglerPainter(Scenario scenario, long seed) {
        Random random = new Random(seed ^ 0xa11e5L);
        Daylight light = Daylight.of(scenario.scene().light());
        Color coat = pick(JACKETS, random, light);
        this.jacket = new Stuff(coat, 0.75, random.nextLong());
        this.shade = new Stuff(coat.darker(), 0.6, random.nextLong());
        Color legs = pick(TROUSERS, random, light);
        this.trousers = new Stuff(legs, 0.6, random.nextLong());
        this.farTrousers = new Stuff(legs.darker(), 0.5, random.nextLong());
        Color face = pick(SKINS, random, light);
        this.skin = new Stuff(face, 0.12, random.nextLong());
        this.neck = new Stuff(face.darker(), 0.12, random.nextLong());
        this.hair = new Stuff(new Color(light.on(0x3b2f25, 0.4)), 0.4, random.nextLong());
        this.cap = new Stuff(pick(CAPS, random, light), 0.3, random.nextLong());
        this.boots = new Stuff(new Color(light.on(0x2c2721, 0.4)), 0.4, random.nextLong());
        this.stature = scenario.statureM();
        this.rod = scenario.rod();
    }

    private static Color pick(int[] colours, Random random, Daylight light) {
        return new Color(light.on(colours[random.nextInt(colours.length)], 0.6));
    }

    /** Joints at a moment, for a trunk that goes its own way or, where that is null, leans after the hands. */
    Limbs limbs(Motion.Moment m, @Nullable Trunk trunk) {
        return Limbs.holding(m, rod, stature, trunk);
    }

    /** Everything behind the rod. */
    void behind(Graphics2D g, PhoneCamera camera, Homography map, Limbs l) {
        smooth(g);
        FigurePen pen = new FigurePen(g, camera, map);
        double k = stature / 1.78;
        pen.limb(l.farHand(), 0.045 * k, l.farElbow(), 0.052 * k, shade);
        pen.limb(
                l.farElbow(),
                0.052 * k,
                new Point(l.farShoulder().x() + 0.05 * (1 - k), l.farShoulder().y() - 0.01),
                0.07 * k,
                shade);
        leg(pen, l.farHip(), l.backKnee(), l.backFoot(), k, farTrousers);
        leg(pen, l.hip(), l.frontKnee(), l.frontFoot(), k, trousers);
        pen.torso(l, k, jacket);
        pen.limb(l.neck(), 0.055 * k, l.head(), 0.06 * k, neck);
        head(pen, l.head(), k);
        pen.blob(l.farHand(), 0.048 * k, 0.042 * k, skin);
    }

    /** The near arm and the fist on the grip. */
    void before(Graphics2D g, PhoneCamera camera, Homography map, Limbs l) {
        smooth(g);
        FigurePen pen = new FigurePen(g, camera, map);
        double k = stature / 1.78;
        pen.limb(l.shoulder(), 0.078 * k, l.nearElbow(), 0.056 * k, jacket);
        pen.limb(l.nearElbow(), 0.056 * k, wrist(l.nearElbow(), l.nearHand(), Limbs.WRIST), 0.042 * k, jacket);
        pen.limb(wrist(l.nearElbow(), l.nearHand(), 0.85), 0.033 * k, l.nearHand(), 0.036 * k, skin);
        pen.blob(l.nearHand(), 0.050 * k, 0.046 * k, skin);
    }

    private void leg(FigurePen pen, Point hip, Point knee, Point foot, double k, Stuff cloth) {
        pen.limb(hip, 0.118 * k, knee, 0.080 * k, cloth);
        pen.limb(knee, 0.080 * k, foot, 0.066 * k, cloth);
        pen.limb(
                new Point(foot.x() - 0.05, foot.y() - 0.005),
                0.058 * k,
                new Point(foot.x() + 0.15 * k, foot.y() - 0.02),
                0.040 * k,
                boots);
    }

    private void head(FigurePen pen, Point head, double k) {
        pen.blob(new Point(head.x() - 0.025 * k, head.y() - 0.01 * k), 0.088 * k, 0.105 * k, hair);
        pen.blob(new Point(head.x() + 0.012 * k, head.y() - 0.012 * k), 0.084 * k, 0.112 * k, skin);
        pen.limb(
                new Point(head.x() + 0.082 * k, head.y() - 0.005 * k),
                0.013 * k,
                new Point(head.x() + 0.104 * k, head.y() - 0.024 * k),
                0.012 * k,
                skin);
        pen.limb(
                new Point(head.x() + 0.070 * k, head.y() - 0.062 * k),
                0.020 * k,
                new Point(head.x() + 0.018 * k, head.y() - 0.100 * k),
                0.026 * k,
                neck);
        pen.blob(new Point(head.x() - 0.030 * k, head.y() - 0.012 * k), 0.018 * k, 0.028 * k, neck);
        pen.blob(new Point(head.x() - 0.012 * k, head.y() + 0.052 * k), 0.100 * k, 0.074 * k, cap);
        pen.limb(
                new Point(head.x() + 0.06 * k, head.y() + 0.040 * k),
                0.018 * k,
                new Point(head.x() + 0.155 * k, head.y() + 0.022 * k),
                0.009 * k,
                cap);
    }

    private static Point wrist(Point a, Point b, double f) {
        return new Point(a.x() + f * (b.x() - a.x()), a.y() + f * (b.y() - a.y()));
    }

    private static void smooth(Graphics2D g) {
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    }
}
