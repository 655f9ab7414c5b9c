package bendline.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class DrivenPathTest {

    private static final DrivenPath.Habit HABIT = new DrivenPath.Habit(5, 0.3, 1, 0.05);

    /** Half a t² (textbook): a point that falls at 3 and 4 units a second squared. */
    @Test
    void tellsAnEvenAcceleration() {
        double[] t = new double[40];
        Arrays.setAll(t, i -> 0.025 * i);
        double[] x = Arrays.stream(t).map(u -> 1 + 2 * u + 1.5 * u * u).toArray();
        double[] y = Arrays.stream(t).map(u -> -2 * u * u).toArray();
        double[] sd = new double[40];
        Arrays.fill(sd, 1e-4);
        double[] all = new double[50];
        Arrays.fill(all, 1);
        DrivenPath path = new DrivenPath(new DrivenPath.Places(t, x, y, sd), new DrivenPath.Cells(0, 0.02, all), HABIT);
        for (int i = 5; i < 45; i++) {
            assertThat(path.mean()[0][i]).isEqualTo(3, within(0.05));
            assertThat(path.mean()[1][i]).isEqualTo(-4, within(0.05));
        }
    }

    /** Draws spread about the mean as the places leave open: little where they are, as the habit says where there are none. */
    @Test
    void drawsAreAsFarApartAsThePlacesLeaveOpen() {
        double[] t = {0, 0.02, 0.04, 0.06, 0.08, 0.1, 0.12, 0.14, 0.16, 0.18, 0.2};
        double[] still = new double[t.length];
        double[] sd = new double[t.length];
        Arrays.fill(sd, 1e-4);
        double[] all = new double[200];
        Arrays.fill(all, 1);
        DrivenPath path =
                new DrivenPath(new DrivenPath.Places(t, still, still, sd), new DrivenPath.Cells(0, 0.02, all), HABIT);
        Random random = new Random(1);
        double near = 0;
        double far = 0;
        for (int k = 0; k < 400; k++) {
            double[] a = path.draw(random)[0];
            near += a[5] * a[5] / 400;
            far += a[190] * a[190] / 400;
        }
        assertThat(Math.sqrt(near)).isLessThan(1);
        assertThat(Math.sqrt(far)).isEqualTo(Math.hypot(5, 1), within(0.5));
    }

    /** An end known to 0.1 s: half of the drive is left there, all before, nothing after (normal distribution). */
    @Test
    void anEndFadesAsSurelyAsItIsKnown() {
        DrivenPath.Cells cells = DrivenPath.Cells.until(0, 0.01, 1, 0.1);
        assertThat(cells.share()[0]).isEqualTo(1, within(1e-6));
        assertThat(cells.share()[89]).isEqualTo(0.853, within(0.01));
        assertThat(cells.share()[99]).isEqualTo(0.5, within(0.03));
        assertThat(cells.share().length).isEqualTo(125);
    }

    @Test
    void refusesThreePlaces() {
        double[] three = {1, 2, 3};
        assertThatThrownBy(() -> new DrivenPath(
                        new DrivenPath.Places(three, three, three, three), DrivenPath.Cells.until(0, 1, 3, 1), HABIT))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("four places, got 3");
    }
}
