package bendline.stroke;

/**
 * One of several things that tell when something happened.
 *
 * @param what it is, in words that stand for themselves: “the blank is straight again”
 * @param seconds the moment by it, real time; NaN where it tells nothing
 * @param sd its 68 % uncertainty where it tells the right thing
 * @param trust how likely it tells the right thing at all, 0 to 1
 */
record Clue(String what, double seconds, double sd, double trust) {

    boolean known() {
        return !Double.isNaN(seconds) && sd > 0;
    }

    /** How likely the moment is by this clue, per second; a clue that tells the wrong thing may lie anywhere. */
    double likelihood(double t) {
        double u = (t - seconds) / sd;
        return trust * Math.exp(-0.5 * u * u) / (sd * Math.sqrt(2 * Math.PI)) + (1 - trust) / Clues.ANYWHERE_SECONDS;
    }
}
