package bendline.trace;

import bendline.footage.ClipInfo;
import bendline.footage.Footage;
import bendline.footage.Frame;
import bendline.footage.LumaReader;
import bendline.geometry.Homography;
import bendline.geometry.Point;
import bendline.image.Area;
import bendline.image.Luma;
import bendline.image.PackedPlane;
import bendline.image.Plane;
import bendline.scene.CameraMotion;
import bendline.scene.Mark;
import bendline.scene.Setup;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.function.DoubleConsumer;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** What a user's marks add: a check on the rod that was found without them, and a start where none was. */
final class MarkedRod {

    /** A traced rod this near to both marks is the one that was meant, as a share of their distance. */
    private static final double NEAR = 0.08;
    /** Found in fewer frames than this share, a rod is better followed from the marks. */
    private static final double MOST = 0.5;
    /** Grey levels to one unit of noise when pictures are searched as they are. */
    private static final float GREY_A_UNIT = 6;

    /** How far from the marked grip pictures are kept, in distances of the marks: the hands wander. */
    private static final double AROUND = 1.6;

    private final ClipInfo info;
    private final Mark mark;

    private MarkedRod(ClipInfo info, Mark mark) {
        this.info = info;
        this.mark = mark;
    }

    /** The first mark that gives both grip and tip, or null. */
    static @Nullable MarkedRod of(ClipInfo info, Setup setup) {
        return setup.marks().stream()
                .filter(m -> m.grip() != null && m.tip() != null)
                .findFirst()
                .map(m -> new MarkedRod(info, m))
                .orElse(null);
    }

    /** Whether the traced rod runs from mark to mark on the marked frame and was found in most frames. */
    boolean agrees(Trace trace) {
        FrameTrace frame = trace.inPicture(frame());
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

    private int frame() {
        return info.frameAt(mark.seconds() + 1e-6);
    }

    /** Follows the rod from the marks. */
    Trace follow(Footage footage, CameraMotion motion, DoubleConsumer progress) {
        int frame = frame();
        Area area = needed(motion);
        Point origin = new Point(area.left(), area.top());
        List<Homography> maps = motion.toReference().stream()
                .map(m -> Homography.shift(origin.x(), origin.y()).then(m))
                .toList();
        try (DifferenceStore store = new DifferenceStore()) {
            try (LumaReader reader = footage.lumas()) {
                for (Frame f = reader.next(); f != null; f = reader.next()) {
                    store.add(PackedPlane.of(inUnits(f.luma(), area)));
                    reader.giveBack(f);
                    progress.accept((f.index() + 1.0) / info.frames());
                }
            }
            MarkFollower.Followed followed = new MarkFollower(store::get, maps, info.times(), info.height())
                    .follow(frame, mark.grip().minus(origin), mark.tip().minus(origin));
            if (followed == null) {
                return RodTracker.nothing(
                        info, motion, "no line joins the two marks on their frame; mark the grip and the tip anew");
            }
            double free = followed.freePx();
            RodLength.Estimate length = new RodLength.Estimate(free, 0.02 * free, 1);
            List<Look> looks = followed.looks();
            Tracked noRig = Tracked.notSeen(null, "the rig is looked for only where the background shows");
            List<Tracked> rigs = looks.stream().map(l -> noRig).toList();
            return new TraceBuilder(info, motion, length, new Point(0, 0), true).build(looks, rigs);
        }
    }

    /** What must be kept of the pictures to have the surroundings of the mark in all of them, however the camera moves. */
    private Area needed(CameraMotion motion) {
        Point grip = motion.toReference(frame(), mark.grip());
        double reach = AROUND * mark.grip().distance(mark.tip()) + 40;
        List<Point> corners = IntStream.range(0, info.frames())
                .boxed()
                .flatMap(t -> Stream.of(new Point(-reach, -reach), new Point(reach, reach))
                        .map(corner -> motion.toPicture(t, grip.plus(corner))))
                .toList();
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
}
