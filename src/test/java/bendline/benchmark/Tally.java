package bendline.benchmark;

/**
 * How often something happened out of how many.
 *
 * @param hits at least 0
 * @param of at least {@code hits}
 */
public record Tally(int hits, int of) {

    /** Nothing counted. */
    public static final Tally NONE = new Tally(0, 0);

    /** One more, a hit or not. */
    public Tally plus(boolean hit) {
        return new Tally(hits + (hit ? 1 : 0), of + 1);
    }

    /** Both together. */
    public Tally with(Tally other) {
        return new Tally(hits + other.hits, of + other.of);
    }

    /** Wilson's 95 % interval of the share (Journal of the American Statistical Association 22 (1927) 209), low and high. */
    public double[] interval() {
        double z = 1.959964;
        double p = share();
        double n = of;
        double middle = (p + z * z / (2 * n)) / (1 + z * z / n);
        double half = z / (1 + z * z / n) * Math.sqrt(p * (1 - p) / n + z * z / (4 * n * n));
        return new double[] {Math.max(0, middle - half), Math.min(1, middle + half)};
    }

    /** 0 to 1, or NaN where nothing was counted. */
    public double share() {
        return of == 0 ? Double.NaN : (double) hits / of;
    }
}
