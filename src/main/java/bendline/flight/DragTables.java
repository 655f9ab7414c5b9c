package bendline.flight;

import org.apache.commons.math3.analysis.interpolation.LinearInterpolator;
import org.apache.commons.math3.analysis.polynomials.PolynomialSplineFunction;

/**
 * Published drag coefficients of simple bodies.
 *
 * <p>Cylinders: Matthews, Aeronautical Engineer's Data Book, figure 5.13(b). Sphere: Clift and Gauvin's formula, good up to a
 * Reynolds number of 2e5, where the flow about a smooth sphere turns turbulent.
 */
final class DragTables {

    /** An open cup that faces the stream, the same figure: hemisphere without a bottom. */
    static final double OPEN_CUP = 1.33;

    private static final PolynomialSplineFunction END_ON =
            table(new double[] {0.5, 1, 2, 4, 7}, new double[] {1.15, 0.91, 0.85, 0.87, 0.99});
    private static final PolynomialSplineFunction BROADSIDE =
            table(new double[] {1, 2, 5, 10, 40}, new double[] {0.63, 0.68, 0.74, 0.82, 0.98});

    private DragTables() {}

    private static PolynomialSplineFunction table(double[] x, double[] y) {
        return new LinearInterpolator().interpolate(x, y);
    }

    /** A flat-ended cylinder in a stream along its axis, on the area of its end; 0.5 from Hoerner, the rest as above. */
    static double cylinderEndOn(double lengthOverDiameter) {
        return END_ON.value(Math.max(0.5, Math.min(7, lengthOverDiameter)));
    }

    /** A cylinder across the stream, on length times diameter. */
    static double cylinderBroadside(double lengthOverDiameter) {
        return BROADSIDE.value(Math.max(1, Math.min(40, lengthOverDiameter)));
    }

    /** A smooth sphere, on its frontal area; Clift and Gauvin, Reynolds numbers up to 2e5. */
    static double sphere(double reynolds) {
        return 24 / reynolds * (1 + 0.15 * Math.pow(reynolds, 0.687)) + 0.42 / (1 + 4.25e4 * Math.pow(reynolds, -1.16));
    }
}
