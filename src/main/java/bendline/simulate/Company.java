package bendline.simulate;

import bendline.geometry.Homography;
import bendline.geometry.Point;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Ellipse2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.jspecify.annotations.Nullable;

/**
 * Draws what a busy bank adds: people who walk by, an angler who casts further along it, bushes before the angler. What they hide
 * is told as in view all the same, for a moment or low down.
 */
final class Company {

    private static final double PACE_MPS = 1.3;
    private static final double STRIDES_HZ = 0.9;
    private static final double NEAR_M = 2.2;
    private static final double FAR_M = -4;

    /** Where the neighbour stands, and how long after the angler they cast the same way. */
    private static final double NEIGHBOUR_M = -7;

    private static final double NEIGHBOUR_SECONDS = 0.9;
    private static final double BUSH_M = 0.9;
    private static final int LEAVES = 420;
    private static final int[] GREENS = {0x2f3b22, 0x3c4a29, 0x4d5c33, 0x27301d, 0x5f6b3c};

    private final Scenario scenario;
    private final @Nullable Motion motion;
    private final RodPainter rods;
    private final AnglerPainter neighbour;
    private final List<AnglerPainter> walkers = new ArrayList<>();
    private final double[] meets;
    private final List<double[]> leaves = new ArrayList<>();
    private final Daylight light;

    Company(Scenario scenario, @Nullable Motion motion) {
        this.scenario = scenario;
        this.motion = motion;
        this.rods = new RodPainter(scenario);
        this.light = Daylight.of(scenario.scene().light());
        Random random = new Random(scenario.seed() ^ 0xc0ffeeL);
        this.neighbour = new AnglerPainter(scenario, random.nextLong());
        double pushed = scenario.casts().isEmpty()
                ? scenario.seconds() / 2
                : scenario.casts().get(0).pushFrom();
        this.meets = new double[scenario.scene().walkers()];
        for (int i = 0; i < meets.length; i++) {
            walkers.add(new AnglerPainter(scenario, random.nextLong()));
            meets[i] = pushed + 1.4 * (random.nextDouble() - 0.5);
        }
        if (scenario.scene().bushM() > 0) {
            grow(random);
        }
    }

    private void grow(Random random) {
        double high = scenario.scene().bushM();
        for (int i = 0; i < LEAVES; i++) {
            double x = random.nextGaussian() * 0.45;
            double top = high * Math.max(0.3, 1 - 0.5 * x * x);
            double y = top * (1 - Math.pow(random.nextDouble(), 2) * i / LEAVES);
            leaves.add(new double[] {
                x, Math.min(y, top), 0.05 + 0.07 * random.nextDouble(), GREENS[random.nextInt(GREENS.length)]
            });
        }
    }

    /** Draws those behind the angler or, {@code near}, those before. */
    void draw(Graphics2D g, double t, Homography map, double[] moved, boolean near) {
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        Motion.Moment m = beside(t);
        if (!near && m != null) {
            PhoneCamera there = new PhoneCamera(scenario, moved, NEIGHBOUR_M);
            figure(neighbour, g, there, map, neighbour.limbs(m, null));
        }
        for (int i = 0; i < walkers.size(); i++) {
            if ((i % 2 == 0) == near) {
                PhoneCamera there = new PhoneCamera(scenario, moved, near ? NEAR_M : FAR_M);
                figure(walkers.get(i), g, there, map, walking(t - meets[i]));
            }
        }
        if (near) {
            bush(g, map, new PhoneCamera(scenario, moved, BUSH_M));
        }
    }

    /** The neighbour's rod and line. */
    void rod(StreakCanvas canvas, double t, Homography map, double[] moved) {
        Motion.Moment m = beside(t);
        if (m != null) {
            rods.draw(canvas, new PhoneCamera(scenario, moved, NEIGHBOUR_M), map, m);
            canvas.endSubFrame(1);
        }
    }

    private Motion.@Nullable Moment beside(double t) {
        return motion == null || !scenario.scene().neighbour() ? null : motion.at(Math.max(0, t - NEIGHBOUR_SECONDS));
    }

    private static void figure(AnglerPainter who, Graphics2D g, PhoneCamera camera, Homography map, Limbs limbs) {
        who.behind(g, camera, map, limbs);
        who.before(g, camera, map, limbs);
    }

    /** Somebody on their way, in the middle of the picture at 0. */
    private Limbs walking(double t) {
        double k = scenario.statureM() / 1.78;
        double x = PACE_MPS * t;
        double swing = Math.sin(2 * Math.PI * STRIDES_HZ * t);
        Point shoulder = new Point(x, 1.45 * k);
        Point hip = new Point(x, 0.93 * k);
        Point near = new Point(x + 0.28 * k * swing + 0.05, 0.9 * k);
        Point far = new Point(x - 0.28 * k * swing + 0.05, 0.9 * k);
        Point front = new Point(x - 0.34 * k * swing, 0.07 + 0.06 * Math.max(0, -swing));
        Point back = new Point(x + 0.34 * k * swing, 0.07 + 0.06 * Math.max(0, swing));
        return new Limbs(
                new Point(x + 0.05, 1.65 * k),
                new Point(x + 0.015, 1.52 * k),
                shoulder,
                hip,
                shoulder,
                hip,
                new Point(x + 0.05 * k, 1.44 * k),
                hip,
                new Point(x + 0.1 * swing - 0.04, 1.17 * k),
                near,
                new Point(x - 0.1 * swing - 0.04, 1.17 * k),
                far,
                new Point(0.5 * (hip.x() + front.x()) + 0.05, 0.5 * k),
                front,
                new Point(0.5 * (hip.x() + back.x()) + 0.05, 0.5 * k),
                back);
    }

    private void bush(Graphics2D g, Homography map, PhoneCamera camera) {
        for (double[] leaf : leaves) {
            Point at = map.apply(camera.plane(leaf[0], leaf[1]));
            double r = leaf[2] * camera.pxPerMetre(leaf[0], leaf[1]);
            g.setColor(new Color(light.on((int) leaf[3], 0.6)));
            g.fill(new Ellipse2D.Double(at.x() - r, at.y() - 0.7 * r, 2 * r, 1.4 * r));
        }
    }
}
