package bendline.signal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.offset;

import java.util.Random;
import org.junit.jupiter.api.Test;

class RobustLineTest {

    @Test
    void aFifthOfStraysDoesNotTiltTheLine() {
        Random random = new Random(5);
        double[] x = new double[50];
        double[] y = new double[50];
        for (int i = 0; i < 50; i++) {
            x[i] = i;
            y[i] = 2 + 0.5 * i + 0.1 * random.nextGaussian() + (i % 5 == 0 ? 30 : 0);
        }
        RobustLine line = RobustLine.fit(x, y);
        assertThat(line.slope()).isEqualTo(0.5, offset(0.01));
        assertThat(line.at(25)).isEqualTo(14.5, offset(0.15));
        assertThat(line.scatter()).isBetween(0.05, 0.25);
    }

    @Test
    void exactLineIsReturnedExactly() {
        RobustLine line = RobustLine.fit(new double[] {1, 2, 5}, new double[] {3, 5, 11});
        assertThat(line.slope()).isEqualTo(2, offset(1e-12));
        assertThat(line.intercept()).isEqualTo(1, offset(1e-12));
    }

    @Test
    void oneAbscissaIsRefused() {
        assertThatThrownBy(() -> RobustLine.fit(new double[] {1, 1}, new double[] {3, 5}))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
