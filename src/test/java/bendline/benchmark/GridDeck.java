package bendline.benchmark;

import bendline.simulate.CameraSpec;
import bendline.simulate.CastFilm;
import bendline.simulate.CastScript;
import bendline.simulate.RigSpec;
import bendline.simulate.RodSpec;
import bendline.simulate.Scenario;
import bendline.simulate.SceneSpec;
import bendline.simulate.Severity;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/**
 * Deals single casts for the grid: both faults from absent over borderline to clear, rods, rigs and anglers of all sizes. No
 * pictures; the same seed deals the same casts.
 */
final class GridDeck {

    private static final double START_SECONDS = 0.8;

    /** A degree of a fault in each of these ranges in turn; what is fair to call either way lies between. */
    private static final double[][] DEGREES = {{0, 0.15}, {0.2, 0.44}, {0.46, 0.69}, {0.7, 1}, {0, 0.15}, {0.75, 1}};

    private final Random random;

    private GridDeck(long seed) {
        this.random = new Random(seed * 0x9E3779B97F4A7C15L + 77);
    }

    /** Scenarios with one cast each, seen by a phone on a tripod. */
    static List<Scenario> deal(long seed, int count) {
        GridDeck deck = new GridDeck(seed);
        List<Scenario> out = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            double[] rush = DEGREES[i % DEGREES.length];
            double[] drop = DEGREES[i / DEGREES.length % DEGREES.length];
            out.add(deck.one(
                    String.format(Locale.ROOT, "grid-%d-%03d", seed, i),
                    deck.between(rush[0], rush[1]),
                    deck.between(drop[0], drop[1])));
        }
        return out;
    }

    private Scenario one(String name, double rush, double drop) {
        CastScript c = CastScript.of(START_SECONDS, rush, drop);
        return scenario(name, varied(c), Severity.of(rush), Severity.of(drop));
    }

    private CastScript varied(CastScript c) {
        return new CastScript(
                c.startSeconds(),
                c.readyAngleDeg() + between(-8, 8),
                c.layBackDeg() + between(-4, 4),
                c.backswingSeconds() * between(0.92, 1.1),
                c.settleSeconds(),
                c.feelSeconds(),
                c.pushSeconds() * between(0.95, 1.1),
                c.turnDelaySeconds(),
                c.turnSeconds() * between(0.96, 1.16),
                c.stopAngleDeg() + between(-6, 6),
                c.releaseDirectionDeg(),
                c.releaseLateSeconds(),
                c.holdSeconds(),
                c.dropDeg(),
                c.dropDelaySeconds(),
                c.dropSeconds(),
                false,
                c.rushedFlat(),
                c.tipDrop(),
                null);
    }

    private Scenario scenario(String name, CastScript cast, Severity rush, Severity drop) {
        double mass = Math.rint(between(40, 120));
        double length = between(3.3, 4.2);
        RodSpec rod = RodSpec.matched(length, between(0.55, 0.7), mass * between(0.9, 1.12));
        RigSpec rig = RigSpec.feeder(mass, Math.min(1.6, between(0.27, 0.40) * length));
        return scenario(name, random.nextInt(1_000_000_000), between(1.6, 1.95), rod, rig, cast);
    }

    /** One cast of a rod and rig, long enough for what follows it. */
    static Scenario scenario(String name, long seed, double stature, RodSpec rod, RigSpec rig, CastScript cast) {
        return new Scenario(
                name,
                seed,
                30,
                true,
                true,
                stature,
                Scenario.TipColour.PLAIN,
                rod,
                rig,
                List.of(cast),
                CameraSpec.tripod1080p60(),
                SceneSpec.plain());
    }

    /** A phone on a tripod that sees the whole rod. */
    static CameraSpec camera(double fps, double yawDeg) {
        CameraSpec c = CameraSpec.tripod1080p60();
        return new CameraSpec(
                c.width(),
                c.height(),
                0,
                fps,
                fps,
                Math.min(0.0025, 0.8 / fps),
                c.focalPx(),
                c.distanceM(),
                c.heightM(),
                yawDeg,
                c.aimXM(),
                c.aimYM(),
                0,
                0,
                c.noise(),
                c.gainDrift(),
                c.bitsPerSecond());
    }

    /** The casts' motions, those left out in which a cast can't be made to come off. */
    static List<CastFilm> films(List<Scenario> scenarios) {
        return scenarios.parallelStream().map(CastFilm::of).toList();
    }

    private double between(double least, double most) {
        return least + random.nextDouble() * (most - least);
    }
}
