package bendline.compare;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.compare.Cast.Turn;
import bendline.stroke.Measure;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Thousands of comparisons of casts drawn by chance: how often they cry wolf, and how often an interval holds. */
class FalseAlarmTest {

    private static final int ROUNDS = 2000;
    private static final int CASTS = 8;
    private static final String[] FAMILY = {"one", "two", "three", "four", "five"};

    /** Three standard deviations of a share of 5 % counted in that many rounds: a right program fails once in 700 seeds. */
    private static final double BY_CHANCE = 3 * Math.sqrt(0.05 * 0.95 / ROUNDS);

    /** Casts scatter by 1 and are measured to ± 0.5, both from a lopsided or a plain distribution. */
    private static CastSet drawn(Random random, String label, double shift, boolean lopsided, boolean oneSession) {
        List<Cast> casts = new ArrayList<>();
        for (int i = 0; i < CASTS; i++) {
            List<Measure> measures = new ArrayList<>();
            for (String id : FAMILY) {
                double scatter = lopsided ? -Math.log(1 - random.nextDouble()) : random.nextGaussian();
                double value = shift + scatter + 0.5 * random.nextGaussian();
                measures.add(Sets.measure(id, "s", value, 0.5));
            }
            Turn turn =
                    oneSession ? new Turn("day", 2 * i + (label.equals("A") ? 1 : 2)) : new Turn("day " + label, i + 1);
            casts.add(Sets.cast(label + i, turn, measures.toArray(Measure[]::new)));
        }
        return new CastSet(label, casts);
    }

    private static double alarms(boolean lopsided, boolean paired, long seed) {
        Random random = new Random(seed);
        Comparer comparer = Sets.comparer(FAMILY);
        int alarms = 0;
        for (int i = 0; i < ROUNDS; i++) {
            Comparison c =
                    comparer.compare(drawn(random, "A", 0, lopsided, paired), drawn(random, "B", 0, lopsided, paired));
            assertThat(c.paired()).isEqualTo(paired);
            alarms += c.family().stream().anyMatch(Difference::shown) ? 1 : 0;
        }
        return (double) alarms / ROUNDS;
    }

    @Test
    void withoutAChangeNoMoreThanOneComparisonInTwentyShowsOne() {
        double two = alarms(false, false, 1);
        double lopsided = alarms(true, false, 2);
        double paired = alarms(false, true, 3);
        assertThat(List.of(two, lopsided, paired))
                .allSatisfy(rate -> assertThat(rate).isLessThan(0.05 + BY_CHANCE));
        // And the rule does not get there by never showing anything: five tests together use most of their five per
        // cent.
        assertThat(two).isGreaterThan(0.02);
    }

    @Test
    void withAKnownChangeTheIntervalHoldsItAsOftenAsItSays() {
        Random random = new Random(4);
        Comparer comparer = Sets.comparer(FAMILY);
        int held = 0;
        int all = 0;
        double stated = 0;
        for (int i = 0; i < ROUNDS; i++) {
            Comparison c = comparer.compare(drawn(random, "A", 0, false, false), drawn(random, "B", 1.5, false, false));
            for (Difference d : c.family()) {
                held += d.shift().low() <= 1.5 && d.shift().high() >= 1.5 ? 1 : 0;
                stated += d.shift().confidence();
                all++;
            }
        }
        double often = (double) held / all;
        // 10 000 intervals; measuring widens a few of them, so they may hold a little more than they say, never less.
        assertThat(often).isBetween(stated / all - 3 * Math.sqrt(0.05 * 0.95 / all), stated / all + 0.015);
    }

    @Test
    void aChangeOfTheSmallestSizeIsShownAboutFourTimesInFive() {
        Random random = new Random(6);
        Comparer one = Sets.comparer("one");
        // Scatter of casts and of measuring together, and what eight and eight casts show of it at 5 %.
        double smallest = Math.sqrt(1.25)
                * Power.smallest(
                        c -> Power.ofSets(c, Power.RANK_EFFICIENCY * CASTS, Power.RANK_EFFICIENCY * CASTS, 0.05));
        int shown = 0;
        for (int i = 0; i < ROUNDS; i++) {
            Comparison c = one.compare(drawn(random, "A", 0, false, false), drawn(random, "B", smallest, false, false));
            shown += c.family().get(0).shown() ? 1 : 0;
        }
        // Counted ranks are coarse, which costs or gains a few per cent against the smooth formula.
        assertThat((double) shown / ROUNDS).isBetween(0.74, 0.86);
    }
}
