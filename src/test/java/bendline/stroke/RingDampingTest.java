package bendline.stroke;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import bendline.scene.Setup.Side;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Damping by the logarithmic decrement δ = ln(x₁/x₂) of one swing: ζ = δ/√(4π² + δ²) (textbook, from memory). */
class RingDampingTest {

    private static final double RELEASE = 0.5;

    /** The tip about the butt's direction: nothing before the release, a ring that dies after it. */
    private static RodSeries ringing(double hz, double decrement, double fps) {
        int n = (int) (1.6 * fps);
        double[] time = new double[n];
        double[] lag = new double[n];
        for (int i = 0; i < n; i++) {
            time[i] = i / fps;
            double t = time[i] - RELEASE;
            lag[i] = t < 0 ? 0 : 0.1 * Math.exp(-decrement * hz * t) * Math.cos(2 * Math.PI * hz * t);
        }
        double[] none = new double[n];
        Arrays.fill(none, Double.NaN);
        double[] sd = new double[n];
        Arrays.fill(sd, 0.002);
        return new RodSeries(
                Side.RIGHT,
                time,
                none,
                none,
                none,
                none,
                none,
                none,
                none,
                none,
                none,
                none,
                lag,
                sd,
                none,
                none,
                none,
                none,
                none);
    }

    @Test
    void turnsADecrementIntoADamping() {
        assertThat(RingDamping.overCritical(0.5)).isEqualTo(0.079327, within(1e-6));
    }

    /** The rate of decay is tried in steps of 16 % and read between them: the ring itself is met to a fiftieth. */
    @ParameterizedTest
    @CsvSource({"4, 0.5, 120", "4, 0.5, 60", "3, 0.2, 60", "5.5, 0.35, 240"})
    void readsADampedRing(double hz, double decrement, double fps) {
        RodSeries rod = ringing(hz, decrement, fps);
        assertThat(Ring.of(rod, 1 / fps, RELEASE).value()).isEqualTo(hz, within(0.01 * hz));
        double zeta = RingDamping.overCritical(decrement);
        assertThat(RingDamping.of(rod, 1 / fps, RELEASE).value()).isEqualTo(zeta, within(0.02 * zeta));
    }

    /** The butt's stop and the fall of the rod drive the tip anew in the first quarter of a second: that is not the ring's own. */
    @Test
    void readsTheRingOnceTheButtIsStill() {
        RodSeries rod = ringing(4, 0.35, 120);
        for (int i = 0; i < rod.size(); i++) {
            double t = rod.time()[i] - RELEASE;
            rod.lag()[i] += t > 0 && t < 0.25 ? 0.15 * Math.sin(4 * Math.PI * t / 0.25) * (0.25 - t) : 0;
        }
        double zeta = RingDamping.overCritical(0.35);
        Found found = RingDamping.of(rod, 1 / 120.0, RELEASE);
        assertThat(found.value()).isEqualTo(zeta, within(0.05 * zeta));
        assertThat(found.sd()).isBetween(0.05 * zeta, 0.2 * zeta);
    }
}
