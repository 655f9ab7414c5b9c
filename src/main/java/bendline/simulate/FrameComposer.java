package bendline.simulate;

import bendline.geometry.Homography;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import org.jspecify.annotations.Nullable;

/** Puts a frame together: backdrop, angler, blurred rod and rig, sensor. */
final class FrameComposer {

    /** Sub-frames are at most this many pixels of tip travel apart, so that a fast tip leaves one smear. */
    private static final double STEP_PX = 1.6;

    private static final int MOST_SUB_FRAMES = 72;

    private final Scenario scenario;
    private final @Nullable Motion motion;
    private final HandShake shake;
    private final FrameWarp warp;
    private final StreakCanvas canvas;
    private final RodPainter rods;
    private final AnglerPainter angler;
    private final Company company;
    private final @Nullable TrunkPath trunk;
    private final Sensor sensor;
    private final Reeds reeds;
    private final Glints glints;
    private final BufferedImage image;
    private final byte[] bgr;

    FrameComposer(Scenario scenario, @Nullable Motion motion, HandShake shake) {
        CameraSpec c = scenario.camera();
        this.scenario = scenario;
        this.motion = motion;
        this.shake = shake;
        int margin = (int) Math.ceil(shake.largestShift(scenario.seconds())) + 4;
        Backdrop backdrop = BackdropPainter.paint(scenario, margin);
        this.warp = new FrameWarp(backdrop, c.width(), c.height());
        this.reeds = new Reeds(
                scenario,
                new PhoneCamera(scenario),
                Daylight.of(scenario.scene().light()));
        this.glints = new Glints(scenario, backdrop);
        this.canvas = new StreakCanvas(c.width(), c.height());
        this.rods = new RodPainter(scenario);
        this.angler = new AnglerPainter(scenario);
        this.company = new Company(scenario, motion);
        this.trunk = motion == null ? null : TrunkPath.of(motion, scenario.casts());
        this.sensor = new Sensor(c, scenario.seed());
        this.image = new BufferedImage(c.width(), c.height(), BufferedImage.TYPE_3BYTE_BGR);
        this.bgr = ((DataBufferByte) image.getRaster().getDataBuffer()).getData();
    }

    /** The upright frame of an index; the image is used again for the next. */
    BufferedImage frame(int index) {
        double t = index / scenario.camera().captureFps();
        Homography map = shake.stillToPicture(t);
        warp.fill(bgr, map, t);
        glints.draw(canvas, map, t);
        reeds.draw(canvas, map, t, true);
        canvas.endSubFrame(1);
        canvas.layOver(bgr);
        company(t, map, false);
        if (motion != null) {
            person(motion, t, map);
        }
        company(t, map, true);
        reeds.draw(canvas, map, t, false);
        canvas.endSubFrame(1);
        canvas.layOver(bgr);
        sensor.expose(bgr, index, t);
        return image;
    }

    private void company(double t, Homography map, boolean near) {
        Graphics2D g = image.createGraphics();
        company.draw(g, t, map, shake.moved(t), near);
        g.dispose();
        if (!near) {
            company.rod(canvas, t, map, shake.moved(t));
            canvas.layOver(bgr);
        }
    }

    private void person(Motion moved, double t, Homography map) {
        PhoneCamera camera = new PhoneCamera(scenario, shake.moved(t));
        Limbs limbs = angler.limbs(moved.at(t), trunk == null ? null : trunk.at(t));
        Graphics2D g = image.createGraphics();
        angler.behind(g, camera, map, limbs);
        streaks(moved, t);
        canvas.layOver(bgr);
        angler.before(g, camera, map, limbs);
        g.dispose();
    }

    private void streaks(Motion moved, double t) {
        double exposure = scenario.camera().exposureSeconds();
        double from = t - exposure / 2;
        PhoneCamera middle = new PhoneCamera(scenario, shake.moved(t));
        double way = 0;
        int probes = 4;
        for (int i = 0; i < probes; i++) {
            way += rods.way(
                    middle, moved.at(from + exposure * i / probes), moved.at(from + exposure * (i + 1) / probes));
        }
        int parts = subFrames(way);
        for (int i = 0; i < parts; i++) {
            double u = from + exposure * (i + 0.5) / parts;
            PhoneCamera camera = new PhoneCamera(scenario, shake.moved(u));
            rods.draw(canvas, camera, shake.stillToPicture(u), moved.at(u));
            canvas.endSubFrame(1.0 / parts);
        }
    }

    /** Sub-frames for a way in pixels of the fastest thing over the exposure. */
    static int subFrames(double wayPx) {
        return (int) Math.max(1, Math.min(MOST_SUB_FRAMES, Math.ceil(wayPx / STEP_PX)));
    }
}
