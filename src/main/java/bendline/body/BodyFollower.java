package bendline.body;

import bendline.body.JointFinder.Body;
import bendline.footage.Footage;
import bendline.footage.Frame;
import bendline.footage.LumaReader;
import bendline.geometry.Point;
import bendline.scene.CameraMotion;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.function.DoubleConsumer;
import org.jspecify.annotations.Nullable;

/**
 * Follows the body of the person who holds the rod through some frames of a clip. Looks only at a square round the body; where it
 * is lost, squares round the grip are searched again.
 */
public final class BodyFollower {

    /**
     * Frames looked at side by side, all where the body was in the last frame before them: a fixed number, so that the result does
     * not depend on the computer.
     */
    private static final int BATCH = 4;

    /** Likelihood of a person under which the body is lost. */
    private static final double LOST = 0.5;

    /** After how many frames without a person the search is made again. */
    private static final int PATIENCE = 8;

    /**
     * Radius in which a joint that shows lies with 68 % probability, body heights. The same networks on public labelled pictures
     * of single people (11 of COCO) missed by 0.026 of the person's size in the middle, which for errors alike in both directions
     * makes 0.033. With several cameras others reach 0.017 to 0.03 for hips and knees (30 to 50 mm, Needham et al. 2021, Sci. Rep.
     * 11:20673) and mostly under 0.017 elsewhere (Nakano et al. 2020, Front. Sports Act. Living 2:50): no single one may claim
     * less.
     */
    private static final double JOINT_SD = 0.033;

    /** The same for a joint that is guessed. */
    private static final double GUESS_SD = 0.08;

    private final Footage footage;
    private final CameraMotion motion;
    private final Map<Integer, HeldRod> rods = new TreeMap<>();
    private final double freePx;

    /**
     * @param rods where the rod is held, in the frames in which that is known
     * @param freePx length of the blank from grip to tip, pixels
     */
    public BodyFollower(Footage footage, CameraMotion motion, List<HeldRod> rods, double freePx) {
        this.footage = footage;
        this.motion = motion;
        this.freePx = freePx;
        rods.forEach(r -> this.rods.put(r.frame(), r));
    }

    /** Follows the likeliest person instead, whoever holds what; for clips of one person. */
    public static BodyFollower anyone(Footage footage, CameraMotion motion) {
        return new BodyFollower(footage, motion, List.of(), Double.NaN);
    }

    /**
     * Follows the caster.
     *
     * @param frames decoded frames to look at
     * @param progress told the share that is done
     */
    public BodyTrace follow(SortedSet<Integer> frames, DoubleConsumer progress) {
        if (frames.isEmpty() || (rods.isEmpty() && !anyone())) {
            return BodyTrace.nobody(frames.size(), "the rod was not followed, so it is not known who holds it");
        }
        List<BodySight> sights = new ArrayList<>();
        try (Finders finders = new Finders();
                LumaReader reader = footage.tinted()) {
            Walk walk = new Walk(finders);
            List<Frame> batch = new ArrayList<>();
            int done = 0;
            for (int left = frames.size(); left > 0; left--) {
                Frame f = reader.next(frames::contains);
                if (f == null) {
                    break;
                }
                batch.add(f);
                progress.accept((double) ++done / frames.size());
                if (batch.size() == BATCH) {
                    sights.addAll(walk.look(batch));
                    batch.forEach(reader::giveBack);
                    batch.clear();
                }
            }
            sights.addAll(walk.look(batch));
        }
        return told(sights, frames.size());
    }

    private boolean anyone() {
        return Double.isNaN(freePx);
    }

    private BodyTrace told(List<BodySight> raw, int asked) {
        if (raw.size() < 0.2 * asked) {
            return BodyTrace.nobody(asked, "nobody was seen to hold the rod");
        }
        double height = Stature.of(raw);
        List<BodySight> sights = raw.stream().map(s -> weighed(s, height)).toList();
        RodHold hold = HoldReader.of(sights, rods, height);
        if (hold.basis().equals(HoldReader.ELSEWHERE)) {
            return BodyTrace.nobody(asked, hold.basis());
        }
        return new BodyTrace(sights, asked, height, Stature.sd(height), hold, null);
    }

    private static BodySight weighed(BodySight s, double height) {
        Map<Joint, JointSight> joints = new EnumMap<>(Joint.class);
        s.joints()
                .forEach((j, sight) -> joints.put(
                        j,
                        new JointSight(
                                sight.place(), sight.confidence(), height * (sight.shows() ? JOINT_SD : GUESS_SD))));
        return new BodySight(s.frame(), s.seconds(), s.person(), joints);
    }

    /** The rod nearest in time. */
    private HeldRod rodAt(int frame) {
        HeldRod exact = rods.get(frame);
        if (exact != null) {
            return exact;
        }
        return rods.values().stream()
                .min(Comparator.comparingInt(r -> Math.abs(r.frame() - frame)))
                .orElseThrow();
    }

    private BodySight sight(Frame frame, Body body) {
        Map<Joint, JointSight> joints = new EnumMap<>(Joint.class);
        body.joints()
                .forEach((j, seen) -> joints.put(
                        j,
                        new JointSight(
                                motion.toReference(frame.index(), seen.place()), seen.confidence(), Double.NaN)));
        return new BodySight(frame.index(), frame.seconds(), body.person(), joints);
    }

    /** One way through the frames. */
    private final class Walk {

        private final Finders finders;
        private @Nullable Region region;
        private int missing = PATIENCE;

        Walk(Finders finders) {
            this.finders = finders;
        }

        List<BodySight> look(List<Frame> batch) {
            if (batch.isEmpty()) {
                return List.of();
            }
            if (missing >= PATIENCE || region == null) {
                region = search(batch.get(0));
                missing = 0;
            }
            Region here = region;
            if (here == null) {
                missing += batch.size();
                return List.of();
            }
            List<Body> bodies = finders.joints(batch, here);
            List<BodySight> out = new ArrayList<>();
            for (int i = 0; i < batch.size(); i++) {
                Body body = bodies.get(i);
                BodySight sight = sight(batch.get(i), body);
                boolean holds = rods.get(sight.frame()) == null
                        || HoldReader.away(sight, rodAt(sight.frame()))
                                < body.region().side() / 4;
                if (body.person() >= LOST && holds) {
                    out.add(sight);
                    region = body.region().upright();
                    missing = 0;
                } else {
                    missing++;
                }
            }
            return out;
        }

        /** The person whose wrist is nearest to the grip, or null if there is none with a hand on the rod. */
        private @Nullable Region search(Frame frame) {
            if (anyone()) {
                return likeliest(frame);
            }
            HeldRod rod = rodAt(frame.index());
            Point grip = motion.toPicture(frame.index(), rod.grip());
            Region best = null;
            double nearest = Double.MAX_VALUE;
            for (Region square : squares(grip)) {
                for (PersonFinder.Person p : finders.people(frame, square)) {
                    Body body = finders.joints(List.of(frame), p.region()).get(0);
                    double away = HoldReader.away(sight(frame, body), rod);
                    if (body.person() >= LOST
                            && away < nearest
                            && away < body.region().side() / 6) {
                        nearest = away;
                        best = body.region();
                    }
                }
                if (best != null) {
                    break;
                }
            }
            return best == null ? null : best.upright();
        }

        private @Nullable Region likeliest(Frame frame) {
            double width = frame.luma().width();
            double height = frame.luma().height();
            Region whole = new Region(new Point(width / 2, height / 2), Math.max(width, height), 0);
            return finders.people(frame, whole).stream()
                    .map(p -> p.region().upright())
                    .findFirst()
                    .orElse(null);
        }

        /** A person of 1.75 m with a blank of 2.3 to 4 m above the hand is 0.45 to 0.75 of it tall, and hangs below the grip. */
        private List<Region> squares(Point grip) {
            List<Region> out = new ArrayList<>();
            for (double side : new double[] {1.2, 0.9, 1.8}) {
                out.add(new Region(new Point(grip.x(), grip.y() + 0.15 * freePx), side * freePx, 0));
            }
            return out;
        }
    }
}
