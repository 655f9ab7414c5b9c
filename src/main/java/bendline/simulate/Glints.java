package bendline.simulate;

import bendline.geometry.Homography;
import bendline.geometry.Point;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Sparkles on the water that come and go within tenths of a second. */
final class Glints {

    private record Sparkle(double x, double y, double half, double hertz, double phase) {}

    private final List<Sparkle> sparkles = new ArrayList<>();
    private final double strength;

    Glints(Scenario scenario, Backdrop backdrop) {
        this.strength = scenario.scene().glints()
                * Daylight.of(scenario.scene().light()).sun()
                / 0.55;
        Random random = new Random(scenario.seed() ^ 0x911775L);
        Noise patches = new Noise(scenario.seed() + 91);
        int count = (int) (900 * strength);
        for (int i = 0; i < 6 * count && sparkles.size() < count; i++) {
            int x = random.nextInt(backdrop.width());
            int y = random.nextInt(backdrop.height());
            boolean wet = backdrop.water()[y * backdrop.width() + x] != 0;
            double here = patches.cloud(x * 4.0 / backdrop.width(), y * 14.0 / backdrop.height(), 3);
            if (wet && random.nextDouble() < Noise.step(0.42, 0.7, here)) {
                sparkles.add(new Sparkle(
                        x - backdrop.margin(),
                        y - backdrop.margin(),
                        backdrop.width() * (0.0004 + 0.0016 * random.nextDouble()),
                        0.8 + 2.5 * random.nextDouble(),
                        6.3 * random.nextDouble()));
            }
        }
    }

    void draw(StreakCanvas canvas, Homography map, double t) {
        for (Sparkle s : sparkles) {
            double wave = Math.sin(2 * Math.PI * s.hertz * t + s.phase);
            double bright = Math.pow(Math.max(0, wave), 4) * Math.min(1, 0.3 + strength);
            if (bright > 0.05) {
                Point p = map.apply(new Point(s.x + 1.5 * Math.sin(3 * t + s.phase), s.y));
                canvas.stroke(p.x() - s.half, p.y(), 0.7, p.x() + s.half, p.y(), 0.7, 0xfdf8ec, 0, bright);
            }
        }
    }
}
