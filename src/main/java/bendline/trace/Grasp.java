package bendline.trace;

import bendline.geometry.Point;

/**
 * Where a hand holds the rod in a frame, told by something else than the rod.
 *
 * @param frame decoded frames counted from 0
 * @param hand middle of the upper fist, reference-picture pixels
 * @param sdPx 68 % radius of what is uncertain in all frames alike, pixels
 */
public record Grasp(int frame, Point hand, double sdPx) {}
