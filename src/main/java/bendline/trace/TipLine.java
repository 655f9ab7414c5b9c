package bendline.trace;

import bendline.geometry.Point;
import bendline.image.Plane;
import org.jspecify.annotations.Nullable;

/**
 * The line that leads from the tip to the rig, as far as a difference picture shows it: thin, clear of both its sides, and nearly
 * straight. Where a rig can't be told from what lies behind it, its line often can; and a thing beyond which the line goes on is a
 * piece of that line.
 */
final class TipLine {

    /** Half the distance between the sides that a line must stand clear of, pixels. */
    private static final double SIDE_PX = 5;

    /** How much stronger than both sides, noise units. */
    private static final float CLEAR = 1.5f;

    /** Steps along the line, pixels, and directions, radians. */
    private static final double STEP_PX = 3;

    private static final double TURN = Math.toRadians(0.4);
    private static final int DIRECTIONS = (int) Math.round(2 * Math.PI / TURN);

    /** Nearest and farthest that is asked, rod lengths. */
    private static final double FROM = 0.03;

    private static final double TO = 0.75;

    /** What a step without line costs, against one with it. */
    private static final float GAP = 1.5f;

    /** Shortest line that is believed in, rod lengths, and the least share of it that must show. */
    private static final double SHORTEST = 0.08;

    private static final double SHOWN = 0.6;

    /** Share of the places all about that may look like line; where more do, all is flicker. */
    private static final double MOST_CLUTTER = 0.2;

    private final Plane plane;
    private final boolean[] covered;
    private final Point tip;
    private final double rodPx;

    /**
     * @param plane difference from what lies behind, noise units
     * @param covered pixels that belong to blank and hands
     * @param rodPx hand to tip along the blank, pixels
     */
    TipLine(Plane plane, boolean[] covered, Point tip, double rodPx) {
        this.plane = plane;
        this.covered = covered;
        this.tip = tip;
        this.rodPx = rodPx;
    }

    /** Whether a line goes on from beside a thing, away from the tip, for so many pixels. */
    boolean goesOn(Blob thing, double px) {
        Point way = thing.centre().minus(tip);
        double r = way.norm();
        if (r < 1) {
            return false;
        }
        Point u = way.times(1 / r);
        double from = thing.lengthPx() / 2 + 2;
        int shown = 0;
        int asked = 0;
        for (double s = from; s <= from + px; s += 2) {
            asked++;
            shown += lineAt(thing.centre().plus(u.times(s)), u) ? 1 : 0;
        }
        return shown > asked / 2;
    }

    /** Where the line ends, or null where none is seen. */
    @Nullable
    Point end() {
        int first = (int) Math.ceil(FROM * rodPx / STEP_PX);
        int steps = (int) (TO * rodPx / STEP_PX) - first;
        boolean[][] hits = new boolean[steps][DIRECTIONS];
        if (hits(hits, first) > MOST_CLUTTER) {
            return null;
        }
        float[] before = new float[DIRECTIONS];
        int[] seenBefore = new int[DIRECTIONS];
        float most = 0;
        Point end = null;
        for (int i = 0; i < steps; i++) {
            float[] now = new float[DIRECTIONS];
            int[] seen = new int[DIRECTIONS];
            for (int k = 0; k < DIRECTIONS; k++) {
                int left = k == 0 ? DIRECTIONS - 1 : k - 1;
                int right = k + 1 == DIRECTIONS ? 0 : k + 1;
                int from = before[left] > before[k] ? left : k;
                from = before[right] > before[from] ? right : from;
                boolean hit = hits[i][k];
                now[k] = before[from] + (hit ? 1 : -GAP);
                seen[k] = seenBefore[from] + (hit ? 1 : 0);
                if (hit && now[k] > most && seen[k] * STEP_PX > SHORTEST * rodPx && seen[k] > SHOWN * (i + 1)) {
                    most = now[k];
                    end = at((first + i) * STEP_PX, k * TURN);
                }
            }
            before = now;
            seenBefore = seen;
        }
        return end;
    }

    private Point at(double r, double direction) {
        return tip.plus(new Point(r * Math.cos(direction), r * Math.sin(direction)));
    }

    /** Fills in where line is seen; returns the share of such places. */
    private double hits(boolean[][] hits, int first) {
        int count = 0;
        int asked = 0;
        for (int k = 0; k < DIRECTIONS; k++) {
            Point u = new Point(Math.cos(k * TURN), Math.sin(k * TURN));
            for (int i = 0; i < hits.length; i++) {
                Point p = tip.plus(u.times((first + i) * STEP_PX));
                if (inside(p.x(), p.y()) && !covered[index(p.x(), p.y())]) {
                    asked++;
                    hits[i][k] = lineAt(p, u);
                    count += hits[i][k] ? 1 : 0;
                }
            }
        }
        return asked == 0 ? 1 : count / (double) asked;
    }

    private boolean lineAt(Point p, Point along) {
        double nx = -along.y();
        double ny = along.x();
        for (int o = -1; o <= 1; o++) {
            float in = strength(p.x() + o * nx, p.y() + o * ny);
            if (in > CLEAR
                    && in > CLEAR + strength(p.x() + (o + SIDE_PX) * nx, p.y() + (o + SIDE_PX) * ny)
                    && in > CLEAR + strength(p.x() + (o - SIDE_PX) * nx, p.y() + (o - SIDE_PX) * ny)) {
                return true;
            }
        }
        return false;
    }

    private float strength(double x, double y) {
        return inside(x, y) ? Math.abs(plane.values()[index(x, y)]) : 0;
    }

    private boolean inside(double x, double y) {
        return x >= 0 && y >= 0 && x < plane.width() && y < plane.height();
    }

    private int index(double x, double y) {
        return (int) y * plane.width() + (int) x;
    }
}
