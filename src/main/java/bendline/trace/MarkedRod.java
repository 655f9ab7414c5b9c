package bendline.trace;

import bendline.footage.ClipInfo;
import bendline.footage.Footage;
import bendline.footage.Frame;
import bendline.footage.LumaReader;
import bendline.geometry.Homography;
import bendline.geometry.Point;
import bendline.image.Area;
import bendline.image.Luma;
import bendline.image.Plane;
import bendline.scene.CameraMotion;
import bendline.scene.Mark;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.DoubleSummaryStatistics;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleConsumer;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * A rod that is followed from a user's marks in the pictures themselves. The pictures are kept, so that more marks cost no second
 * decoding, and what was followed from one mark is kept for the next time.
 */
final class MarkedRod implements AutoCloseable {

    /** A traced rod this near to both marks is the one that was meant, as a share of their distance. */
    private static final double NEAR = 0.08;
    /** Found in fewer frames than this share, a rod is better followed from the marks. */
    private static final double MOST = 0.5;
    /** Grey levels to one unit of noise when pictures are searched as they are. */
    private static final float GREY_A_UNIT = 6;

    /** How far from the marked grip pictures are kept, in distances of the marks: the hands wander. */
    private static final double AROUND = 1.6;

    private final ClipInfo info;
    private final CameraMotion motion;
    private final Area area;
    private final DifferenceStore store = new DifferenceStore();
    private final Map<Mark, Optional<MarkFollower.Walk>> walks = new HashMap<>();

    private MarkedRod(ClipInfo info, CameraMotion motion, Area area) {
        this.info = info;
        this.motion = motion;
        this.area = area;
    }

    /** Whether the traced rod runs from mark to mark on the marked frame and was found in most frames. */
    static boolean agrees(Mark mark, Trace trace, ClipInfo info) {
        FrameTrace frame = trace.inPicture(info.frameAt(mark.seconds() + 1e-6));
        long found = trace.frames().stream().filter(f -> f.blank() != null).count();
        if (!trace.foundRod()
                || frame.blank() == null
                || found < MOST * trace.frames().size()) {
            return false;
        }
        double near = NEAR * mark.grip().distance(mark.tip());
        return frame.blank().distanceTo(mark.grip()) < near
                && frame.blank().last().distance(mark.tip()) < near;
    }

    /**
     * Reads the clip once and keeps what surrounds the marks.
     *
     * @param marks with both grip and tip, at least one
     */
    static MarkedRod decode(
            Footage footage, ClipInfo info, CameraMotion motion, List<Mark> marks, DoubleConsumer progress) {
        MarkedRod rod = new MarkedRod(info, motion, needed(info, motion, marks));
        try (LumaReader reader = footage.lumas()) {
            for (Frame f = reader.next(); f != null; f = reader.next()) {
                rod.store.put(f.index(), inUnits(f.luma(), rod.area));
                reader.giveBack(f);
                progress.accept((f.index() + 1.0) / info.frames());
            }
        } catch (RuntimeException e) {
            rod.close();
            throw e;
        }
        return rod;
    }

    /** Whether what is kept of the pictures is enough for these marks. */
    boolean keeps(List<Mark> marks, CameraMotion clip) {
        Area other = needed(info, clip, marks);
        return other.left() >= area.left()
                && other.top() >= area.top()
                && other.left() + other.width() <= area.left() + area.width()
                && other.top() + other.height() <= area.top() + area.height();
    }

    /** The rod followed from the marks, each frame from the one nearest in time, all marks obeyed. */
    Trace trace(List<Mark> marks) {
        List<MarkFollower.Walk> walked = new ArrayList<>(marks.stream()
                .filter(m -> m.grip() != null && m.tip() != null)
                .flatMap(m -> walk(m).stream())
                .toList());
        if (walked.isEmpty()) {
            return Followed.untraced(
                    info, motion, "no line joins the two marks on their frame; mark the grip and the tip anew");
        }
        List<Look> looks = nearest(walked);
        for (Mark mark : marks) {
            Mark completed = completed(mark, looks);
            if (completed != null) {
                walked.addAll(walk(completed).stream().toList());
            }
        }
        looks = nearest(walked);
        double free = walked.get(0).freePx();
        RodLength.Estimate length = new RodLength.Estimate(free, 0.02 * free, 1);
        Tracked noRig = Tracked.notSeen(null, "the rig is looked for only where the background shows");
        List<Tracked> rigs = looks.stream().map(l -> noRig).toList();
        Point origin = new Point(0, 0);
        Trace trace = new TraceBuilder(info, motion, length, origin, true).build(looks, rigs);
        return Followed.obeyed(trace, looks, Pin.of(marks, info, motion, origin), origin);
    }

    /** A mark of one end, its other end where it was followed to; null where there is nothing to complete. */
    private @Nullable Mark completed(Mark mark, List<Look> looks) {
        int t = info.frameAt(mark.seconds() + 1e-6);
        BlankFitter.Fit fit = looks.get(t).chosen();
        if (fit == null || (mark.grip() == null) == (mark.tip() == null)) {
            return null;
        }
        Point grip = mark.grip() == null ? motion.toPicture(t, fit.line().first()) : mark.grip();
        Point tip = mark.tip() == null ? motion.toPicture(t, fit.line().last()) : mark.tip();
        return new Mark(mark.seconds(), grip, tip);
    }

    /** One look a frame, from the walk that started nearest in time of those that show the blank. */
    private List<Look> nearest(List<MarkFollower.Walk> walked) {
        return IntStream.range(0, info.frames())
                .mapToObj(t -> walked.stream()
                        .filter(w -> w.looks().get(t).chosen() != null)
                        .min(Comparator.comparingInt(w -> Math.abs(w.frame() - t)))
                        .orElse(walked.get(0))
                        .looks()
                        .get(t))
                .toList();
    }

    /** From a mark that gives both ends; followed once. */
    private Optional<MarkFollower.Walk> walk(Mark mark) {
        return walks.computeIfAbsent(mark, m -> {
            Point origin = new Point(area.left(), area.top());
            List<Homography> maps = motion.toReference().stream()
                    .map(h -> Homography.shift(origin.x(), origin.y()).then(h))
                    .toList();
            MarkFollower follower = new MarkFollower(store::get, maps, info.times(), info.height());
            int frame = info.frameAt(m.seconds() + 1e-6);
            return Optional.ofNullable(
                    follower.follow(frame, m.grip().minus(origin), m.tip().minus(origin)));
        });
    }

    /** What must be kept of the pictures to have the surroundings of the marks in all of them, however the camera moves. */
    private static Area needed(ClipInfo info, CameraMotion motion, List<Mark> marks) {
        List<Point> corners = new ArrayList<>();
        for (Mark mark : marks) {
            Point grip = motion.toReference(info.frameAt(mark.seconds() + 1e-6), mark.grip());
            double reach = AROUND * mark.grip().distance(mark.tip()) + 40;
            for (int t = 0; t < info.frames(); t++) {
                corners.add(motion.toPicture(t, grip.plus(new Point(-reach, -reach))));
                corners.add(motion.toPicture(t, grip.plus(new Point(reach, reach))));
            }
        }
        DoubleSummaryStatistics x = corners.stream().mapToDouble(Point::x).summaryStatistics();
        DoubleSummaryStatistics y = corners.stream().mapToDouble(Point::y).summaryStatistics();
        int left = (int) Math.max(0, Math.min(info.width() - 16.0, x.getMin()));
        int top = (int) Math.max(0, Math.min(info.height() - 16.0, y.getMin()));
        int right = (int) Math.max(left + 16.0, Math.min(info.width(), x.getMax()));
        int bottom = (int) Math.max(top + 16.0, Math.min(info.height(), y.getMax()));
        return new Area(left, top, right - left, bottom - top);
    }

    private static Plane inUnits(Luma luma, Area area) {
        float[] out = new float[area.width() * area.height()];
        for (int row = 0; row < area.height(); row++) {
            int from = (area.top() + row) * luma.width() + area.left();
            for (int column = 0; column < area.width(); column++) {
                out[row * area.width() + column] = ((luma.pixels()[from + column] & 0xff) - 128) / GREY_A_UNIT;
            }
        }
        return new Plane(area.width(), area.height(), out);
    }

    @Override
    public void close() {
        store.close();
    }
}
