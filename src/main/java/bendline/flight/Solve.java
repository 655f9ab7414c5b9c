package bendline.flight;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.solvers.BrentSolver;

/** The number at which something that only rises or only falls is nought. */
final class Solve {

    private static final int MOST_ROUNDS = 60;

    private Solve() {}

    /** NaN where it is not nought between the two. */
    static double between(double low, double high, double precision, DoubleUnaryOperator f) {
        double atLow = f.applyAsDouble(low);
        double atHigh = f.applyAsDouble(high);
        if (Double.isNaN(atLow) || Double.isNaN(atHigh) || atLow * atHigh > 0) {
            return Double.NaN;
        }
        return new BrentSolver(precision).solve(MOST_ROUNDS, f::applyAsDouble, low, high);
    }
}
