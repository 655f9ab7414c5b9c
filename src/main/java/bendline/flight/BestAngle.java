package bendline.flight;

import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;
import org.apache.commons.math3.optim.univariate.UnivariatePointValuePair;

/**
 * The angle at which a shot goes farthest, its speed being the same at every angle.
 *
 * @param angleRad above level
 * @param distanceM at that angle, without the clip
 */
public record BestAngle(double angleRad, double distanceM) {

    private static final double FLATTEST = Math.toRadians(5);
    private static final double STEEPEST = Math.toRadians(65);

    /** A hundredth of a degree is finer than anyone throws. */
    private static final double PRECISION = 2e-4;

    private static final int MOST_FLIGHTS = 100;

    private static final Flyer FLYER = Flyer.quick();

    /** Of a shot; its own angle and its clip don't matter. */
    public static BestAngle of(Shot shot) {
        UnivariatePointValuePair best = new BrentOptimizer(1e-4, PRECISION)
                .optimize(
                        new MaxEval(MOST_FLIGHTS),
                        new UnivariateObjectiveFunction(a -> distance(shot, a)),
                        GoalType.MAXIMIZE,
                        new SearchInterval(FLATTEST, STEEPEST, Math.toRadians(38)));
        return new BestAngle(best.getPoint(), best.getValue());
    }

    /** The angles on either side of the best at which so large a share of its distance is given up, flat one first, radians. */
    public double[] range(Shot shot, double share) {
        double wanted = (1 - share) * distanceM;
        return new double[] {
            edge(shot, wanted, FLATTEST), edge(shot, wanted, STEEPEST),
        };
    }

    private double edge(Shot shot, double wanted, double end) {
        if (distance(shot, end) > wanted) {
            return end;
        }
        return new BrentSolver(1e-3)
                .solve(MOST_FLIGHTS, a -> distance(shot, a) - wanted, Math.min(end, angleRad), Math.max(end, angleRad));
    }

    private static double distance(Shot shot, double angle) {
        Shot free = shot.with(shot.tackle().clippedAt(Double.POSITIVE_INFINITY));
        return FLYER.fly(free.with(shot.start().atAngle(angle))).distanceM();
    }
}
