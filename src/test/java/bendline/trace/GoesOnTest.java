package bendline.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class GoesOnTest {

    private static final int STATIONS = 100;

    /** Strengths that fall off exponentially, of one mean up to a station and of another from there on. */
    private static double[] strengths(long seed, int until, double mean, double then) {
        Random random = new Random(seed);
        double[] out = new double[STATIONS];
        for (int i = 0; i < STATIONS; i++) {
            out[i] = -Math.log(1 - random.nextDouble()) * (i < until ? mean : then);
        }
        return out;
    }

    private static GoesOn of(long seed, int until, double mean) {
        return GoesOn.of(strengths(seed, until, mean, 1), strengths(seed + 1000, STATIONS, 1, 1));
    }

    @Test
    void whereNothingGoesOnHardlyAnythingSaysSo() {
        int told = 0;
        for (long seed = 0; seed < 200; seed++) {
            GoesOn on = of(seed, 0, 1);
            told += on.between(8, 75) ? 1 : 0;
            assertThat(on.upTo(60)).isLessThan(0);
            assertThat(on.most()).isNotNegative();
        }
        assertThat(told).isLessThan(10);
    }

    @Test
    void somethingFaintIsFollowedToItsEnd() {
        int told = 0;
        for (long seed = 0; seed < 200; seed++) {
            GoesOn on = of(seed, 24, 4);
            told += on.between(24, 48) ? 1 : 0;
        }
        assertThat(told).isGreaterThan(170);
    }

    /** The likelihood ratio of two exponentials, by hand: each station four times the usual strength counts (3 - ln 4) / 4. */
    @Test
    void everyStationCountsAsTwoExponentialsSay() {
        double[] on = new double[STATIONS];
        java.util.Arrays.fill(on, 0, 10, 8);
        GoesOn four = GoesOn.of(on, new double[] {2, 2, 2});
        assertThat(four.most()).isCloseTo(10 * (3 - Math.log(4)) / 4, within(1e-9));
        assertThat(four.px()).isEqualTo(15);
        assertThat(four.upTo(15 + 6)).isCloseTo(four.most() - 4 * Math.log(4) / 4, within(1e-9));
        assertThat(four.pxNear(20, 6)).isEqualTo(15);
        assertThat(four.pxNear(40, 6)).isCloseTo(34.5, within(1e-9));
    }

    @Test
    void nothingIsToldOfWhatWasNotLookedAt() {
        assertThat(GoesOn.UNKNOWN.upTo(30)).isZero();
        assertThat(GoesOn.UNKNOWN.px()).isZero();
        assertThat(GoesOn.UNKNOWN.most()).isZero();
        assertThat(GoesOn.UNKNOWN.between(0, 100)).isFalse();
        assertThat(GoesOn.UNKNOWN.pxNear(30, 5)).isZero();
    }
}
