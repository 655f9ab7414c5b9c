package bendline.image;

import bendline.geometry.Homography;
import bendline.geometry.Point;
import java.util.ArrayList;
import java.util.List;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.indexer.FloatRawIndexer;
import org.bytedeco.javacpp.indexer.UByteRawIndexer;
import org.bytedeco.opencv.global.opencv_calib3d;
import org.bytedeco.opencv.global.opencv_core;
import org.bytedeco.opencv.global.opencv_imgproc;
import org.bytedeco.opencv.global.opencv_video;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.opencv.opencv_core.Size;
import org.bytedeco.opencv.opencv_core.TermCriteria;
import org.jspecify.annotations.Nullable;

/** Corners of a background and where they went. */
public final class PointFlow {

    /** Forward-backward disagreement above which a followed corner is dropped, pixels. */
    private static final double ROUND_TRIP_PX = 0.7;

    private static final int WINDOW_PX = 15;
    private static final int LEVELS = 3;

    static {
        // Newer processors add up in another order: with their instructions the same clip ends in other figures on
        // another computer.
        opencv_core.setUseOptimized(false);
    }

    private PointFlow() {}

    /**
     * A robust map between two pictures.
     *
     * @param map from the first picture to the second
     * @param inliers corners that agree with it
     * @param offered corners that could be followed
     */
    public record Fit(Homography map, int inliers, int offered) {}

    /** Corners spread over the picture: the strongest of each cell of a grid, at most {@code count}. */
    public static List<Point> corners(Luma picture, int count) {
        try (BytePointer bytes = new BytePointer(picture.pixels());
                Mat image = new Mat(picture.height(), picture.width(), opencv_core.CV_8UC1, bytes);
                Mat found = new Mat();
                Mat everywhere = new Mat()) {
            double spacing = Math.sqrt((double) picture.width() * picture.height() / count) * 0.6;
            opencv_imgproc.goodFeaturesToTrack(image, found, count, 0.002, spacing, everywhere, 5, false, 0.04);
            return found.empty() ? List.of() : read(found);
        }
    }

    /**
     * Follows corners from one picture to another and fits the map most of them share.
     *
     * @param guess where the corners are expected: first picture to second
     * @return null if fewer than eight corners could be followed or no map fits
     */
    public static @Nullable Fit fit(Luma first, Luma second, List<Point> corners, Homography guess) {
        if (corners.size() < 8) {
            return null;
        }
        try (BytePointer bytesA = new BytePointer(first.pixels());
                BytePointer bytesB = new BytePointer(second.pixels());
                Mat a = new Mat(first.height(), first.width(), opencv_core.CV_8UC1, bytesA);
                Mat b = new Mat(second.height(), second.width(), opencv_core.CV_8UC1, bytesB);
                Mat from = write(corners);
                Mat to = write(corners.stream().map(guess::apply).toList());
                Mat back = from.clone();
                Mat okThere = new Mat();
                Mat okBack = new Mat();
                Mat error = new Mat();
                Size window = new Size(WINDOW_PX, WINDOW_PX);
                TermCriteria enough = new TermCriteria(TermCriteria.COUNT + TermCriteria.EPS, 12, 0.02)) {
            int flags = opencv_video.OPTFLOW_USE_INITIAL_FLOW;
            opencv_video.calcOpticalFlowPyrLK(a, b, from, to, okThere, error, window, LEVELS, enough, flags, 1e-4);
            opencv_video.calcOpticalFlowPyrLK(b, a, to, back, okBack, error, window, LEVELS, enough, flags, 1e-4);
            List<Point> was = new ArrayList<>();
            List<Point> is = new ArrayList<>();
            keepRoundTrips(from, to, back, okThere, okBack, was, is);
            return was.size() < 8 ? null : robust(was, is);
        }
    }

    private static void keepRoundTrips(
            Mat from, Mat to, Mat back, Mat okThere, Mat okBack, List<Point> was, List<Point> is) {
        List<Point> start = read(from);
        List<Point> end = read(to);
        List<Point> again = read(back);
        try (UByteRawIndexer there = okThere.createIndexer();
                UByteRawIndexer home = okBack.createIndexer()) {
            for (int i = 0; i < start.size(); i++) {
                if (there.get(i) == 1 && home.get(i) == 1 && start.get(i).distance(again.get(i)) < ROUND_TRIP_PX) {
                    was.add(start.get(i));
                    is.add(end.get(i));
                }
            }
        }
    }

    private static @Nullable Fit robust(List<Point> was, List<Point> is) {
        try (Mat from = write(was);
                Mat to = write(is);
                Mat inliers = new Mat();
                Mat map = opencv_calib3d.findHomography(from, to, opencv_calib3d.RANSAC, 0.8, inliers, 300, 0.99)) {
            if (map == null || map.empty()) {
                return null;
            }
            try (var m = (org.bytedeco.javacpp.indexer.DoubleRawIndexer) map.createIndexer()) {
                double s = m.get(2, 2);
                Homography found = new Homography(
                        m.get(0, 0) / s,
                        m.get(0, 1) / s,
                        m.get(0, 2) / s,
                        m.get(1, 0) / s,
                        m.get(1, 1) / s,
                        m.get(1, 2) / s,
                        m.get(2, 0) / s,
                        m.get(2, 1) / s);
                Homography ours = Homography.shift(-0.5, -0.5).then(found).then(Homography.shift(0.5, 0.5));
                return new Fit(ours, opencv_core.countNonZero(inliers), was.size());
            }
        }
    }

    private static Mat write(List<Point> points) {
        Mat mat = new Mat(points.size(), 1, opencv_core.CV_32FC2);
        try (FloatRawIndexer at = mat.createIndexer()) {
            for (int i = 0; i < points.size(); i++) {
                at.put(i, 0, 0, (float) (points.get(i).x() - 0.5));
                at.put(i, 0, 1, (float) (points.get(i).y() - 0.5));
            }
        }
        return mat;
    }

    private static List<Point> read(Mat mat) {
        List<Point> out = new ArrayList<>(mat.rows());
        try (FloatRawIndexer at = mat.createIndexer()) {
            for (int i = 0; i < mat.rows(); i++) {
                out.add(new Point(at.get(i, 0, 0) + 0.5, at.get(i, 0, 1) + 0.5));
            }
        }
        return out;
    }
}
