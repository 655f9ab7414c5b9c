package bendline.stroke;

import bendline.signal.SmoothCurve;

/** When a movement begins: its rate last rises through a tenth of its peak. */
final class Onset {

    static final double SHARE = 0.1;

    private static final double LONGEST_CORNER_SECONDS = 0.2;

    private Onset() {}

    /**
     * The onset of a rate. Movements begin with a corner, which smoothing rounds and so makes to seem early; so where the rise is
     * brisk the moment is taken from the straight line through the rises to two and three tenths.
     */
    static double of(SmoothCurve rate, double from, double peakTime) {
        double peak = rate.at(peakTime);
        double own = rate.lastRise(SHARE * peak, from, peakTime);
        double two = rate.firstRise(2 * SHARE * peak, own, peakTime);
        double three = rate.firstRise(3 * SHARE * peak, two, peakTime);
        double line = two - (three - two);
        return line > own && three - own < LONGEST_CORNER_SECONDS ? line : own;
    }
}
