package bendline.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ReaderTest {

    private static final Reader YARDS = new Reader(Locale.UK, true);
    private static final Reader GERMAN = new Reader(Locale.GERMANY, false);

    /** Factors: the international yard and pound of 1959 (0.9144 m, 0.45359237 kg), so 100 m are 109.36 yd. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "about 100 m out | about 100 m (109 yd) out",
                "104 ± 6 m | 104 ± 6 m (114 ± 7 yd)",
                "98 to 120 m in | 98 to 120 m (107 to 131 yd) in",
                "a drop of 0.90 m | a drop of 0.90 m (3.0 ft)",
                "74 g as cast | 74 g (2.6 oz) as cast",
                "1.25 kg | 1.25 kg (2.76 lb)",
                "the tip at 30.5 m/s | the tip at 30.5 m/s (100 ft/s)",
                "0.22 mm, 5 ms, 20 Nm, 3 m² and 4 more | 0.22 mm, 5 ms, 20 Nm, 3 m² and 4 more"
            })
    void yardsFeetOuncesAndPoundsStandBesideMetres(String metric, String both) {
        assertThat(YARDS.say(metric).replace('\u00a0', ' ')).isEqualTo(both);
    }

    @Test
    void theDecimalSignIsTheReadersAndNothingElseChanges() {
        assertThat(GERMAN.say("0.35 s ± 4 ms. Then 12 frames; version 1.2.3 of 03.05.2026"))
                .isEqualTo("0,35 s ± 4 ms. Then 12 frames; version 1.2.3 of 03.05.2026");
        assertThat(GERMAN.drawn("<svg width='1.5'><text x=\"2.5\">0.25</text></svg>"))
                .isEqualTo("<svg width='1.5'><text x=\"2.5\">0,25</text></svg>");
    }

    @Test
    void englishProseKeepsLatinFiguresEverywhere() {
        assertThat(new Reader(Locale.forLanguageTag("ar-EG"), false).say("0.35 s"))
                .isEqualTo("0.35 s");
    }

    @Test
    void daysAreWrittenAsTheReaderWritesThem() {
        LocalDate day = LocalDate.of(2026, 5, 3);
        assertThat(GERMAN.say(GERMAN.date(day))).isEqualTo("03.05.2026");
        assertThat(YARDS.date(day)).isEqualTo("3 May 2026");
        assertThat(Reader.PLAIN.date(day)).isEqualTo("2026-05-03");
    }
}
