package bendline.report;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.stroke.Measure;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WordsTest {

    /**
     * Digits as in JCGM 100:2008 (GUM) 7.2.6: an uncertainty of at most two figures, the estimate rounded to agree with it.
     */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "25.04 | 0.9 | deg | 25.0 ± 0.9°",
                "25.04 | 1.2 | deg | 25.0 ± 1.2°",
                "143.7 | 12 | deg | 144 ± 12°",
                "0.0931 | 0.0104 | 1 | 0.093 ± 0.010",
                "-3.26 | 0.31 | m/s | −3.3 ± 0.3 m/s",
                "0.5803 | 0.0062 | s | 0.580 ± 0.006 s",
                "812.4 | 230 | deg/s | 812 ± 230 °/s"
            })
    void aValueHasTheDigitsItsUncertaintyIsWorth(double value, double sd, String unit, String text) {
        assertThat(Words.measured(new Measure("x", "x", unit, value, sd, "b")).replace('\u00a0', ' '))
                .isEqualTo(text);
    }

    @Test
    void compressionIsSaidInPerCentAsInTheCharts() {
        Measure m = new Measure("compression", "deepest compression", "1", 0.1163, 0.0041, "b");
        assertThat(Words.measured(m)).isEqualTo("11.6 ± 0.4\u00a0%");
        assertThat(Words.alike(0.08, m)).isEqualTo("8\u00a0%");
    }

    @Test
    void whatIsNotKnownIsSaidInWords() {
        assertThat(Words.measured(Measure.unknown("x", "x", "s", "why"))).isEqualTo("cannot tell");
    }
}
