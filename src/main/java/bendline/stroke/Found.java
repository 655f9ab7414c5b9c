package bendline.stroke;

/**
 * A number read from a trace outside the drawn curves.
 *
 * @param value NaN where it cannot be told
 * @param sd its 68 % uncertainty
 * @param basis what it rests on, or why it cannot be told
 */
record Found(double value, double sd, String basis) {

    static Found nothing(String why) {
        return new Found(Double.NaN, Double.NaN, why);
    }

    boolean known() {
        return !Double.isNaN(value);
    }

    Measure as(Quantity q) {
        return known() ? q.known(value, sd, basis) : q.unknown(basis);
    }

    Found times(double factor, double relativeSd) {
        return known() ? new Found(value * factor, Math.hypot(sd * factor, value * factor * relativeSd), basis) : this;
    }
}
