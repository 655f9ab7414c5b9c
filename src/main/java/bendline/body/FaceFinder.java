package bendline.body;

import bendline.body.Faces.Spot;
import bendline.footage.ClipInfo;
import bendline.footage.Footage;
import bendline.footage.Frame;
import bendline.footage.LumaReader;
import bendline.geometry.Point;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleConsumer;
import java.util.function.IntFunction;
import java.util.function.UnaryOperator;

/**
 * Finds the heads of everybody in a clip, so that they can be covered. Errs on the side of covering too much: a head counts for a
 * while before and after it was found, and its patch is wider than the head. People under about a tenth of the picture's longer
 * side, and heads without a body in view, are missed.
 */
public final class FaceFinder {

    /** Pictures a second of clip time in which heads are looked for. */
    private static final double LOOKS_HZ = 10;

    /** For how many looks before and after a head counts. */
    private static final int HOLD = 3;

    /** Sides of the squares that are searched, over the picture's longer side; each overlaps the next by half. */
    private static final double[] SQUARES = {1, 0.6, 0.35};

    /**
     * From the shoulders to the middle of the head, and half a head's height, over the trunk from hips to shoulders: (0.935 − 0.818) and
     * 0.065 over 0.288 of the height (Drillis and Contini 1966, from memory); the first a little more, for the crown's sake.
     */
    private static final double HEAD_OVER_TRUNK = 0.45;

    private static final double HEAD_SHARE = 0.3;

    /** How much wider than the head a patch is: a head of a caster goes no farther between two looks. */
    private static final double WIDER = 1.6;

    /** Likelihood from which somebody is covered; lower than for following, since a needless patch does no harm. */
    private static final double LIKELY = 0.4;

    /** Trunk over the side of the square of somebody who just fits into it; what is larger is a cloud or a tree. */
    private static final double LARGEST_TRUNK = 0.3;

    private FaceFinder() {}

    /**
     * Looks through a whole clip.
     *
     * @param followed the caster's body, whose head is covered in every frame in which it was followed
     * @param toPicture the place of a reference-picture point in the picture of a frame
     * @param progress told the share that is done
     */
    public static Faces find(
            Footage footage,
            ClipInfo info,
            BodyTrace followed,
            IntFunction<UnaryOperator<Point>> toPicture,
            DoubleConsumer progress) {
        int every = (int) Math.max(1, Math.round(1 / (LOOKS_HZ * Math.max(1e-6, info.medianStepSeconds()))));
        List<List<Spot>> looks = looks(footage, info, every, progress);
        List<List<Spot>> out = new ArrayList<>();
        for (int i = 0; i < info.frames(); i++) {
            List<Spot> spots = new ArrayList<>();
            for (int k = Math.max(0, i / every - HOLD + 1); k <= Math.min(looks.size() - 1, i / every + HOLD); k++) {
                spots.addAll(looks.get(k));
            }
            BodySight sight = followed.at(i);
            if (sight != null) {
                spots.add(head(sight, followed.heightPx(), toPicture.apply(i)));
            }
            out.add(spots);
        }
        return new Faces(out);
    }

    private static List<List<Spot>> looks(Footage footage, ClipInfo info, int every, DoubleConsumer progress) {
        List<List<Spot>> looks = new ArrayList<>();
        try (PersonFinder people = new PersonFinder(LIKELY);
                LumaReader reader = footage.tinted()) {
            for (Frame f = reader.next(); f != null; f = reader.next()) {
                if (f.index() % every == 0) {
                    looks.add(spots(people, f));
                    progress.accept((f.index() + 1.0) / info.frames());
                }
            }
        }
        return looks;
    }

    /** The heads in one frame. */
    static List<Spot> spots(PersonFinder people, Frame f) {
        List<Spot> out = new ArrayList<>();
        for (Region square : Region.over(f.luma().width(), f.luma().height(), SQUARES)) {
            people.find(f, square).stream()
                    .filter(p -> p.shoulders().distance(p.hips()) < LARGEST_TRUNK * square.side())
                    .forEach(p -> out.add(head(p)));
        }
        return out;
    }

    /** Over the shoulders, in the line of the trunk; the head may be bent forwards from there by a third of its size. */
    private static Spot head(PersonFinder.Person p) {
        Point up = p.shoulders().minus(p.hips());
        return new Spot(p.shoulders().plus(up.times(HEAD_OVER_TRUNK)), WIDER * HEAD_SHARE * up.norm());
    }

    /** From the chin to the crown is 0.13 of the height (Drillis and Contini 1966, from memory), the nose in the middle of it. */
    private static Spot head(BodySight s, double heightPx, UnaryOperator<Point> toPicture) {
        return new Spot(toPicture.apply(s.joint(Joint.NOSE).place()), WIDER * 0.065 * heightPx);
    }
}
