package bendline.body;

/**
 * Rounds what a network answers to what it can mean. Processors add up a network's sums in different orders, so that the last bits of
 * its answers differ from one computer to the next; where the next square hangs on them, and the hands on that, a whole report does.
 */
final class Grain {

    /** Of a square's side: an eighth of a picture element of the joints' network, a hundredth of what a joint is sure to. */
    private static final double PLACE = 1.0 / 2048;

    private static final double LIKELIHOOD = 1.0 / 128;

    private Grain() {}

    /** A place along the side of a square, 0 to 1 inside it. */
    static double place(double share) {
        return Math.rint(share / PLACE) * PLACE;
    }

    /** The likelihood that stands behind a raw answer, 0 to 1. */
    static double likelihood(double logit) {
        return rounded(1 / (1 + Math.exp(-logit)));
    }

    /** A likelihood that the network tells as such, 0 to 1. */
    static double rounded(double likelihood) {
        return Math.rint(likelihood / LIKELIHOOD) * LIKELIHOOD;
    }
}
