package bendline.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.LongStream;
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

    /** How many of 200 say that something of a mean strength up to a station goes on for so far. */
    private static long told(int until, double mean, double leastPx, double mostPx) {
        return LongStream.range(0, 200)
                .filter(seed -> of(seed, until, mean).between(leastPx, mostPx))
                .count();
    }

    @Test
    void whereNothingGoesOnHardlyAnythingSaysSo() {
        assertThat(told(0, 1, 8, 75)).isLessThan(10);
        assertThat(LongStream.range(0, 200).mapToObj(seed -> of(seed, 0, 1)))
                .allMatch(on -> on.upTo(60) < 0 && on.most() >= 0);
    }

    @Test
    void somethingFaintIsFollowedToItsEnd() {
        assertThat(told(24, 4, 24, 48)).isGreaterThan(170);
    }

    /** The likelihood ratio of two exponentials, by hand: each station four times the usual strength counts (3 - ln 4) / 4. */
    @Test
    void everyStationCountsAsTwoExponentialsSay() {
        double[] on = new double[STATIONS];
        Arrays.fill(on, 0, 10, 8);
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
