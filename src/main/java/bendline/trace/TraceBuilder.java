package bendline.trace;

import bendline.footage.ClipInfo;
import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.scene.CameraMotion;
import bendline.trace.BlankFitter.Fit;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Puts the followed curves and blobs together into the trace that later stages read. */
final class TraceBuilder {

    private static final int BLANK_POINTS = 25;
    /** Share of the blank that must show for its outer end to be taken for the tip. */
    private static final double WHOLE = 0.84;

    /** The same where the hands' way tells that what is missing is missing inside, before a body or a bank. */
    private static final double WHOLE_BY_HANDS = 0.7;
    /** Radius beyond which a tip is not called seen, free lengths. */
    private static final double TOO_VAGUE = 0.06;
    /** Longest piece of a blank that is drawn on to where hand and length put the tip, free lengths. */
    private static final double LONGEST_DRAWN = 0.15;

    /**
     * Half a tip ring, 4 to 5 mm on 3.4 m, free lengths (common practice, no source): the tip is where line leaves the ring, and what is
     * seen of it ends on the ring's far side.
     */
    private static final double RING = 0.0013;

    private static final String OUTSIDE = "out of the picture";

    /** A line that would be outside after so much more of it runs out of the picture, shares of the picture's smaller side. */
    private static final double EDGE = 0.008;

    private final ClipInfo info;
    private final CameraMotion motion;
    private final RodLength.Estimate length;
    private final Point origin;
    private final boolean asFollowed;
    private Set<Integer> held = Set.of();

    /** @param origin of the coordinates that curves and blobs come in, reference picture */
    TraceBuilder(ClipInfo info, CameraMotion motion, RodLength.Estimate length, Point origin) {
        this(info, motion, length, origin, false);
    }

    /** @param asFollowed whether lines already reach to the hand, so that none is drawn on to the rod's length */
    TraceBuilder(ClipInfo info, CameraMotion motion, RodLength.Estimate length, Point origin, boolean asFollowed) {
        this.asFollowed = asFollowed;
        this.info = info;
        this.motion = motion;
        this.length = length;
        this.origin = origin;
    }

    /** In some frames it is known where the hand is, so that a tip that can't be told from its background is put there by the rod's length. */
    TraceBuilder heldIn(Set<Integer> frames) {
        this.held = frames;
        return this;
    }

    Trace build(List<Look> looks, List<Tracked> rigs) {
        List<FrameTrace> frames = new ArrayList<>(looks.size());
        for (int t = 0; t < looks.size(); t++) {
            Look look = looks.get(t);
            Fit fit = look.chosen();
            Point blob = rigs.get(t).position();
            Tracked rig = rigs.get(t).at(blob == null ? null : blob.plus(origin));
            frames.add(fit == null ? lost(t, looks, rig) : found(t, look.seconds(), fit, rig));
        }
        return new Trace(info.width(), info.height(), frames, motion, length.freePx(), length.freeSdPx(), null);
    }

    private FrameTrace found(int t, double seconds, Fit fit, Tracked rig) {
        Polyline line = toTheRing(fit).map(origin::plus);
        Point tip = line.at(line.length() + fit.hiddenPx());
        double sd = StatedError.tip(fit, length);
        double free = asFollowed ? line.length() : length.along(line);
        boolean drawnOn = held.contains(t) && fit.hiddenPx() > 0 && fit.hiddenPx() < LONGEST_DRAWN * length.freePx();
        Polyline shown = ToTheHand.drawn(line, free - fit.hiddenPx(), BLANK_POINTS);
        Polyline blank = drawnOn ? withTip(shown, tip) : shown;
        double gripSd = Math.hypot(length.freeSdPx(), sd);
        return new FrameTrace(
                t,
                seconds,
                inside(t, blank.first())
                        ? Tracked.seen(blank.first(), gripSd)
                        : Tracked.notSeen(blank.first(), OUTSIDE),
                tracked(
                        tip,
                        sd,
                        inside(t, tip) && !runsOut(t, line),
                        (fit.hiddenPx() == 0 || drawnOn) && fit.coverage() >= (asFollowed ? WHOLE : WHOLE_BY_HANDS)),
                rig,
                blank,
                StatedError.direction(fit),
                StatedError.across(fit));
    }

    /** A curve that shows the tip ends with the ring, not in it. */
    private Polyline toTheRing(Fit fit) {
        Polyline line = fit.line();
        double ring = asFollowed || fit.hiddenPx() > 0 ? 0 : RING * length.freePx();
        return line.length() > 2 * ring ? line.cut(line.length() - ring) : line;
    }

    private static Polyline withTip(Polyline shown, Point tip) {
        List<Point> points = new ArrayList<>(shown.points());
        points.add(tip);
        return new Polyline(points).resampled(BLANK_POINTS);
    }

    private boolean inside(int t, Point inReference) {
        Point p = motion.toPicture(t, inReference);
        return p.x() >= 0 && p.y() >= 0 && p.x() < info.width() && p.y() < info.height();
    }

    /** Pictures are not compared to their very edge, so a blank that runs out of the picture seems to end just inside it. */
    private boolean runsOut(int t, Polyline line) {
        double edge = EDGE * Math.min(info.width(), info.height());
        Point end = line.last();
        Point way = end.minus(line.at(line.length() - 2 * edge));
        return way.norm() > 0 && !inside(t, end.plus(way.times(edge / way.norm())));
    }

    private Tracked tracked(Point tip, double sd, boolean inside, boolean whole) {
        if (!inside) {
            return Tracked.notSeen(tip, OUTSIDE);
        }
        if (sd > TOO_VAGUE * length.freePx()) {
            return Tracked.notSeen(tip, "how far out the blank reaches is not known well enough");
        }
        return whole
                ? Tracked.seen(tip, sd)
                : Tracked.notSeen(tip, "the outer blank could not be told from its background");
    }

    private FrameTrace lost(int t, List<Look> looks, Tracked rig) {
        Neighbours.Prediction p = Neighbours.at(t, looks);
        @Nullable Point tip = p == null ? null : p.line().last().plus(origin);
        @Nullable
        Point grip = p == null
                ? null
                : ToTheHand.drawn(p.line(), length.along(p.line()), 2).first().plus(origin);
        String why = "the blank could not be told from its surroundings";
        return new FrameTrace(
                t,
                looks.get(t).seconds(),
                Tracked.notSeen(grip, why),
                Tracked.notSeen(tip, why),
                rig,
                null,
                Double.NaN);
    }
}
