package bendline.signal;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * The moment from which a quantity that was held moves freely: up to then its speed hardly changes, from then on it may change fast, to
 * either side. A change point of a walk: for every moment asked a Kalman filter whose noise grows there tells how likely the samples are.
 * Samples may be strays, of another thing; how likely each is one weighs what it tells (probabilistic data association: Bar-Shalom and
 * Tse, Automatica 11, 1975; from memory).
 *
 * @param at middle of what is likely, seconds
 * @param sd its 68 % uncertainty, seconds
 * @param before samples up to the likeliest moment
 * @param after samples after it
 */
public record Freed(double at, double sd, int before, int after) {

    /** Moments asked, a step. */
    private static final int A_STEP = 4;

    /**
     * What was seen.
     *
     * @param times seconds, rising
     * @param values any unit
     * @param sds their 68 % uncertainties, positive
     */
    public record Samples(double[] times, double[] values, double[] sds) {}

    /**
     * What is known beforehand.
     *
     * @param level of the first sample, about
     * @param levelSd how near to that it is, 68 %
     * @param speedSd how fast it changes at first, per second, 68 %
     * @param held how much the speed's square changes while it is held, per second, as the strength of white noise
     * @param kick how much the speed changes at once when it is let go, 68 %
     * @param free the same once it is free
     */
    public record Course(double level, double levelSd, double speedSd, double held, double kick, double free) {}

    /**
     * Samples of another thing.
     *
     * @param share of them, more than 0
     * @param span over which they may lie, the values' unit
     */
    public record Strays(double share, double span) {}

    /**
     * Which moments are asked.
     *
     * @param from earliest, seconds
     * @param to latest, after it
     * @param step usual time between samples
     * @param alike for how long errors go on, so that samples tell less together than as many independent ones
     */
    public record Asked(double from, double to, double step, double alike) {

        /** Checks. */
        public Asked {
            if (!(from < to && step > 0)) {
                throw new IllegalArgumentException(
                        "no time from " + from + " to " + to + " s at steps of " + step + " s");
            }
        }

        private double[] moments() {
            int n = (int) Math.ceil((to - from) / step * A_STEP) + 1;
            return IntStream.range(0, n)
                    .mapToDouble(k -> from + k * step / A_STEP)
                    .toArray();
        }
    }

    /** When it was, of the moments asked. */
    public static Freed of(Samples samples, Course course, Strays strays, Asked asked) {
        double[] moments = asked.moments();
        double[] logs = Arrays.stream(moments)
                .map(m -> logLikelihood(samples, course, strays, m))
                .toArray();
        int best = IntStream.range(0, logs.length).reduce(0, (a, b) -> logs[b] > logs[a] ? b : a);
        double together = Math.max(1, asked.alike() / asked.step());
        double[] likely = Arrays.stream(logs)
                .map(l -> Math.exp((l - logs[best]) / together))
                .toArray();
        double sum = Arrays.stream(likely).sum();
        double mean = IntStream.range(0, likely.length)
                .mapToDouble(k -> likely[k] * moments[k] / sum)
                .sum();
        double square = IntStream.range(0, likely.length)
                .mapToDouble(k -> likely[k] * (moments[k] - mean) * (moments[k] - mean) / sum)
                .sum();
        int before = (int)
                Arrays.stream(samples.times()).filter(t -> t <= moments[best]).count();
        double least = asked.step() / A_STEP;
        return new Freed(mean, Math.max(least, Math.sqrt(square)), before, samples.times().length - before);
    }

    /** How likely samples are of what is let go at a moment, logarithm of a density. */
    static double logLikelihood(Samples samples, Course course, Strays strays, double moment) {
        return new Walk(course, strays, moment).logLikelihood(samples);
    }

    /** Value and speed, and how uncertain they are, from sample to sample. */
    private static final class Walk {

        private final Course course;
        private final Strays strays;
        private final double moment;
        private double value;
        private double speed;
        private double varValue;
        private double covariance;
        private double varSpeed;

        Walk(Course course, Strays strays, double moment) {
            this.course = course;
            this.strays = strays;
            this.moment = moment;
            this.value = course.level();
            this.varValue = course.levelSd() * course.levelSd();
            this.varSpeed = course.speedSd() * course.speedSd();
        }

        double logLikelihood(Samples s) {
            double log = 0;
            for (int i = 0; i < s.times().length; i++) {
                if (i > 0) {
                    double heldUntil = Math.max(s.times()[i - 1], Math.min(moment, s.times()[i]));
                    goOn(heldUntil - s.times()[i - 1], course.held());
                    if (s.times()[i - 1] < moment && moment <= s.times()[i]) {
                        varSpeed += course.kick() * course.kick();
                    }
                    goOn(s.times()[i] - heldUntil, course.free());
                }
                log += Math.log(see(s.values()[i], s.sds()[i] * s.sds()[i]));
            }
            return log;
        }

        private void goOn(double seconds, double noise) {
            value += seconds * speed;
            varValue += seconds * (2 * covariance + seconds * varSpeed) + noise * seconds * seconds * seconds / 3;
            covariance += seconds * varSpeed + noise * seconds * seconds / 2;
            varSpeed += noise * seconds;
        }

        /** Takes a sample in, and tells how likely it was. */
        private double see(double seen, double variance) {
            double off = seen - value;
            double all = varValue + variance;
            double mine = (1 - strays.share()) * Math.exp(-0.5 * off * off / all) / Math.sqrt(2 * Math.PI * all);
            double stray = strays.share() / strays.span();
            double weight = mine / (mine + stray);
            double gainValue = varValue / all;
            double gainSpeed = covariance / all;
            // What is left open whether it was a stray keeps the state as uncertain as the two cases lie apart.
            double apart = weight * (1 - weight) * off * off;
            double taken = weight * all;
            value += weight * gainValue * off;
            speed += weight * gainSpeed * off;
            varValue += gainValue * gainValue * (apart - taken);
            covariance += gainValue * gainSpeed * (apart - taken);
            varSpeed += gainSpeed * gainSpeed * (apart - taken);
            return mine + stray;
        }
    }
}
