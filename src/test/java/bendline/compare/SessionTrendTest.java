package bendline.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import bendline.compare.SessionTrend.Forecast;
import bendline.compare.SessionTrend.Outing;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;

class SessionTrendTest {

    private static final LocalDate FIRST = LocalDate.of(2026, 3, 1);

    private static Outing outing(int day, double... metres) {
        List<Reading> readings = new ArrayList<>();
        for (int i = 0; i < metres.length; i++) {
            readings.add(new Reading(Sets.cast(day + "/" + i, null), metres[i], 0.1));
        }
        return new Outing("day " + day, FIRST.plusDays(day), readings);
    }

    private static SessionTrend distance(Outing... outings) {
        return SessionTrend.of(Cast.DISTANCE, "distance", "m", List.of(outings));
    }

    @Test
    void theLibrarysLineReachesTheCertifiedValues() throws IOException {
        // NIST StRD, Norris: intercept and slope with their standard deviations.
        Path file = Path.of(System.getProperty("bendline.shared", "../shared"), "checks-data", "Norris.dat");
        Assumptions.assumeTrue(Files.isRegularFile(file), "the certified data are not beside this checkout");
        SimpleRegression line = new SimpleRegression();
        for (String row : Files.readAllLines(file)) {
            if (row.matches("\\s*[-0-9.]+\\s+[-0-9.]+\\s*")) {
                String[] cells = row.strip().split("\\s+");
                line.addData(Double.parseDouble(cells[1]), Double.parseDouble(cells[0]));
            }
        }
        assertThat(line.getN()).isEqualTo(36);
        assertThat(line.getIntercept()).isCloseTo(-0.262323073774029, within(1e-9));
        assertThat(line.getSlope()).isCloseTo(1.00211681802045, within(1e-9));
        assertThat(line.getSlopeStdErr()).isCloseTo(0.000429796848199937, within(1e-9));
        assertThat(Math.sqrt(line.getMeanSquareError())).isCloseTo(0.884796396144373, within(1e-9));
    }

    @Test
    void aStraightLineOfSessionsIsFoundWithTheScatterInsideEach() {
        SessionTrend t = distance(outing(0, 59, 61), outing(30, 61, 63.2), outing(60, 63, 65), outing(90, 65.2, 67));
        assertThat(t.perMonth()).isCloseTo(2, within(0.05));
        assertThat(t.moves()).isTrue();
        assertThat(t.outings().get(0).sd()).isCloseTo(Math.sqrt(2), within(1e-9));
        assertThat(t.best().orElseThrow().value()).isEqualTo(67);
    }

    @Test
    void sessionsThatLieOnALineByLuckAreNoSurerThanTheyWereMeasured() {
        SessionTrend t = distance(outing(0, 60), outing(10, 61), outing(20, 62), outing(30, 63));
        // ± 0.1 m each, days −15, −5, 5, 15 about their middle, t of two degrees of freedom 4.3027: 30 days · 4.3027 ·
        // 0.1 / √500.
        assertThat(t.high() - t.perMonth()).isCloseTo(30 * 4.3027 * 0.1 / Math.sqrt(500), within(1e-4));
    }

    @Test
    void threeSessionsGiveNoLineAndNoForecast() {
        SessionTrend t = distance(outing(0, 60), outing(30, 62), outing(60, 64));
        assertThat(t.perMonth()).isNaN();
        Forecast f = t.forecast(FIRST.plusDays(90), 70.0);
        assertThat(f.value()).isNaN();
        assertThat(f.says()).contains("needs 4 sessions");
    }

    @Test
    void nothingIsSaidFartherAheadThanTheBookLooksBack() {
        SessionTrend t = distance(outing(0, 60), outing(10, 62), outing(20, 63), outing(30, 66));
        assertThat(t.forecast(FIRST.plusDays(60), null).value()).isFinite();
        assertThat(t.forecast(FIRST.plusDays(61), null).says()).contains("farther ahead");
    }

    @Test
    void onlyMeasuredDistancesAreBests() {
        assertThat(SessionTrend.of("tempo", "tempo", "1", List.of(outing(0, 4))).best())
                .isEmpty();
        assertThat(distance().best()).isEmpty();
    }

    @Test
    void forecastsHoldAsOftenAsTheySay() {
        Random random = new Random(8);
        int rounds = 3000;
        int held = 0;
        int unlikely = 0;
        for (int i = 0; i < rounds; i++) {
            Outing[] outings = new Outing[6];
            for (int k = 0; k < outings.length; k++) {
                outings[k] = outing(14 * k, 60 + 0.05 * 14 * k + random.nextGaussian());
            }
            double then = 60 + 0.05 * 100 + random.nextGaussian();
            Forecast f = distance(outings).forecast(FIRST.plusDays(100), then);
            held += then >= f.low() && then <= f.high() ? 1 : 0;
            unlikely += f.chance() < 0.1 ? 1 : 0;
        }
        // Three standard deviations of shares of 95 % and 10 % in 3000 rounds; what happened had been given less than
        // one
        // chance in ten once in ten times.
        assertThat(held / (double) rounds).isCloseTo(0.95, within(0.012));
        assertThat(unlikely / (double) rounds).isCloseTo(0.1, within(0.017));
    }
}
