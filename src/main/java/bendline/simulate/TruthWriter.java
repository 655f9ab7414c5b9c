package bendline.simulate;

import bendline.geometry.Homography;
import bendline.geometry.Point;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** Makes the truth of a clip from the computed motion and the camera. */
final class TruthWriter {

    private static final int BLANK_POINTS = 25;

    private final Scenario scenario;
    private final @Nullable Motion motion;
    private final @Nullable TrunkPath trunk;
    private final HandShake shake;

    TruthWriter(Scenario scenario, @Nullable Motion motion, HandShake shake) {
        this.scenario = scenario;
        this.motion = motion;
        this.trunk = motion == null ? null : TrunkPath.of(motion, scenario.casts());
        this.shake = shake;
    }

    Truth truth() {
        CameraSpec c = scenario.camera();
        List<Truth.Frame> frames = new ArrayList<>();
        for (int i = 0; i < scenario.frames(); i++) {
            frames.add(frame(i));
        }
        Truth.Clip clip = new Truth.Clip(
                c.width(),
                c.height(),
                frames.size(),
                c.storedFps(),
                c.captureFps(),
                c.exposureSeconds(),
                c.rotationDegrees());
        return new Truth(Truth.FORMAT, clip, planeToStill(), frames, casts(), scenario);
    }

    private Truth.Frame frame(int index) {
        double t = index / scenario.camera().captureFps();
        double seconds = index / scenario.camera().storedFps();
        Homography map = shake.stillToPicture(t);
        if (motion == null) {
            return new Truth.Frame(
                    index, seconds, null, false, null, null, false, false, null, null, null, null, null, null, null,
                    null, null, null, map, null);
        }
        Motion.Moment m = motion.at(t);
        PhoneCamera camera = new PhoneCamera(scenario, shake.moved(t));
        List<Point> blank = new ArrayList<>();
        for (Point p : RodShape.even(RodShape.along(m, scenario.rod()), BLANK_POINTS)) {
            blank.add(pixel(camera, map, p.x(), p.y()));
        }
        Point tip = pixel(camera, map, m.tipX(), m.tipY());
        boolean gone = m.line() == RigLine.State.LYING;
        Point rig = gone ? null : pixel(camera, map, m.rigX(), m.rigY());
        double half = scenario.camera().exposureSeconds() / 2;
        return new Truth.Frame(
                index,
                seconds,
                tip,
                inside(tip),
                List.of(tipAt(t - half), tipAt(t + half)),
                rig,
                rig != null && inside(rig),
                m.line() == RigLine.State.HELD,
                blank,
                pixel(camera, map, m.handX(), m.handY()),
                round(camera.pxPerMetre(m.tipX(), m.tipY()), 1e3),
                round(camera.pxPerMetre(m.handX(), m.handY()), 1e3),
                round(Math.toDegrees(m.angle()), 1e3),
                round(m.chordRatio(scenario.rod().freeLengthM()), 1e5),
                round(m.tipSpeed(), 1e3),
                gone ? null : round(Math.hypot(m.rigVx(), m.rigVy()), 1e3),
                round(m.tension(), 1e3),
                round(BendEnergy.of(m, scenario.rod()), 1e4),
                map,
                joints(m, camera, map));
    }

    private Map<String, Point> joints(Motion.Moment m, PhoneCamera camera, Homography map) {
        Map<String, Point> out = new TreeMap<>();
        Limbs.holding(m, scenario.rod(), scenario.statureM(), trunk == null ? null : trunk.at(m.t()))
                .joints(scenario.statureM(), camera.side())
                .forEach((name, p) -> out.put(name, pixel(camera, map, p.x(), p.y())));
        return out;
    }

    private Point tipAt(double t) {
        Motion.Moment m = motion.at(t);
        return pixel(new PhoneCamera(scenario, shake.moved(t)), shake.stillToPicture(t), m.tipX(), m.tipY());
    }

    private static Point pixel(PhoneCamera camera, Homography map, double x, double y) {
        Point p = map.apply(camera.plane(x, y));
        return new Point(round(p.x(), 1e3), round(p.y(), 1e3));
    }

    private boolean inside(Point p) {
        return p.x() >= 0
                && p.y() >= 0
                && p.x() <= scenario.camera().width()
                && p.y() <= scenario.camera().height();
    }

    /** The plane's homography from four of its points. */
    private List<Double> planeToStill() {
        PhoneCamera camera = new PhoneCamera(scenario);
        // Perspective is projective: with one column taken at infinity by differences, three columns give it exactly.
        double[][] at = new double[3][];
        double[][] world = {{0, 0}, {1, 0}, {0, 1}};
        for (int i = 0; i < 3; i++) {
            Point p = camera.plane(world[i][0], world[i][1]);
            double w = 1 / camera.pxPerMetre(world[i][0], world[i][1]);
            at[i] = new double[] {p.x() * w, p.y() * w, w};
        }
        List<Double> m = new ArrayList<>();
        for (int row = 0; row < 3; row++) {
            m.add(round((at[1][row] - at[0][row]) / at[0][2], 1e9));
            m.add(round((at[2][row] - at[0][row]) / at[0][2], 1e9));
            m.add(round(at[0][row] / at[0][2], 1e9));
        }
        return m;
    }

    private List<Truth.Cast> casts() {
        List<Truth.Cast> casts = new ArrayList<>();
        if (motion == null) {
            return casts;
        }
        double slow = scenario.camera().slowMotionFactor();
        for (Motion.Launch launch : motion.launches()) {
            if (launch.t() > scenario.seconds()) {
                continue;
            }
            CastScript script = scenario.casts().get(launch.cast());
            CastTimes times =
                    new CastTimes(motion, script, launch, scenario.rod().freeLengthM());
            Map<String, Double> events = new HashMap<>();
            times.times().forEach((name, t) -> events.put(name, round(t * slow, 1e6)));
            Map<String, Double> measures =
                    new TreeMap<>(CastMeasures.of(motion, times, launch, scenario.rod(), scenario.rig()));
            Map<String, Severity> faults = new TreeMap<>(
                    Map.of("flat-rushed-backswing", script.rushedFlat(), "tip-dropped-early", script.tipDrop()));
            BodyScript body = script.body();
            if (body != null && trunk != null) {
                measures.putAll(new BodyMeasures(motion, trunk, scenario.rod(), scenario.statureM()).of(times, launch));
                faults.put("low-hands", body.lowHands());
                faults.put("weak-pull", body.weakPull());
                faults.put("out-of-order", body.outOfOrder());
            }
            casts.add(new Truth.Cast(casts.size() + 1, events, measures, faults));
        }
        return casts;
    }

    private static double round(double value, double per) {
        return Math.round(value * per) / per;
    }
}
