package bendline.signal;

/**
 * A polynomial fitted to samples by weighted least squares, about an origin.
 *
 * @param origin abscissa about which the coefficients are taken
 * @param coefficients power series in (t − origin), constant first
 * @param covariance of the coefficients, {@code [row][column]}, from the samples' own uncertainties
 * @param chiSquare sum of squared residuals over their uncertainties
 * @param points samples used
 */
public record PolynomialFit(double origin, double[] coefficients, double[][] covariance, double chiSquare, int points) {

    /** Degree of the polynomial. */
    public int degree() {
        return coefficients.length - 1;
    }

    /** Degrees of freedom left. */
    public int freedom() {
        return points - coefficients.length;
    }

    /** The fitted value at {@code t}. */
    public double value(double t) {
        return derivative(t, 0);
    }

    /** The {@code order}-th derivative at {@code t}; order 0 is the value. */
    public double derivative(double t, int order) {
        double[] row = row(t - origin, order, coefficients.length);
        double sum = 0;
        for (int i = 0; i < row.length; i++) {
            sum += row[i] * coefficients[i];
        }
        return sum;
    }

    /** 68 % uncertainty of {@link #derivative}, as far as the samples' own uncertainties go. */
    public double sd(double t, int order) {
        double[] row = row(t - origin, order, coefficients.length);
        double sum = 0;
        for (int i = 0; i < row.length; i++) {
            for (int j = 0; j < row.length; j++) {
                sum += row[i] * covariance[i][j] * row[j];
            }
        }
        return Math.sqrt(Math.max(0, sum));
    }

    /**
     * By how much the residuals exceed the stated uncertainties: the square root of chi-square over its degrees of freedom,
     * at least 1; 1 where nothing is left to judge by.
     */
    public double excess() {
        return freedom() > 0 ? Math.max(1, Math.sqrt(chiSquare / freedom())) : 1;
    }

    static double[] row(double u, int order, int terms) {
        double[] row = new double[terms];
        for (int i = order; i < terms; i++) {
            double factor = 1;
            for (int k = 0; k < order; k++) {
                factor *= i - k;
            }
            row[i] = factor * Math.pow(u, i - order);
        }
        return row;
    }
}
