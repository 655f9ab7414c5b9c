package bendline.trace;

import bendline.geometry.Point;

/**
 * A compact moving thing.
 *
 * @param centre weighted by strength, pixels
 * @param mass summed strength, noise units
 * @param lengthPx full length along its longer axis: the streak of a fast one
 * @param widthPx full length across
 * @param lineEnd whether it is no thing that is seen but the place where the line from the tip ends
 */
record Blob(Point centre, double mass, double lengthPx, double widthPx, boolean lineEnd) {

    Blob(Point centre, double mass, double lengthPx, double widthPx) {
        this(centre, mass, lengthPx, widthPx, false);
    }
}
