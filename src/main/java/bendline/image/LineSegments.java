package bendline.image;

import bendline.geometry.Point;
import java.util.ArrayList;
import java.util.List;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.indexer.FloatRawIndexer;
import org.bytedeco.opencv.global.opencv_core;
import org.bytedeco.opencv.global.opencv_imgproc;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.opencv.opencv_imgproc.LineSegmentDetector;

/** Straight pieces of edges in a grey plane. */
public final class LineSegments {

    private LineSegments() {}

    /**
     * A straight piece.
     *
     * @param from one end, pixels
     * @param to other end, pixels
     */
    public record Segment(Point from, Point to) {

        /** Length, pixels. */
        public double length() {
            return from.distance(to);
        }
    }

    /** All straight pieces of at least a length. */
    public static List<Segment> find(Luma picture, double minLengthPx) {
        try (BytePointer bytes = new BytePointer(picture.pixels());
                Mat image = new Mat(picture.height(), picture.width(), opencv_core.CV_8UC1, bytes);
                Mat lines = new Mat();
                LineSegmentDetector detector = opencv_imgproc.createLineSegmentDetector()) {
            detector.detect(image, lines);
            List<Segment> out = new ArrayList<>();
            if (lines.empty()) {
                return out;
            }
            try (FloatRawIndexer at = lines.createIndexer()) {
                for (int i = 0; i < lines.rows(); i++) {
                    Segment s = new Segment(
                            new Point(at.get(i, 0, 0) + 0.5, at.get(i, 0, 1) + 0.5),
                            new Point(at.get(i, 0, 2) + 0.5, at.get(i, 0, 3) + 0.5));
                    if (s.length() >= minLengthPx) {
                        out.add(s);
                    }
                }
            }
            return out;
        }
    }
}
