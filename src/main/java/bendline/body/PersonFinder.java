package bendline.body;

import bendline.footage.Frame;
import bendline.geometry.Point;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;

/**
 * Finds people in a square of a frame. A person is found where the body is at least a quarter to a third as tall as the square;
 * smaller ones need a smaller square. Owns native memory: close it. Not thread-safe.
 */
final class PersonFinder implements AutoCloseable {

    private static final int SIZE = 224;

    /** Cells a side of the three grids and how often each cell was laid out. */
    private static final int[][] GRIDS = {{28, 2}, {14, 2}, {7, 6}};

    private static final int ANCHORS = 28 * 28 * 2 + 14 * 14 * 2 + 7 * 7 * 6;
    private static final int VALUES = 12;

    /** Likelihood from which a person is believed in. */
    private static final double SURE = 0.5;

    /** Boxes that share more than this of their joint area are the same person. */
    private static final double SAME = 0.3;

    private final double likely;
    private final Network network = new Network("person-detector.tflite");
    private final Crop crop = new Crop(SIZE, -1, 1);
    private final float[] boxes = new float[ANCHORS * VALUES];
    private final float[] scores = new float[ANCHORS];

    PersonFinder() {
        this(SURE);
    }

    /** @param likely likelihood from which somebody is reported, 0 to 1 */
    PersonFinder(double likely) {
        this.likely = likely;
    }

    /**
     * Somebody.
     *
     * @param region square round the whole body, picture pixels
     * @param hips middle of the hips, picture pixels
     * @param shoulders middle of the shoulders, picture pixels
     * @param score likelihood, 0 to 1
     */
    record Person(Region region, Point hips, Point shoulders, double score) {}

    /** One raw answer, in shares of the square searched. */
    private record Box(double score, double x, double y, double w, double h, Point hips, Point rim, Point shoulders) {

        boolean same(Box o) {
            double across = Math.min(x + w / 2, o.x + o.w / 2) - Math.max(x - w / 2, o.x - o.w / 2);
            double down = Math.min(y + h / 2, o.y + o.h / 2) - Math.max(y - h / 2, o.y - o.h / 2);
            double joint = Math.max(0, across) * Math.max(0, down);
            return joint > SAME * (w * h + o.w * o.h - joint);
        }
    }

    /** The people in an upright square, the likeliest first. */
    List<Person> find(Frame frame, Region square) {
        network.run(crop.of(frame, square));
        network.read(0, boxes);
        network.read(1, scores);
        List<Box> all = new ArrayList<>();
        int at = 0;
        for (int[] grid : GRIDS) {
            for (int cell = 0; cell < grid[0] * grid[0]; cell++) {
                for (int k = 0; k < grid[1]; k++, at++) {
                    double score = Grain.likelihood(scores[at]);
                    if (score >= likely) {
                        all.add(box(at, score, (cell % grid[0] + 0.5) / grid[0], (cell / grid[0] + 0.5) / grid[0]));
                    }
                }
            }
        }
        return people(all, square);
    }

    private Box box(int at, double score, double ax, double ay) {
        int i = at * VALUES;
        return new Box(
                score,
                ax + boxes[i] / SIZE,
                ay + boxes[i + 1] / SIZE,
                boxes[i + 2] / SIZE,
                boxes[i + 3] / SIZE,
                at(ax, ay, i + 4),
                at(ax, ay, i + 6),
                at(ax, ay, i + 8));
    }

    /** A place that is told as two differences from a cell, in shares of the square. */
    private Point at(double ax, double ay, int i) {
        return new Point(Grain.place(ax + boxes[i] / SIZE), Grain.place(ay + boxes[i + 1] / SIZE));
    }

    /** Boxes of one person become their mean, weighted by likelihood. */
    private static List<Person> people(List<Box> all, Region square) {
        List<Box> left = new ArrayList<>(all);
        left.sort(Comparator.comparingDouble(Box::score).reversed());
        List<Person> out = new ArrayList<>();
        while (!left.isEmpty()) {
            Box best = left.get(0);
            List<Box> same =
                    left.stream().filter(b -> b == best || b.same(best)).toList();
            left.removeAll(same);
            Point hips = square.inPicture(mean(same, Box::hips));
            Point rim = square.inPicture(mean(same, Box::rim));
            Point shoulders = square.inPicture(mean(same, Box::shoulders));
            out.add(new Person(Region.around(hips, rim), hips, shoulders, best.score()));
        }
        return out;
    }

    private static Point mean(List<Box> boxes, Function<Box, Point> point) {
        double sum = boxes.stream().mapToDouble(Box::score).sum();
        Point out = new Point(0, 0);
        for (Box b : boxes) {
            out = out.plus(point.apply(b).times(b.score() / sum));
        }
        return out;
    }

    @Override
    public void close() {
        network.close();
    }
}
