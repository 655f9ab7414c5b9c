package bendline.benchmark;

import bendline.body.BodyFollower;
import bendline.body.BodySight;
import bendline.body.BodyTrace;
import bendline.body.HeldRod;
import bendline.body.Joint;
import bendline.body.JointSight;
import bendline.body.RodHold;
import bendline.footage.Footage;
import bendline.geometry.Homography;
import bendline.geometry.Point;
import bendline.scene.CameraMotion;
import bendline.simulate.Simulator;
import bendline.simulate.Truth;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeSet;

/**
 * A body as the networks would follow it, of a clip of which only the truth is there: each joint off by a part that stays, one
 * that drifts and one that is new in every frame. {@code BodyNoise CLIP.mp4 …} prints those parts of simulated clips.
 *
 * @param stays standard deviation of the part of a coordinate's error that stays, shares of the height
 * @param drifts the same of the part that drifts
 * @param driftSeconds after which the drifting part is forgotten
 * @param white the same of the part that is new in every frame
 */
record BodyNoise(double stays, double drifts, double driftSeconds, double white) {

    /** As measured on the three samples: 0.022 to 0.027, 0.020 to 0.032 over 0.14 to 0.3 s, 0.004 to 0.014. */
    static final BodyNoise MEASURED = new BodyNoise(0.025, 0.023, 0.2, 0.004);

    /** What is stated of a joint that shows, see {@link BodyFollower}; heights. */
    private static final double STATED = 0.033;

    private static final double LEAD_SECONDS = 0.5;
    private static final double TAIL_SECONDS = 0.3;

    /**
     * The followed body of the cast.
     *
     * @param truth a clip of one cast, as seen by a phone that stands still
     * @param seed of the errors
     */
    BodyTrace of(Truth truth, long seed) {
        Random random = new Random(seed);
        double start = truth.casts().get(0).events().get("forwardStart") - LEAD_SECONDS;
        double end = truth.casts().get(0).events().get("release") + TAIL_SECONDS;
        double step = truth.frames().get(1).seconds();
        double height = height(truth);
        Map<Joint, Wander> errors = new EnumMap<>(Joint.class);
        for (Joint j : Joint.values()) {
            errors.put(j, new Wander(random));
        }
        List<BodySight> sights = new ArrayList<>();
        for (Truth.Frame f : truth.frames()) {
            if (f.seconds() < start || f.seconds() > end) {
                continue;
            }
            Map<Joint, JointSight> joints = new EnumMap<>(Joint.class);
            errors.forEach((j, e) -> joints.put(
                    j,
                    new JointSight(
                            f.joints().get(j.id()).plus(e.next(step, random).times(height)), 0.9, STATED * height)));
            sights.add(new BodySight(f.index(), f.seconds(), 0.95, joints));
        }
        RodHold hold = new RodHold(
                truth.scenario().leftToRight() ? Joint.RIGHT_WRIST : Joint.LEFT_WRIST,
                0.55 / truth.scenario().statureM() * height,
                STATED * height,
                "both wrists along the butt");
        return new BodyTrace(sights, sights.size(), height, 0.06 * height, hold, null);
    }

    private static double height(Truth truth) {
        return truth.frames().get(0).pxPerMetreGrip() * truth.scenario().statureM();
    }

    /** A joint's error as it goes on from frame to frame, shares of the height. */
    private final class Wander {

        private final Point stay;
        private Point drift;

        Wander(Random random) {
            this.stay = gauss(random).times(stays);
            this.drift = gauss(random).times(drifts);
        }

        Point next(double dt, Random random) {
            double keep = Math.exp(-dt / driftSeconds);
            drift = drift.times(keep).plus(gauss(random).times(drifts * Math.sqrt(1 - keep * keep)));
            return stay.plus(drift).plus(gauss(random).times(white));
        }

        private static Point gauss(Random random) {
            return new Point(random.nextGaussian(), random.nextGaussian());
        }
    }

    /** Prints the parts of the errors of simulated clips, whose truths lie beside them, round the forward stroke. */
    public static void main(String[] args) throws Exception {
        for (String arg : args) {
            Truth truth = Truth.read(Simulator.truthBeside(Path.of(arg)));
            BodyTrace body = followed(Path.of(arg), truth);
            System.out.printf("%s: %d frames, %s%n", arg, body.sights().size(), body.trouble());
            double[] all = new double[4];
            for (Joint j : Joint.values()) {
                double[] parts = parts(truth, body, j);
                System.out.printf(
                        "   %-15s stays %.4f  moves %.4f  white at most %.4f  from one tenth of a second to the next %.4f%n",
                        j.id(), parts[0], parts[1], parts[2], parts[3]);
                for (int k = 0; k < 4; k++) {
                    all[k] += parts[k] * parts[k] / Joint.values().length;
                }
            }
            System.out.printf(
                    "   %-15s stays %.4f  moves %.4f  white at most %.4f  tenth %.4f%n",
                    "root of squares", Math.sqrt(all[0]), Math.sqrt(all[1]), Math.sqrt(all[2]), Math.sqrt(all[3]));
        }
    }

    private static BodyTrace followed(Path clip, Truth truth) {
        List<HeldRod> rods = new ArrayList<>();
        TreeSet<Integer> frames = new TreeSet<>();
        double start = truth.casts().get(0).events().get("forwardStart") - LEAD_SECONDS;
        double end = truth.casts().get(0).events().get("release") + 0.1;
        for (Truth.Frame f : truth.frames()) {
            if (f.seconds() >= start && f.seconds() <= end) {
                Point d = f.blank().get(0).minus(f.grip());
                rods.add(new HeldRod(f.index(), f.grip(), d.times(1 / d.norm())));
                frames.add(f.index());
            }
        }
        CameraMotion still = new CameraMotion(Collections.nCopies(truth.frames().size(), Homography.IDENTITY), 0, true);
        Truth.Frame first = truth.frames().get(0);
        return new BodyFollower(Footage.open(clip), still, rods, first.grip().distance(first.tip()))
                .follow(frames, done -> {});
    }

    /** Of both coordinates: mean, scatter about it, scatter from frame to frame over √2, and over a tenth of a second. */
    private static double[] parts(Truth truth, BodyTrace body, Joint j) {
        int n = body.sights().size();
        double[][] e = new double[2][n];
        double height = height(truth);
        for (int i = 0; i < n; i++) {
            BodySight s = body.sights().get(i);
            Point off = s.joint(j)
                    .place()
                    .minus(truth.frames().get(s.frame()).joints().get(j.id()));
            e[0][i] = off.x() / height;
            e[1][i] = off.y() / height;
        }
        int tenth = (int) Math.round(0.1 / truth.frames().get(1).seconds());
        double[] out = new double[4];
        for (double[] one : e) {
            double mean = Arrays.stream(one).average().orElse(Double.NaN);
            out[0] += mean * mean / 2;
            out[1] += Arrays.stream(one).map(x -> (x - mean) * (x - mean)).sum() / n / 2;
            out[2] += steps(one, 1);
            out[3] += steps(one, tenth);
        }
        return Arrays.stream(out).map(Math::sqrt).toArray();
    }

    private static double steps(double[] e, int stride) {
        double sum = 0;
        for (int i = stride; i < e.length; i++) {
            sum += (e[i] - e[i - stride]) * (e[i] - e[i - stride]);
        }
        return sum / 2 / 2 / Math.max(1, e.length - stride);
    }
}
