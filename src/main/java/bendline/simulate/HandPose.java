package bendline.simulate;

/**
 * Upper hand and handle at one moment, in the plane of the cast; metres and radians, seconds.
 *
 * @param x upper hand, towards the water, from the middle between the feet
 * @param y upper hand, above the ground
 * @param vx speed of the hand
 * @param vy speed of the hand
 * @param ax acceleration of the hand
 * @param ay acceleration of the hand
 * @param angle butt angle, 0 forward and level, π/2 upright
 * @param rate rate of the butt angle
 */
record HandPose(double x, double y, double vx, double vy, double ax, double ay, double angle, double rate) {}
