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
import bendline.image.Warp;
import bendline.scene.CameraMotion;
import bendline.scene.Mark;
import bendline.scene.Setup;
import java.util.List;
import java.util.function.DoubleConsumer;
import org.jspecify.annotations.Nullable;

/** What a user's marks add: a check on the rod that was found without them, and a start where none was. */
final class MarkedRod {

    /** A traced rod this near to both marks is the one that was meant, as a share of their distance. */
    private static final double NEAR = 0.08;
    /** Found in fewer frames than this share, a rod is better followed from the marks. */
    private static final double MOST = 0.5;
    /** Grey levels to one unit of noise when pictures are searched as they are. */
    private static final float GREY_A_UNIT = 6;

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
        Homography map = motion.toReference().get(frame);
        Point grip = map.apply(mark.grip());
        Point tip = map.apply(mark.tip());
        Area area = around(grip, 1.6 * grip.distance(tip) + 40);
        Point origin = new Point(area.left(), area.top());
        try (DifferenceStore store = new DifferenceStore()) {
            try (LumaReader reader = footage.lumas()) {
                for (Frame f = reader.next(); f != null; f = reader.next()) {
                    store.add(inUnits(Warp.apply(f.luma(), motion.toReference().get(f.index()), area)));
                    progress.accept((f.index() + 1.0) / info.frames());
                }
            }
            MarkFollower.Followed followed = new MarkFollower(store::get, info.times(), info.height())
                    .follow(frame, grip.minus(origin), tip.minus(origin));
            if (followed == null) {
                return RodTracker.nothing(
                        info, motion, "no line joins the two marks on their frame; mark the grip and the tip anew");
            }
            double free = followed.freePx();
            RodLength.Estimate length = new RodLength.Estimate(free, 0.02 * free, 1);
            List<Look> looks = followed.looks();
            Tracked noRig = Tracked.notSeen(null, "the rig is looked for only where the background shows");
            List<Tracked> rigs = looks.stream().map(l -> noRig).toList();
            return new TraceBuilder(info, motion, length, origin).build(looks, rigs);
        }
    }

    private Area around(Point centre, double reach) {
        int left = (int) Math.max(0, Math.min(info.width() - 16.0, centre.x() - reach));
        int top = (int) Math.max(0, Math.min(info.height() - 16.0, centre.y() - reach));
        int right = (int) Math.max(left + 16.0, Math.min(info.width(), centre.x() + reach));
        int bottom = (int) Math.max(top + 16.0, Math.min(info.height(), centre.y() + reach));
        return new Area(left, top, right - left, bottom - top);
    }

    private static Plane inUnits(Luma luma) {
        float[] out = new float[luma.pixels().length];
        for (int i = 0; i < out.length; i++) {
            out[i] = ((luma.pixels()[i] & 0xff) - 128) / GREY_A_UNIT;
        }
        return new Plane(luma.width(), luma.height(), out);
    }
}
