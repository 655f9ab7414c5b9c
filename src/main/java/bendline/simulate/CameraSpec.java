package bendline.simulate;

/**
 * The phone that films, on the side of the angler from which the cast goes across the picture.
 *
 * @param width upright picture, pixels, even, 160 to 3840
 * @param height upright picture, pixels, even, 160 to 3840
 * @param rotationDegrees clockwise turn that the file asks a player to make: 0, 90, 180 or 270; the stored picture is
 *     turned the other way
 * @param captureFps frames per second of real time, 10 to 480
 * @param storedFps frames per second as played, 10 to 480; below the capture rate for slow motion
 * @param exposureSeconds how long each frame gathers light, 0.0001 s up to the time between frames
 * @param focalPx focal length in pixels, 200 to 6000
 * @param distanceM camera to the plane of the cast along the view, metres, 4 to 40
 * @param heightM camera above the ground, metres, 0.2 to 4
 * @param yawDeg how far the camera stands round towards the water from square to the plane, −30 to 30; negative behind
 * @param aimXM where the middle of the picture lies in the plane, metres towards the water, −4 to 6
 * @param aimYM where the middle of the picture lies in the plane, metres above ground, 0 to 6
 * @param rollDeg tilt of the horizon, −5 to 5
 * @param shake hand shake: 0 for a tripod, 1 for a calm hand, 30 for one that sways by 25 px a frame, up to 40
 * @param noise sensor noise, standard deviation in grey levels of 255 at middle grey, 0 to 20
 * @param gainDrift how much the brightness drifts over the clip, as a fraction, 0 to 0.5
 * @param bitsPerSecond of the H.264 stream, 200 000 to 100 000 000
 */
public record CameraSpec(
        int width,
        int height,
        int rotationDegrees,
        double captureFps,
        double storedFps,
        double exposureSeconds,
        double focalPx,
        double distanceM,
        double heightM,
        double yawDeg,
        double aimXM,
        double aimYM,
        double rollDeg,
        double shake,
        double noise,
        double gainDrift,
        int bitsPerSecond) {

    /** Checks the ranges. */
    public CameraSpec {
        Ranges.check("picture width (px)", width, 160, 3840);
        Ranges.check("picture height (px)", height, 160, 3840);
        if (width % 2 != 0 || height % 2 != 0) {
            throw new IllegalArgumentException("picture sizes must be even, got " + width + "x" + height);
        }
        if (rotationDegrees < 0 || rotationDegrees > 270 || rotationDegrees % 90 != 0) {
            throw new IllegalArgumentException("rotation must be 0, 90, 180 or 270 degrees, got " + rotationDegrees);
        }
        Ranges.check("capture rate (fps)", captureFps, 10, 480);
        Ranges.check("stored rate (fps)", storedFps, 10, 480);
        Ranges.check("exposure (s)", exposureSeconds, 0.0001, 1 / captureFps);
        Ranges.check("focal length (px)", focalPx, 200, 6000);
        Ranges.check("camera distance (m)", distanceM, 4, 40);
        Ranges.check("camera height (m)", heightM, 0.2, 4);
        Ranges.check("yaw (deg)", yawDeg, -30, 30);
        Ranges.check("aim x (m)", aimXM, -4, 6);
        Ranges.check("aim y (m)", aimYM, 0, 6);
        Ranges.check("roll (deg)", rollDeg, -5, 5);
        Ranges.check("shake", shake, 0, 40);
        Ranges.check("noise (grey levels)", noise, 0, 20);
        Ranges.check("gain drift", gainDrift, 0, 0.5);
        Ranges.check("bit rate (bits/s)", bitsPerSecond, 200_000, 100_000_000);
    }

    /** A phone on a tripod, square to the cast: 1080p, 60 frames a second, exposed for 1/400 s. */
    public static CameraSpec tripod1080p60() {
        return new CameraSpec(
                1920, 1080, 0, 60, 60, 0.0025, 1510, 11.8, 1.5, 0, 0.35, 2.75, 0, 0, 2.0, 0.02, 12_000_000);
    }

    /** Stored time over real time: 1 for a clip in real time, above 1 for slow motion. */
    public double slowMotionFactor() {
        return captureFps / storedFps;
    }
}
