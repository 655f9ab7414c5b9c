package bendline.trace;

import bendline.geometry.Point;

/**
 * A compact moving thing.
 *
 * @param centre weighted by strength, pixels
 * @param mass summed strength, noise units
 * @param lengthPx full length along its longer axis: the streak of a fast one
 * @param widthPx full length across
 */
record Blob(Point centre, double mass, double lengthPx, double widthPx) {}
