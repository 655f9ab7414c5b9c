package bendline.stroke;

import bendline.stroke.ColouredBob.Place;
import java.util.List;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresBuilder;
import org.apache.commons.math3.fitting.leastsquares.LevenbergMarquardtOptimizer;
import org.apache.commons.math3.fitting.leastsquares.MultivariateJacobianFunction;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.util.Pair;

/**
 * How the falling ball's place in the picture and the height it has fallen are related. The wall is seen at a slant, so that a
 * metre is shorter lower down, as in any perspective: {@code y = (held + stretch·q) / (1 + narrowing·q)} with {@code q} the squared
 * clip time since the release, which a constant acceleration makes proportional to the height. How strong that
 * acceleration is stays open: it follows from the known height of the whole fall.
 *
 * @param held place in the picture of the ball in the hand, pixels
 * @param stretch pixels a squared second
 * @param narrowing a squared second
 */
public record SlantedFall(double held, double stretch, double narrowing) {

    /** From the hand to the floor, as measured by the clip's maker. */
    public static final double HEIGHT_M = 2.28;

    /** Place in the picture of a ball that touches the floor. */
    public static final double FLOOR = 1640;

    /** Places from the first on in which the ball is certainly still held, and from which on it certainly falls. */
    private static final int HELD = 12;

    private static final int FALLING = 25;

    /** Fits the perspective to the places of a fall. */
    public static SlantedFall of(ColouredBob ball) {
        double held = ball.places().stream()
                .limit(HELD)
                .mapToDouble(Place::y)
                .average()
                .orElseThrow();
        List<Place> fall = ball.places().subList(FALLING, ball.places().size());
        RealVector p = new LevenbergMarquardtOptimizer()
                .optimize(new LeastSquaresBuilder()
                        .start(new double[] {fall.get(0).seconds() - 0.3, 200, 0})
                        .model(model(fall, held))
                        .target(fall.stream().mapToDouble(Place::y).toArray())
                        .maxEvaluations(500)
                        .maxIterations(500)
                        .build())
                .getPoint();
        return new SlantedFall(held, p.getEntry(1), p.getEntry(2));
    }

    private static MultivariateJacobianFunction model(List<Place> fall, double held) {
        int n = fall.size();
        return p -> {
            RealVector values = new ArrayRealVector(n);
            Array2DRowRealMatrix slopes = new Array2DRowRealMatrix(n, 3);
            for (int i = 0; i < n; i++) {
                double tau = fall.get(i).seconds() - p.getEntry(0);
                double q = tau * tau;
                double bottom = 1 + p.getEntry(2) * q;
                double top = held + p.getEntry(1) * q;
                values.setEntry(i, top / bottom);
                double byQ = (p.getEntry(1) * bottom - top * p.getEntry(2)) / (bottom * bottom);
                slopes.setEntry(i, 0, -2 * tau * byQ);
                slopes.setEntry(i, 1, q / bottom);
                slopes.setEntry(i, 2, -top * q / (bottom * bottom));
            }
            return new Pair<>(values, slopes);
        };
    }

    /** How long the ball needs from the hand to the floor, clip time. */
    public double seconds() {
        return Math.sqrt(squaredSeconds(FLOOR));
    }

    /** The fall as a camera square to the wall would see it: hand and floor where they are, between them all metres alike. */
    public ColouredBob squared(ColouredBob ball) {
        double scale = (FLOOR - held) / squaredSeconds(FLOOR);
        return ball.seen(ball.places().stream()
                .map(p -> new Place(p.seconds(), p.x(), held + scale * squaredSeconds(p.y())))
                .toList());
    }

    private double squaredSeconds(double y) {
        return (y - held) / (stretch - narrowing * y);
    }
}
