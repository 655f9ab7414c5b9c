package bendline.benchmark;

import bendline.geometry.Point;
import org.bytedeco.opencv.opencv_core.Mat;
import org.jspecify.annotations.Nullable;

/** A general tracker that is shown a point once and then follows it frame by frame. Not thread-safe; close it. */
interface PointTracker extends AutoCloseable {

    /** Shows the point in a BGR frame. */
    void start(Mat frame, Point point);

    /** Where the point is in the next frame, or null where the tracker itself says that it lost it. */
    @Nullable
    Point next(Mat frame);

    @Override
    void close();
}
