package bendline.signal;

/** How a hidden state moves from one sample to the next. The first component is what is measured. */
interface StateModel {

    /** Components of the state. */
    int size();

    /** Transition over a step {@code dt}, {@code [row][column]}. */
    double[][] transition(double dt);

    /** Covariance of what the step adds at random, for unit strength. */
    double[][] noise(double dt);

    /**
     * A quantity whose {@code size − 1}-th derivative is driven by white noise: its derivatives are the state. With size 3 the
     * smoothed path is the quintic smoothing spline.
     */
    static StateModel integratedNoise(int size) {
        return new StateModel() {
            @Override
            public int size() {
                return size;
            }

            @Override
            public double[][] transition(double dt) {
                double[][] f = new double[size][size];
                for (int i = 0; i < size; i++) {
                    double term = 1;
                    for (int j = i; j < size; j++) {
                        f[i][j] = term;
                        term *= dt / (j - i + 1);
                    }
                }
                return f;
            }

            @Override
            public double[][] noise(double dt) {
                double[][] q = new double[size][size];
                for (int i = 0; i < size; i++) {
                    for (int j = 0; j < size; j++) {
                        int a = size - 1 - i;
                        int b = size - 1 - j;
                        q[i][j] = Math.pow(dt, a + b + 1) / ((a + b + 1) * factorial(a) * factorial(b));
                    }
                }
                return q;
            }
        };
    }

    private static double factorial(int n) {
        double f = 1;
        for (int i = 2; i <= n; i++) {
            f *= i;
        }
        return f;
    }
}
