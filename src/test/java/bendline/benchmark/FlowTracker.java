package bendline.benchmark;

import bendline.geometry.Point;
import org.bytedeco.javacpp.indexer.FloatIndexer;
import org.bytedeco.opencv.global.opencv_core;
import org.bytedeco.opencv.global.opencv_imgproc;
import org.bytedeco.opencv.global.opencv_video;
import org.bytedeco.opencv.opencv_core.Mat;
import org.jspecify.annotations.Nullable;

/** OpenCV's pyramidal Lucas–Kanade with its own defaults (21 px window, four levels) on one point. */
final class FlowTracker implements PointTracker {

    /** Our pixel centres lie at halves, OpenCV's at whole numbers. */
    private static final double CENTRE = 0.5;

    private final Mat before = new Mat();
    private Point last = new Point(0, 0);

    @Override
    public void start(Mat frame, Point point) {
        opencv_imgproc.cvtColor(frame, before, opencv_imgproc.COLOR_BGR2GRAY);
        last = point;
    }

    @Override
    public @Nullable Point next(Mat frame) {
        try (Mat now = new Mat();
                Mat from = new Mat(1, 1, opencv_core.CV_32FC2);
                Mat to = new Mat();
                Mat status = new Mat();
                Mat error = new Mat()) {
            opencv_imgproc.cvtColor(frame, now, opencv_imgproc.COLOR_BGR2GRAY);
            try (FloatIndexer in = from.createIndexer()) {
                in.put(0, 0, 0, (float) (last.x() - CENTRE));
                in.put(0, 0, 1, (float) (last.y() - CENTRE));
            }
            opencv_video.calcOpticalFlowPyrLK(before, now, from, to, status, error);
            now.copyTo(before);
            if (status.data().get() == 0) {
                return null;
            }
            try (FloatIndexer out = to.createIndexer()) {
                last = new Point(out.get(0, 0, 0) + CENTRE, out.get(0, 0, 1) + CENTRE);
            }
            return last;
        }
    }

    @Override
    public void close() {
        before.close();
    }
}
