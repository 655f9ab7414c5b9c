package bendline.simulate;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/**
 * Deals varied scenarios from a seed: strokes, rods, rigs, directions, picture sizes, rates, exposures, hands that shake,
 * banks, light and clutter. Every dozen holds each kind of stroke once; the same seed deals the same scenarios.
 */
public final class ScenarioDeck {

    /** Kinds of stroke in a dozen. */
    private enum Kind {
        GOOD,
        RUSHED,
        EARLY_DROP,
        BOTH,
        GOOD_AGAIN,
        SLIGHTLY_RUSHED,
        SLIGHT_DROP,
        GOOD_ONCE_MORE,
        MILD_BOTH,
        PUT_DOWN,
        NOBODY,
        TWICE
    }

    private final Random random;
    private final CameraDeck cameras;

    private ScenarioDeck(long seed) {
        this.random = new Random(seed * 6364136223846793005L + 1442695040888963407L);
        this.cameras = new CameraDeck(random);
    }

    /**
     * Deals scenarios.
     *
     * @param seed decides everything
     * @param count how many, 0 to 1000
     * @return as many scenarios, named {@code KIND-SEED-NUMBER}
     */
    public static List<Scenario> deal(long seed, int count) {
        Ranges.check("number of scenarios", count, 0, 1000);
        ScenarioDeck deck = new ScenarioDeck(seed);
        List<Scenario> dealt = new ArrayList<>();
        List<Kind> kinds = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            if (kinds.isEmpty()) {
                Collections.addAll(kinds, Kind.values());
                Collections.shuffle(kinds, deck.random);
            }
            Kind kind = kinds.remove(kinds.size() - 1);
            String name = String.format(
                    Locale.ROOT,
                    "%s-%d-%02d",
                    kind.name().toLowerCase(Locale.ROOT).replace('_', '-'),
                    seed,
                    i + 1);
            dealt.add(deck.one(kind, name));
        }
        return dealt;
    }

    /** One scenario of any kind from a seed. */
    public static Scenario random(long seed) {
        return deal(seed, 1).get(0);
    }

    private Scenario one(Kind kind, String name) {
        double rigMass = Math.rint(between(40, 120));
        double length = Math.rint(between(33, 42)) / 10;
        double handle = between(0.55, 0.7);
        RodSpec rod = RodSpec.matched(length, handle, rigMass * between(0.92, 1.1));
        RigSpec rig = RigSpec.feeder(rigMass, Math.min(1.6, between(0.27, 0.40) * length));
        long clipSeed = random.nextInt(1_000_000_000);
        boolean longClip = kind == Kind.TWICE;
        Scenario scenario = new Scenario(
                name,
                clipSeed,
                60,
                random.nextBoolean(),
                kind != Kind.NOBODY,
                between(1.64, 1.92),
                any(Scenario.TipColour.values()),
                rod,
                rig,
                casts(kind),
                cameras.deal(longClip, kind == Kind.NOBODY),
                scene());
        return CastTuner.tunedAndTrimmed(scenario);
    }

    private List<CastScript> casts(Kind kind) {
        double start = between(0.6, 1.1);
        return switch (kind) {
            case GOOD, GOOD_AGAIN, GOOD_ONCE_MORE -> List.of(cast(start, between(0, 0.13), 0));
            case RUSHED -> List.of(cast(start, between(0.8, 1), 0));
            case EARLY_DROP -> List.of(cast(start, between(0, 0.13), between(0.75, 1)));
            case BOTH -> List.of(cast(start, between(0.8, 1), between(0.75, 1)));
            case SLIGHTLY_RUSHED -> List.of(cast(start, between(0.2, 0.68), 0));
            case SLIGHT_DROP -> List.of(cast(start, between(0, 0.13), between(0.2, 0.68)));
            case MILD_BOTH -> List.of(cast(start, between(0.5, 0.68), between(0.5, 0.68)));
            case PUT_DOWN -> List.of(cast(start, between(0, 0.3), 0).puttingDown());
            case NOBODY -> List.of();
            case TWICE -> {
                CastScript first = cast(start, between(0, 0.13), 0);
                boolean rushed = random.nextBoolean();
                double then = first.overSeconds() + Scenario.BETWEEN_CASTS + 0.5;
                yield List.of(first, cast(then, rushed ? 0.9 : 0.05, rushed ? 0 : 0.9));
            }
        };
    }

    private CastScript cast(double start, double rush, double drop) {
        CastScript c = CastScript.of(start, rush, drop);
        return c.varied(between(0.94, 1.08), between(-3, 3), between(-3, 3), between(0.97, 1.15));
    }

    private SceneSpec scene() {
        SceneSpec.Bank bank = any(SceneSpec.Bank.values());
        SceneSpec.Light light = any(SceneSpec.Light.values());
        boolean reeds = random.nextInt(3) == 0;
        return SceneSpec.alone(
                bank,
                light,
                reeds ? 30 + random.nextInt(90) : 0,
                random.nextInt(3) == 0 ? 1 + random.nextInt(6) : 0,
                random.nextInt(3) == 0 ? 1 + random.nextInt(3) : 0,
                random.nextInt(4) == 0,
                random.nextDouble());
    }

    private <T> T any(T[] choices) {
        return choices[random.nextInt(choices.length)];
    }

    private double between(double least, double most) {
        return least + random.nextDouble() * (most - least);
    }
}
