package bendline.benchmark;

import bendline.geometry.Point;
import java.util.function.Supplier;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.opencv.opencv_core.Rect;
import org.bytedeco.opencv.opencv_tracking.TrackerCSRT;
import org.bytedeco.opencv.opencv_tracking.TrackerKCF;
import org.bytedeco.opencv.opencv_video.Tracker;
import org.jspecify.annotations.Nullable;

/** OpenCV's box trackers with their own defaults, on a square box centred on the point. */
final class BoxTracker implements PointTracker {

    /** A box smaller than this gives the trackers too little to hold on to. */
    private static final int SMALLEST_BOX_PX = 24;

    /** Box side as a share of the picture's height: 36 px at 1080p. */
    private static final double BOX_SHARE = 1 / 30.0;

    private final Supplier<Tracker> make;
    private final Rect box = new Rect();
    private @Nullable Tracker tracker;
    private Point offset = new Point(0, 0);

    private BoxTracker(Supplier<Tracker> make) {
        this.make = make;
    }

    static BoxTracker csrt() {
        return new BoxTracker(TrackerCSRT::create);
    }

    static BoxTracker kcf() {
        return new BoxTracker(TrackerKCF::create);
    }

    @Override
    public void start(Mat frame, Point point) {
        int side = Math.max(SMALLEST_BOX_PX, (int) Math.round(frame.rows() * BOX_SHARE));
        box.x((int) Math.round(point.x() - side / 2.0));
        box.y((int) Math.round(point.y() - side / 2.0));
        box.width(side);
        box.height(side);
        offset = point.minus(centre());
        tracker = make.get();
        tracker.init(frame, box);
    }

    @Override
    public @Nullable Point next(Mat frame) {
        if (tracker == null) {
            throw new IllegalStateException("not started");
        }
        return tracker.update(frame, box) ? centre().plus(offset) : null;
    }

    private Point centre() {
        return new Point(box.x() + box.width() / 2.0, box.y() + box.height() / 2.0);
    }

    @Override
    public void close() {
        if (tracker != null) {
            tracker.close();
        }
        box.close();
    }
}
