package bendline.benchmark;

import bendline.footage.Footage;
import bendline.footage.Picture;
import bendline.footage.PictureReader;
import bendline.geometry.Point;
import bendline.trace.Trace;
import bendline.trace.Tracked;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Supplier;
import org.bytedeco.opencv.global.opencv_core;
import org.bytedeco.opencv.opencv_core.Mat;

/**
 * General trackers as a yardstick: each is shown the true tip on the first frame in which it is in view and follows it
 * forward to the end of the clip.
 */
final class Baselines {

    private static final Map<String, Supplier<PointTracker>> KINDS = new LinkedHashMap<>();

    static {
        KINDS.put("CSRT", BoxTracker::csrt);
        KINDS.put("KCF", BoxTracker::kcf);
        KINDS.put("LK", FlowTracker::new);
    }

    private Baselines() {}

    /**
     * All of them on one clip, by short name, in one decoding.
     *
     * @param ours the same clip's trace, of which nothing but the tip's place is taken
     */
    static Map<String, PointScore> run(Footage footage, TruthClip truth, Trace ours) {
        Map<String, PointTracker> trackers = new LinkedHashMap<>();
        KINDS.forEach((name, make) -> trackers.put(name, make.get()));
        try {
            return run(trackers, footage, truth, ours);
        } finally {
            trackers.values().forEach(PointTracker::close);
        }
    }

    private static Map<String, PointScore> run(
            Map<String, PointTracker> trackers, Footage footage, TruthClip truth, Trace trace) {
        Map<String, PointScore> out = new LinkedHashMap<>();
        trackers.keySet().forEach(name -> out.put(name, PointScore.NONE));
        boolean started = false;
        try (PictureReader reader = footage.pictures()) {
            for (Picture p = reader.next(); p != null; p = reader.next()) {
                TruthFrame there = truth.at(p.seconds());
                try (Mat frame = mat(p.image())) {
                    if (started) {
                        Tracked tip = trace.inPicture(p.index()).tip();
                        Point ours = tip.seen() ? tip.position() : null;
                        trackers.forEach((name, t) -> {
                            Point found = t.next(frame);
                            out.compute(name, (n, score) -> score.plus(there.tip(), there.tipInView(), found, ours));
                        });
                    } else if (there.tipInView()) {
                        trackers.values().forEach(t -> t.start(frame, there.tip()));
                        started = true;
                    }
                }
            }
        }
        return out;
    }

    private static Mat mat(BufferedImage image) {
        Mat mat = new Mat(image.getHeight(), image.getWidth(), opencv_core.CV_8UC3);
        mat.data().put(((DataBufferByte) image.getRaster().getDataBuffer()).getData());
        return mat;
    }
}
