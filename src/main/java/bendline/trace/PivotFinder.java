package bendline.trace;

import bendline.geometry.Point;
import bendline.image.LineSegments;
import bendline.image.LineSegments.Segment;
import bendline.image.Luma;
import bendline.image.Plane;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Finds where a moving rod is held without being told: the straight pieces of moving thin things, drawn out beyond their
 * ends, meet near the hands, from many directions over the clip. A post, a mast or a resting rod gives one direction
 * only, a walker gives many but short ones that do not meet.
 */
final class PivotFinder {

    private static final int REDUCTION = 2;
    private static final int CELL_PX = 12;
    private static final int DIRECTIONS = 12;
    /** Votes a direction can earn; more frames in the same direction add nothing, so that a standing rod cannot win. */
    private static final double DIRECTION_CAP = 4;
    /** Noise units that map to full white when the difference is shown to the segment finder. */
    private static final float WHITE_AT = 12;

    private final int width;
    private final int height;
    private final int columns;
    private final int rows;
    private final double reachPx;
    private final float[][] votes;

    /**
     * @param width picture width, pixels
     * @param height picture height, pixels
     * @param reachPx how far a segment may be from the hands, pixels
     */
    PivotFinder(int width, int height, double reachPx) {
        this.width = width;
        this.height = height;
        this.columns = width / CELL_PX + 1;
        this.rows = height / CELL_PX + 1;
        this.reachPx = reachPx;
        this.votes = new float[DIRECTIONS][columns * rows];
    }

    /** Takes one frame's difference from the background, noise units. */
    void add(Plane difference) {
        List<Segment> segments = LineSegments.find(magnitude(difference), 0.03 * height / REDUCTION);
        float[][] frameVotes = new float[DIRECTIONS][];
        for (Segment s : segments) {
            vote(s, frameVotes);
        }
        for (int d = 0; d < DIRECTIONS; d++) {
            if (frameVotes[d] != null) {
                for (int i = 0; i < votes[d].length; i++) {
                    votes[d][i] += frameVotes[d][i];
                }
            }
        }
    }

    /** The places most lines meet, best first, at least a tenth of the picture's height apart. */
    List<Point> best(int count) {
        float[] sum = new float[columns * rows];
        for (float[] direction : votes) {
            for (int i = 0; i < sum.length; i++) {
                sum[i] += (float) Math.min(DIRECTION_CAP, direction[i]);
            }
        }
        float[] smooth = blurred(sum);
        List<Integer> order = new ArrayList<>();
        for (int i = 0; i < smooth.length; i++) {
            order.add(i);
        }
        order.sort(Comparator.comparingDouble(i -> -smooth[i]));
        List<Point> out = new ArrayList<>();
        for (int i : order) {
            Point p = new Point((i % columns + 0.5) * CELL_PX, (i / columns + 0.5) * CELL_PX);
            if (smooth[i] > 0 && out.stream().allMatch(q -> q.distance(p) > 0.1 * height)) {
                out.add(p);
                if (out.size() == count) {
                    break;
                }
            }
        }
        return out;
    }

    private void vote(Segment s, float[][] frameVotes) {
        Point from = s.from().times(REDUCTION);
        Point to = s.to().times(REDUCTION);
        double length = from.distance(to);
        Point unit = to.minus(from).times(1 / length);
        double angle = unit.angle();
        int d = (int) Math.floor((angle < 0 ? angle + Math.PI : angle) / Math.PI * DIRECTIONS) % DIRECTIONS;
        if (frameVotes[d] == null) {
            frameVotes[d] = new float[columns * rows];
        }
        float weight = (float) Math.min(1, length / (0.15 * height));
        for (double t = -reachPx; t <= length + reachPx; t += CELL_PX / 2.0) {
            Point p = from.plus(unit.times(t));
            if (p.x() >= 0 && p.y() >= 0 && p.x() < width && p.y() < height) {
                int cell = (int) (p.y() / CELL_PX) * columns + (int) (p.x() / CELL_PX);
                frameVotes[d][cell] = Math.max(frameVotes[d][cell], weight);
            }
        }
    }

    private Luma magnitude(Plane difference) {
        byte[] out = new byte[difference.values().length];
        for (int i = 0; i < out.length; i++) {
            out[i] = (byte) Math.min(255, Math.abs(difference.values()[i]) * 255 / WHITE_AT);
        }
        return bendline.image.Warp.reduce(new Luma(difference.width(), difference.height(), out), REDUCTION);
    }

    private float[] blurred(float[] in) {
        float[] out = new float[in.length];
        for (int r = 0; r < rows; r++) {
            for (int c = 0; c < columns; c++) {
                float sum = 0;
                int n = 0;
                for (int y = Math.max(0, r - 1); y <= Math.min(rows - 1, r + 1); y++) {
                    for (int x = Math.max(0, c - 1); x <= Math.min(columns - 1, c + 1); x++) {
                        sum += in[y * columns + x];
                        n++;
                    }
                }
                out[r * columns + c] = sum / n;
            }
        }
        return out;
    }
}
