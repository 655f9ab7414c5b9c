package bendline.simulate;

import bendline.geometry.Homography;
import bendline.geometry.Point;

/**
 * How a hand-held phone turns and moves: sums of sines at uneven rates, slow drift large and tremor small, from a seed.
 * Turning moves the whole picture by a homography; moving shifts near things against far ones.
 */
final class HandShake {

    private static final double[] HZ = {0.13, 0.29, 0.53, 0.97, 1.9, 3.7, 6.3, 8.9};
    /** Half-widths in radians for a calm hand. */
    private static final double[] TURN = {3.2e-3, 2.4e-3, 1.6e-3, 0.9e-3, 0.45e-3, 0.22e-3, 0.14e-3, 0.10e-3};
    /** Half-widths in metres for a calm hand. */
    private static final double[] MOVE = {6e-3, 4e-3, 2.5e-3, 1.2e-3, 0.5e-3, 0.1e-3, 0, 0};

    private final double size;
    private final double[] phase = new double[6 * HZ.length];
    private final CameraSpec camera;

    HandShake(CameraSpec camera, long seed) {
        this.camera = camera;
        this.size = camera.shake();
        java.util.Random random = new java.util.Random(seed ^ 0x5eedL);
        for (int i = 0; i < phase.length; i++) {
            phase[i] = random.nextDouble() * 2 * Math.PI;
        }
    }

    /** Where the pixels of the still picture lie in the picture at a real time in seconds; identity at time 0. */
    Homography stillToPicture(double t) {
        if (size == 0) {
            return Homography.IDENTITY;
        }
        double yaw = wobble(t, 0, TURN);
        double pitch = wobble(t, 1, TURN);
        double roll = 0.6 * wobble(t, 2, TURN);
        double f = camera.focalPx();
        Homography centre = Homography.shift(-camera.width() / 2.0, -camera.height() / 2.0);
        Homography turn = turned(yaw, pitch, roll, f);
        return centre.then(turn).then(Homography.shift(camera.width() / 2.0, camera.height() / 2.0));
    }

    /** K·R·K⁻¹ for a small turn, about the middle of the picture. */
    private static Homography turned(double yaw, double pitch, double roll, double f) {
        double cy = Math.cos(yaw);
        double sy = Math.sin(yaw);
        double cp = Math.cos(pitch);
        double sp = Math.sin(pitch);
        double cr = Math.cos(roll);
        double sr = Math.sin(roll);
        double[][] m = {
            {cr * cy + sr * sp * sy, sr * cp, -cr * sy + sr * sp * cy},
            {-sr * cy + cr * sp * sy, cr * cp, sr * sy + cr * sp * cy},
            {cp * sy, -sp, cp * cy}
        };
        double w = m[2][2];
        return new Homography(
                m[0][0] / w,
                m[0][1] / w,
                m[0][2] * f / w,
                m[1][0] / w,
                m[1][1] / w,
                m[1][2] * f / w,
                m[2][0] / f / w,
                m[2][1] / f / w);
    }

    /** How far the camera has moved at a real time, metres in scene axes. */
    double[] moved(double t) {
        return new double[] {wobble(t, 3, MOVE), wobble(t, 4, MOVE), wobble(t, 5, MOVE)};
    }

    private double wobble(double t, int channel, double[] half) {
        double sum = 0;
        for (int i = 0; i < HZ.length; i++) {
            double p = phase[channel * HZ.length + i];
            sum += half[i] * (Math.sin(2 * Math.PI * HZ[i] * t + p) - Math.sin(p));
        }
        return size * sum;
    }

    /** Largest way in pixels that a corner of the picture goes over the clip; decides how wide the backdrop must be. */
    double largestShift(double seconds) {
        double most = 0;
        double w = camera.width();
        double h = camera.height();
        Point[] corners = {new Point(0, 0), new Point(w, 0), new Point(0, h), new Point(w, h)};
        for (double t = 0; t <= seconds; t += 0.01) {
            Homography map = stillToPicture(t);
            for (Point c : corners) {
                most = Math.max(most, map.apply(c).distance(c));
            }
        }
        return most;
    }
}
