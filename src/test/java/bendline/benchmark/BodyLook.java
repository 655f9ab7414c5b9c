package bendline.benchmark;

import bendline.body.BodyFollower;
import bendline.body.BodySight;
import bendline.body.BodyTrace;
import bendline.body.Joint;
import bendline.footage.ClipInfo;
import bendline.footage.Footage;
import bendline.geometry.Homography;
import bendline.geometry.Point;
import bendline.scene.CameraMotion;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;

/** How far a followed body lies from the joints that a person saw. */
public final class BodyLook {

    private BodyLook() {}

    /**
     * Errors of one clip.
     *
     * @param byJoint distances over the person's height, per joint, for every labelled joint
     * @param asked labelled frames
     * @param found those in which the body was followed
     * @param inside share of the joints within their stated radius
     * @param looked frames looked at
     */
    public record Score(Map<Joint, List<Double>> byJoint, int asked, int found, double inside, int looked) {

        /** All joints' errors, sorted. */
        public List<Double> errors() {
            List<Double> all = new ArrayList<>();
            byJoint.values().forEach(all::addAll);
            Collections.sort(all);
            return all;
        }

        /** A quantile of all errors. */
        public double quantile(double q) {
            List<Double> all = errors();
            return all.isEmpty() ? Double.NaN : all.get((int) (q * (all.size() - 1)));
        }
    }

    /**
     * Follows the one person of a clip and scores the labelled frames.
     *
     * @param step besides the labelled frames so many-th are looked at
     */
    public static Score score(Path clip, BodyLabels labels, int step) {
        return score(follow(Footage.open(clip), labels, step), labels);
    }

    /** The person of a clip, camera motion not taken out. */
    static BodyTrace follow(Footage footage, BodyLabels labels, int step) {
        ClipInfo info = footage.survey(done -> {});
        CameraMotion still = new CameraMotion(
                info.times().stream().map(t -> Homography.IDENTITY).toList(), 0, false);
        TreeSet<Integer> frames = new TreeSet<>();
        for (int i = 0; i < info.frames(); i += step) {
            frames.add(i);
        }
        labels.frames().forEach(l -> frames.add(l.frame()));
        return BodyFollower.anyone(footage, still).follow(frames, done -> {});
    }

    static Score score(BodyTrace trace, BodyLabels labels) {
        Map<Joint, List<Double>> by = new TreeMap<>();
        int found = 0;
        int inside = 0;
        int all = 0;
        for (BodyLabels.Label label : labels.frames()) {
            BodySight sight = trace.at(label.frame());
            if (sight == null) {
                continue;
            }
            found++;
            for (Map.Entry<Joint, Point> e : label.joints().entrySet()) {
                double off = sight.joint(e.getKey()).place().distance(e.getValue());
                by.computeIfAbsent(e.getKey(), k -> new ArrayList<>()).add(off / label.heightPx());
                inside += off <= sight.joint(e.getKey()).sdPx() ? 1 : 0;
                all++;
            }
        }
        return new Score(
                by, labels.frames().size(), found, all == 0 ? Double.NaN : (double) inside / all, trace.asked());
    }

    /** Prints the errors of clips: CLIP LABELS … */
    public static void main(String[] args) throws Exception {
        for (int i = 0; i + 1 < args.length; i += 2) {
            Score s = score(Path.of(args[i]), BodyLabels.read(args[i + 1]), 1);
            System.out.printf(
                    "%s: %d of %d frames, median %.4f, 90 %% %.4f, within sd %.2f%n",
                    args[i + 1], s.found(), s.asked(), s.quantile(0.5), s.quantile(0.9), s.inside());
            s.byJoint().forEach((j, e) -> {
                Collections.sort(e);
                System.out.printf(
                        "   %-15s %2d  median %.4f  worst %.4f%n",
                        j.id(), e.size(), e.get(e.size() / 2), e.get(e.size() - 1));
            });
        }
    }
}
