package bendline.simulate;

import bendline.geometry.Point;
import java.util.ArrayList;
import java.util.List;

/** The simulator's rod at rest under a pull: what a still picture shows, in metres from the upper hand, y up. */
public final class StillRod {

    private static final int LINKS = 56;

    private StillRod() {}

    /** Nodes from the upper hand to the tip, bent by the rod's own weight and a force on the tip in newtons. */
    public static List<Point> under(RodSpec rod, double buttRad, Point pull) {
        RodChain chain = new RodChain(rod, LINKS);
        double[] theta = chain.atRest(buttRad, RodChain.GRAVITY, pull.x(), pull.y());
        List<Point> out = new ArrayList<>();
        Point p = new Point(0, 0);
        out.add(p);
        for (double t : theta) {
            p = p.plus(Point.direction(t).times(chain.linkM));
            out.add(p);
        }
        return out;
    }
}
