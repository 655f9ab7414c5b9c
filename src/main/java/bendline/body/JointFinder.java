package bendline.body;

import bendline.footage.Frame;
import bendline.geometry.Point;
import java.util.EnumMap;
import java.util.Map;

/** Finds the joints of the person in a square of a frame. Owns native memory: close it. Not thread-safe. */
final class JointFinder implements AutoCloseable {

    private static final int SIZE = 256;
    private static final int POINTS = 39;
    private static final int VALUES = 5;
    private static final int MAP = 64;

    /** Points that are no joints: the middle of the hips and a point on the circle round the body. */
    private static final int HIPS = 33;

    private static final int RIM = 34;

    /** Cells of the likelihood map to each side of a point that refine it, and the likelihood at which they do. */
    private static final int BESIDE = 3;

    private static final double CLEAR = 0.5;

    private final Network network = new Network("person-joints.tflite");
    private final Crop crop = new Crop(SIZE, 0, 1);
    private final float[] points = new float[POINTS * VALUES];
    private final float[] person = new float[1];
    private final float[] maps = new float[MAP * MAP * POINTS];

    /**
     * A person's joints.
     *
     * @param person likelihood that somebody is there, 0 to 1
     * @param joints places in picture pixels and confidences
     * @param region square round the body as these joints have it, where to look in the next frame
     */
    record Body(double person, Map<Joint, Seen> joints, Region region) {}

    /**
     * One joint.
     *
     * @param place picture pixels
     * @param confidence that it shows, 0 to 1
     */
    record Seen(Point place, double confidence) {}

    Body find(Frame frame, Region region) {
        network.run(crop.of(frame, region));
        network.read(0, points);
        network.read(1, person);
        network.read(3, maps);
        Map<Joint, Seen> joints = new EnumMap<>(Joint.class);
        for (Joint j : Joint.values()) {
            double shows = Grain.likelihood(points[j.point() * VALUES + 3]);
            double inside = Grain.likelihood(points[j.point() * VALUES + 4]);
            joints.put(j, new Seen(place(region, j.point()), Math.min(shows, inside)));
        }
        return new Body(Grain.rounded(person[0]), joints, Region.around(place(region, HIPS), place(region, RIM)));
    }

    private Point place(Region region, int point) {
        double u = points[point * VALUES] / SIZE;
        double v = points[point * VALUES + 1] / SIZE;
        Point fine = refined(point, u, v);
        return region.inPicture(Grain.place(fine.x()), Grain.place(fine.y()));
    }

    /** The mean of the likelihood map round a point, which takes off a small bias. */
    private Point refined(int point, double u, double v) {
        int column = (int) (u * MAP);
        int row = (int) (v * MAP);
        if (column < 0 || row < 0 || column >= MAP || row >= MAP) {
            return new Point(u, v);
        }
        double sum = 0;
        double x = 0;
        double y = 0;
        double best = 0;
        for (int r = Math.max(0, row - BESIDE); r <= Math.min(MAP - 1, row + BESIDE); r++) {
            for (int c = Math.max(0, column - BESIDE); c <= Math.min(MAP - 1, column + BESIDE); c++) {
                double p = 1 / (1 + Math.exp(-maps[(r * MAP + c) * POINTS + point]));
                best = Math.max(best, p);
                sum += p;
                x += p * c;
                y += p * r;
            }
        }
        return best < CLEAR ? new Point(u, v) : new Point(x / sum / MAP, y / sum / MAP);
    }

    @Override
    public void close() {
        network.close();
    }
}
