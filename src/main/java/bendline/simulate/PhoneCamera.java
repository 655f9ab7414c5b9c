package bendline.simulate;

import bendline.geometry.Point;

/**
 * A pinhole camera. Scene axes: X to the right of a camera square to the plane of the cast, Y up, Z out of the plane
 * towards the camera. Pixels: origin top left, the centre of the first pixel at (0.5, 0.5).
 */
final class PhoneCamera {

    private final double width;
    private final double height;
    private final double focal;
    private final int side;
    private final double[] place;
    private final double[] right;
    private final double[] up;
    private final double[] ahead;
    private final double planeZ;

    /** The still camera of a scenario. */
    PhoneCamera(Scenario scenario) {
        this(scenario, new double[3]);
    }

    /** The same, moved by metres in scene axes without turning. */
    PhoneCamera(Scenario scenario, double[] moved) {
        this(scenario, moved, 0);
    }

    /**
     * The same for what happens in a plane beside that of the cast.
     *
     * @param planeZ how much nearer to the camera that plane lies, metres; negative behind
     */
    PhoneCamera(Scenario scenario, double[] moved, double planeZ) {
        CameraSpec c = scenario.camera();
        this.width = c.width();
        this.height = c.height();
        this.focal = c.focalPx();
        this.planeZ = planeZ;
        this.side = scenario.leftToRight() ? 1 : -1;
        double yaw = Math.toRadians(c.yawDeg()) * side;
        double aimX = side * c.aimXM();
        double rise = c.aimYM() - c.heightM();
        double level = Math.sqrt(Math.max(1, c.distanceM() * c.distanceM() - rise * rise));
        this.place = new double[] {
            aimX + level * Math.sin(yaw) + moved[0], c.heightM() + moved[1], level * Math.cos(yaw) + moved[2]
        };
        double tilt = Math.atan2(rise, level);
        this.ahead = new double[] {-Math.sin(yaw) * Math.cos(tilt), Math.sin(tilt), -Math.cos(yaw) * Math.cos(tilt)};
        double[] flat = {Math.cos(yaw), 0, -Math.sin(yaw)};
        double[] steep = {Math.sin(yaw) * Math.sin(tilt), Math.cos(tilt), Math.cos(yaw) * Math.sin(tilt)};
        double roll = Math.toRadians(c.rollDeg());
        this.right = mix(flat, Math.cos(roll), steep, Math.sin(roll));
        this.up = mix(steep, Math.cos(roll), flat, -Math.sin(roll));
    }

    private static double[] mix(double[] a, double fa, double[] b, double fb) {
        return new double[] {a[0] * fa + b[0] * fb, a[1] * fa + b[1] * fb, a[2] * fa + b[2] * fb};
    }

    /** Where a point of the plane of the cast is seen: metres towards the water and above ground, pixels. */
    Point plane(double x, double y) {
        return scene(side * x, y, planeZ);
    }

    /** Where a point of the scene is seen, pixels. */
    Point scene(double x, double y, double z) {
        double[] d = {x - place[0], y - place[1], z - place[2]};
        double depth = dot(d, ahead);
        return new Point(width / 2 + focal * dot(d, right) / depth, height / 2 - focal * dot(d, up) / depth);
    }

    /** Pixels per metre square to the view at a point of the plane. */
    double pxPerMetre(double x, double y) {
        double[] d = {side * x - place[0], y - place[1], planeZ - place[2]};
        return focal / dot(d, ahead);
    }

    /** Where the view meets the ground at a pixel: scene X and Z in metres, or null at or above the horizon. */
    double[] ground(double px, double py, double level) {
        double a = (px - width / 2) / focal;
        double b = (height / 2 - py) / focal;
        double dy = ahead[1] + a * right[1] + b * up[1];
        if (dy > -1e-6) {
            return null;
        }
        double s = (level - place[1]) / dy;
        return new double[] {
            place[0] + s * (ahead[0] + a * right[0] + b * up[0]), place[2] + s * (ahead[2] + a * right[2] + b * up[2])
        };
    }

    /** Row of the horizon at a column, pixels. */
    double horizon(double px) {
        double a = (px - width / 2) / focal;
        return height / 2 + focal * (ahead[1] + a * right[1]) / up[1];
    }

    /** +1 where the cast goes to the right of the picture, −1 to the left. */
    int side() {
        return side;
    }

    private static double dot(double[] a, double[] b) {
        return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    }
}
