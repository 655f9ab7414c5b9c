package bendline.signal;

import bendline.signal.ChangePoint.Asked;
import bendline.signal.ChangePoint.Samples;

/**
 * The moment from which a quantity that was held moves freely: up to then its speed hardly changes, from then on it may change fast, to
 * either side. A change point of a walk: for every moment asked a Kalman filter whose noise grows there tells how likely the samples are.
 * Samples may be strays, of another thing; how likely each is one weighs what it tells (probabilistic data association: Bar-Shalom and
 * Tse, Automatica 11, 1975; from memory).
 */
public final class Freed {

    private Freed() {}

    /**
     * What is known beforehand.
     *
     * @param level of the first sample, about
     * @param levelSd how near to that it is, 68 %
     * @param speedSd how fast it changes at first, per second, 68 %
     * @param held how much the variance of the speed grows a second while it is held (white noise of the acceleration)
     * @param kick how much the speed may change at once when it is let go, 68 %
     * @param free as {@code held}, once it is free
     */
    public record Course(double level, double levelSd, double speedSd, double held, double kick, double free) {}

    /**
     * Samples of another thing.
     *
     * @param share of them, more than 0 and less than 1
     * @param span over which they may lie, more than 0, the values' unit
     */
    public record Strays(double share, double span) {

        /**
         * Checks.
         *
         * @throws IllegalArgumentException if a share or a span is out of range
         */
        public Strays {
            if (!(share > 0 && share < 1 && span > 0)) {
                throw new IllegalArgumentException("no strays of a share of " + share + " over " + span);
            }
        }
    }

    /** When it was, of the moments asked. */
    public static ChangePoint of(Samples samples, Course course, Strays strays, Asked asked) {
        return ChangePoint.of(samples, asked, moment -> logLikelihood(samples, course, strays, moment));
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
            double now = s.times().length == 0 ? moment : s.times()[0];
            boolean held = true;
            for (int i = 0; i < s.times().length; i++) {
                double until = s.times()[i];
                if (held && moment <= until) {
                    double let = Math.max(now, moment);
                    goOn(let - now, course.held());
                    varSpeed += course.kick() * course.kick();
                    held = false;
                    now = let;
                }
                goOn(until - now, held ? course.held() : course.free());
                now = until;
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
