package bendline.simulate;

import bendline.geometry.Homography;
import bendline.geometry.Point;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Reeds at the water's edge, swaying in the wind: thin, dark and moving like rods. */
final class Reeds {

    private static final int[] STEMS = {0x6f7444, 0x857d4e, 0x5b6a3c, 0x9a8c5c};

    /** One stem: foot, height, lean, phase of the sway, colour; metres. */
    private record Stem(double x, double z, double tall, double lean, double phase, int colour) {}

    private final List<Stem> stems = new ArrayList<>();
    private final PhoneCamera still;

    Reeds(Scenario scenario, PhoneCamera camera, Daylight light) {
        this.still = camera;
        Random random = new Random(scenario.seed() ^ 0x4eedL);
        for (int i = 0; i < scenario.scene().reeds(); i++) {
            double z = -3.2 + 4.6 * random.nextDouble();
            double x = camera.side() * (1.55 + 0.06 * z + 1.5 * random.nextDouble() * random.nextDouble());
            double tall = 0.8 + 1.2 * random.nextDouble();
            int colour = light.on(STEMS[random.nextInt(STEMS.length)], 0.25 + 0.5 * random.nextDouble());
            stems.add(new Stem(x, z, tall, 0.35 * (random.nextDouble() - 0.4), 6.3 * random.nextDouble(), colour));
        }
    }

    /** Draws the stems behind (or else before) the plane of the cast at a real time in seconds. */
    void draw(StreakCanvas canvas, Homography map, double t, boolean behind) {
        for (Stem s : stems) {
            if (s.z < 0 == behind) {
                stem(canvas, map, s, t);
            }
        }
    }

    private void stem(StreakCanvas canvas, Homography map, Stem s, double t) {
        double wind = 0.10 * Math.sin(1.9 * t + s.phase + 0.7 * s.x) + 0.03 * Math.sin(5.3 * t + 2 * s.phase);
        Point last = null;
        double ppm = still.scene(s.x, 1, s.z).distance(still.scene(s.x, 0, s.z));
        int parts = 6;
        for (int i = 0; i <= parts; i++) {
            double f = (double) i / parts;
            double side = (s.lean + wind) * s.tall * f * f;
            Point here = map.apply(still.scene(s.x + side, Shore.WATER_Y + f * s.tall, s.z));
            if (last != null) {
                double r = Math.max(0.5, 0.0045 * ppm * (1 - 0.5 * f));
                canvas.stroke(last.x(), last.y(), r, here.x(), here.y(), r, s.colour, 0.1, 0.95);
            }
            last = here;
        }
        leaf(canvas, map, s, wind, ppm);
        if (s.phase > 3.6 && last != null) {
            double r = 0.012 * ppm;
            canvas.stroke(last.x(), last.y(), r, last.x(), last.y() + 0.14 * ppm, r, 0x4a3826, 0.2, 1);
        }
    }

    private void leaf(StreakCanvas canvas, Homography map, Stem s, double wind, double ppm) {
        double at = 0.35 + 0.08 * Math.sin(s.phase);
        int way = s.phase > Math.PI ? 1 : -1;
        Point last = null;
        for (int i = 0; i <= 4; i++) {
            double f = i / 4.0;
            double x = s.x + (s.lean + wind) * s.tall * at * at + way * 0.30 * f;
            double y = Shore.WATER_Y + at * s.tall + 0.34 * f - 0.30 * f * f * (1 + wind);
            Point here = map.apply(still.scene(x, y, s.z));
            if (last != null) {
                double r = Math.max(0.4, 0.006 * ppm * (1 - 0.8 * f));
                canvas.stroke(last.x(), last.y(), r, here.x(), here.y(), r, s.colour, 0, 0.9);
            }
            last = here;
        }
    }
}
