package bendline.analysis;

import bendline.footage.ClipInfo;
import bendline.geometry.Point;
import bendline.scene.Mark;
import bendline.stroke.EventKind;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** Whether what a user pointed at can be in the clip. */
final class MarkCheck {

    /** Grip and tip closer than this can't be the two ends of a rod, pixels. */
    private static final double LEAST_ROD_PX = 20;

    private final ClipInfo info;

    MarkCheck(ClipInfo info) {
        this.info = info;
    }

    /** @throws SetupException naming the first mark that can't be */
    void check(List<Mark> marks) {
        for (Mark mark : marks) {
            inTime(mark.seconds());
            mark.places().forEach((part, at) -> inPicture(part.name().toLowerCase(Locale.ROOT), at));
            apart(mark);
            mark.moments().forEach(MarkCheck::known);
        }
    }

    private void inTime(double seconds) {
        if (!(seconds >= 0 && seconds <= info.durationSeconds())) {
            throw wrong(
                    "The mark is at %.3f s, but the clip runs from 0 to %.3f s; give the clip time a player shows.",
                    seconds, info.durationSeconds());
        }
    }

    private void inPicture(String what, Point p) {
        if (!(p.x() >= 0 && p.x() <= info.width() && p.y() >= 0 && p.y() <= info.height())) {
            throw wrong(
                    "The %s mark %.0f,%.0f lies outside the picture, which is %d by %d pixels; count from the top left of"
                            + " the upright picture.",
                    what, p.x(), p.y(), info.width(), info.height());
        }
    }

    private static void apart(Mark mark) {
        Point grip = mark.grip();
        Point tip = mark.tip();
        if (grip != null && tip != null && grip.distance(tip) < LEAST_ROD_PX) {
            throw wrong(
                    "The grip and tip marks are %.0f pixels apart, too close for a rod; mark the upper hand and the rod tip.",
                    grip.distance(tip));
        }
    }

    private static void known(String moment) {
        if (EventKind.of(moment).isEmpty()) {
            throw wrong(
                    "There is no moment \"%s\" to be marked; the moments are %s.",
                    moment, Arrays.stream(EventKind.values()).map(EventKind::id).collect(Collectors.joining(", ")));
        }
    }

    private static SetupException wrong(String format, Object... values) {
        return new SetupException(String.format(Locale.ROOT, format, values));
    }
}
