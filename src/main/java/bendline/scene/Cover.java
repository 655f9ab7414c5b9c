package bendline.scene;

import bendline.geometry.Point;
import bendline.geometry.Polyline;
import java.util.BitSet;

/**
 * A part of one frame of which it is known that something that moves lies over the background there.
 *
 * @param frame counted from 0
 * @param line along which the thing lies, reference picture, pixels
 * @param halfWidthPx how far to either side of the line it may reach
 */
public record Cover(int frame, Polyline line, double halfWidthPx) {

    private static final double STEP_PX = 2;

    /** The covered pixels of a picture, row by row. */
    BitSet pixels(int width, int height) {
        BitSet out = new BitSet(width * height);
        int steps = (int) Math.ceil(line.length() / STEP_PX);
        int reach = (int) Math.ceil(halfWidthPx);
        for (int k = 0; k <= steps; k++) {
            Point p = line.at(line.length() * k / Math.max(1, steps));
            int column = (int) p.x();
            int from = Math.max(0, column - reach);
            int to = Math.min(width, column + reach + 1);
            for (int y = Math.max(0, (int) p.y() - reach); y < Math.min(height, (int) p.y() + reach + 1); y++) {
                if (from < to) {
                    out.set(y * width + from, y * width + to);
                }
            }
        }
        return out;
    }
}
