package bendline.rod;

import static org.assertj.core.api.Assertions.assertThat;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.rod.BendReader.Hints;
import bendline.simulate.RodSpec;
import bendline.simulate.StillRod;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Pulls on the simulator's rods, whose laws this package does not share: measured under one weight, read under another pull, at
 * rest. Target: ± 10 %.
 */
public class SimulatedRodTest {

    private static final double SD_M = 0.003;
    private static final int POINTS = 17;

    /** Points as they are read off a picture, with errors of 3 mm each. */
    private static TracedArc seen(RodSpec rod, double butt, Point pull, long seed) {
        Polyline line = new Polyline(StillRod.under(rod, butt, pull));
        Random random = new Random(seed);
        List<Point> points = new ArrayList<>();
        double[] along = new double[POINTS];
        for (int i = 0; i < POINTS; i++) {
            along[i] = line.length() * i / (POINTS - 1);
            points.add(line.at(along[i]).plus(new Point(random.nextGaussian(), random.nextGaussian()).times(SD_M)));
        }
        return new TracedArc(points, along, SD_M, 3 * SD_M);
    }

    /** A picture of the rod under a bottle of water, from the generic blank nearest in length on. */
    public static Blank calibrated(RodSpec rod, double kg, long seed) {
        double free = rod.freeLengthM();
        Point pull = new Point(0, -kg * Stiffness.GRAVITY);
        Blank like = BlankLibrary.like(free, Double.NaN).bending().stretchedTo(free);
        return new StillBend(like, pull).read(seen(rod, 0.5, pull, seed)).blank();
    }

    @ParameterizedTest
    @CsvSource({
        "3.3, 40, 0.5, 8, 2.4",
        "3.6, 60, 0.8, 12, 2.0",
        "3.9, 85, 1.0, 15, 2.6",
        "3.9, 85, 1.0, 25, 2.2",
        "3.9, 85, 1.0, 6, 1.6",
        "4.2, 120, 1.2, 20, 2.4",
        "4.2, 120, 1.2, 35, 2.0"
    })
    void readsAPullAtRestWithinATenth(double length, double made, double kg, double newtons, double from) {
        RodSpec rod = RodSpec.matched(length, 0.62, made);
        Blank blank = calibrated(rod, kg, 3);
        BendReader reader = new BendReader(blank);
        for (int k = 0; k < 4; k++) {
            double butt = 0.6 + 0.5 * k;
            Point pull = Point.direction(butt + from).times(newtons);
            TracedArc arc = seen(rod, butt, pull, 20 + k);
            BendReading read = reader.read(arc, new Hints(StillBend.weight(blank), butt + from, 0.06, null));
            assertThat(Math.abs(read.newtons() / newtons - 1))
                    .as(read.newtons() + " N")
                    .isLessThan(0.10);
            assertThat(Math.abs(read.newtons() - newtons)).isLessThan(3 * read.newtonsSd());
        }
    }
}
