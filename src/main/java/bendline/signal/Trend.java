package bendline.signal;

import java.util.function.LongFunction;

/**
 * A smoothed series with its first two derivatives and their 68 % uncertainties. Entries farther from any sample than the
 * smoother may bridge are NaN. Arrays are shared, do not write to them.
 */
public final class Trend {

    private final double[] t;
    private final double[] value;
    private final double[] rate;
    private final double[] acceleration;
    private final double[] valueSd;
    private final double[] rateSd;
    private final double[] accelerationSd;
    private final double noiseScale;
    private final LongFunction<Path> drawing;

    /**
     * One path of values and derivatives, as likely as the trend's uncertainties say.
     *
     * @param values at the trend's times
     * @param rates first derivative
     */
    public record Path(SmoothCurve values, SmoothCurve rates) {}

    Trend(
            double[] t,
            double[][] states,
            double[] valueSd,
            double[] rateSd,
            double[] accelerationSd,
            double noiseScale,
            LongFunction<Path> drawing) {
        this.t = t;
        this.value = column(states, 0);
        this.rate = column(states, 1);
        this.acceleration = column(states, 2);
        this.valueSd = valueSd;
        this.rateSd = rateSd;
        this.accelerationSd = accelerationSd;
        this.noiseScale = noiseScale;
        this.drawing = drawing;
    }

    /** Sample times. */
    public double[] times() {
        return t;
    }

    /** Smoothed values. */
    public double[] values() {
        return value;
    }

    /** First derivative. */
    public double[] rates() {
        return rate;
    }

    /** Second derivative. */
    public double[] accelerations() {
        return acceleration;
    }

    /** 68 % uncertainty of the values. */
    public double[] valueSds() {
        return valueSd;
    }

    /** 68 % uncertainty of the first derivative. */
    public double[] rateSds() {
        return rateSd;
    }

    /** 68 % uncertainty of the second derivative. */
    public double[] accelerationSds() {
        return accelerationSd;
    }

    /** By how much the samples scatter more (above 1) or less (under 1) than their stated uncertainties. */
    public double noiseScale() {
        return noiseScale;
    }

    /** Values between samples. */
    public SmoothCurve valueCurve() {
        return new SmoothCurve(t, value, rate);
    }

    /** First derivative between samples. */
    public SmoothCurve rateCurve() {
        return new SmoothCurve(t, rate, acceleration);
    }

    /** The smoothed series itself as a path. */
    public Path path() {
        return new Path(valueCurve(), rateCurve());
    }

    /** A path drawn at random from what the samples allow; the same seed gives the same path. */
    public Path draw(long seed) {
        return drawing.apply(seed);
    }

    static double[] column(double[][] states, int c) {
        double[] out = new double[states.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = states[i][c];
        }
        return out;
    }
}
