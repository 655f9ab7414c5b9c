package bendline.body;

import bendline.geometry.Point;

/**
 * Where the rod is held in one frame, reference-picture pixels.
 *
 * @param frame decoded frames counted from 0
 * @param grip the upper hand on the rod
 * @param butt unit vector from the grip towards the butt cap
 */
public record HeldRod(int frame, Point grip, Point butt) {}
