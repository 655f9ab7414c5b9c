package bendline.compare;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.jspecify.annotations.Nullable;

/**
 * One measure over sessions: the casts of each, and a straight line through the sessions' means where there are enough. A
 * session counts once, however many casts it holds, because casts of one day share that day's luck.
 *
 * @param id of the measure
 * @param label for people
 * @param unit of the measure
 * @param outings in order of day, those in which the measure is known
 * @param perMonth change in 30 days by the line; NaN where there is none
 * @param low lower end of its 95 % interval
 * @param high upper end
 */
public record SessionTrend(
        String id, String label, String unit, List<Outing> outings, double perMonth, double low, double high) {

    /** Sessions from which on a line is drawn: with three, two of them can lie on it by luck. */
    private static final int LEAST_OUTINGS = 4;

    private static final double LEVEL = 0.95;
    private static final int MONTH_DAYS = 30;

    /**
     * One session.
     *
     * @param session its name
     * @param day when
     * @param readings of its casts
     */
    public record Outing(String session, LocalDate day, List<Reading> readings) {

        /** Copies the list. */
        public Outing {
            readings = List.copyOf(readings);
        }

        /** Mean of the casts. */
        public double mean() {
            return readings.stream().mapToDouble(Reading::value).average().orElse(Double.NaN);
        }

        /** Scatter of the casts, one standard deviation; NaN for one cast. */
        public double sd() {
            return readings.size() < 2 ? Double.NaN : Math.sqrt(Comparer.variance(readings));
        }
    }

    /**
     * What the line says of a later day, if things go on as they went.
     *
     * @param day which
     * @param value mean of a session then; NaN where it can't be told
     * @param low lower end of what such a session's mean lies in 19 times of 20
     * @param high upper end
     * @param chance that a session's mean then reaches the target; NaN where it can't be told or there is none
     * @param says why it can't be told, or how unsure it is, in words
     */
    public record Forecast(LocalDate day, double value, double low, double high, double chance, String says) {}

    /** Copies the list. */
    public SessionTrend {
        outings = List.copyOf(outings);
    }

    /** A trend of a measure through sessions that know it. */
    public static SessionTrend of(String id, String label, String unit, List<Outing> all) {
        List<Outing> outings = all.stream()
                .filter(o -> !o.readings().isEmpty())
                .sorted(Comparator.comparing(Outing::day).thenComparing(Outing::session))
                .toList();
        SimpleRegression line = line(outings);
        if (!drawable(outings)) {
            return new SessionTrend(id, label, unit, outings, Double.NaN, Double.NaN, Double.NaN);
        }
        TDistribution t = new TDistribution(null, outings.size() - 2.0);
        double half = t.inverseCumulativeProbability((1 + LEVEL) / 2)
                * Math.sqrt(noise(outings, line) / line.getXSumSquares());
        double slope = line.getSlope();
        return new SessionTrend(
                id, label, unit, outings, MONTH_DAYS * slope, MONTH_DAYS * (slope - half), MONTH_DAYS * (slope + half));
    }

    /** Readings of casts by session. */
    public static List<Outing> outings(List<Cast> casts, String id) {
        List<Outing> out = new ArrayList<>();
        for (Cast c : casts) {
            Cast.Turn turn = c.turn();
            String day = c.conditions().get(Condition.DAY);
            if (turn == null || day == null) {
                continue;
            }
            List<Reading> own = new CastSet("", List.of(c)).values(id);
            Optional<Outing> there =
                    out.stream().filter(o -> o.session().equals(turn.session())).findFirst();
            List<Reading> readings = new ArrayList<>(there.map(Outing::readings).orElse(List.of()));
            readings.addAll(own);
            there.ifPresent(out::remove);
            out.add(new Outing(turn.session(), LocalDate.parse(day), readings));
        }
        return out;
    }

    private static boolean drawable(List<Outing> outings) {
        return outings.size() >= LEAST_OUTINGS
                && outings.stream().map(Outing::day).distinct().count() >= LEAST_OUTINGS - 1;
    }

    private static SimpleRegression line(List<Outing> outings) {
        SimpleRegression line = new SimpleRegression();
        outings.forEach(o -> line.addData(o.day().toEpochDay(), o.mean()));
        return line;
    }

    /** Variance of sessions about the line; means that lie on it by luck are no surer than their casts were measured. */
    private static double noise(List<Outing> outings, SimpleRegression line) {
        double measuring = outings.stream()
                .mapToDouble(
                        o -> Measured.meanSquare(o.readings()) / o.readings().size())
                .average()
                .orElse(0);
        return Math.max(line.getMeanSquareError(), measuring);
    }

    /** Whether the line rises or falls by more than chance. */
    public boolean moves() {
        return low > 0 || high < 0;
    }

    /** The farthest cast that was measured; nothing for measures of which more isn't better by itself. */
    public Optional<Reading> best() {
        return id.equals(Cast.DISTANCE)
                ? outings.stream().flatMap(o -> o.readings().stream()).max(Comparator.comparing(Reading::value))
                : Optional.empty();
    }

    /**
     * What the line says of a later day.
     *
     * @param target to be reached, from below or above; null for none
     */
    public Forecast forecast(LocalDate day, @Nullable Double target) {
        if (!drawable(outings)) {
            return unknown(
                    day,
                    "a forecast needs " + LEAST_OUTINGS + " sessions in which it was measured, and there are "
                            + outings.size());
        }
        LocalDate first = outings.get(0).day();
        LocalDate last = outings.get(outings.size() - 1).day();
        if (day.isAfter(last.plusDays(ChronoUnit.DAYS.between(first, last)))) {
            return unknown(day, "that is farther ahead than the book looks back");
        }
        SimpleRegression line = line(outings);
        double n = outings.size();
        double mean =
                outings.stream().mapToLong(o -> o.day().toEpochDay()).average().orElse(0);
        double off = day.toEpochDay() - mean;
        double error = Math.sqrt(noise(outings, line) * (1 + 1 / n + off * off / line.getXSumSquares()));
        TDistribution t = new TDistribution(null, n - 2);
        double half = error * t.inverseCumulativeProbability((1 + LEVEL) / 2);
        double value = line.predict(day.toEpochDay());
        double chance = target == null ? Double.NaN : chance(t, (target - value) / error, target);
        String says = moves()
                ? "if it goes on as it went"
                : "whether it moves at all can't be told from these sessions, so this is little more than their middle";
        return new Forecast(day, value, value - half, value + half, chance, says);
    }

    /** The target is reached from the side on which the first session lies. */
    private double chance(TDistribution t, double off, double target) {
        double under = t.cumulativeProbability(off);
        return outings.get(0).mean() <= target ? 1 - under : under;
    }

    private static Forecast unknown(LocalDate day, String why) {
        return new Forecast(day, Double.NaN, Double.NaN, Double.NaN, Double.NaN, why);
    }
}
