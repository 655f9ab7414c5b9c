package bendline.trace;

import bendline.trace.BlankFitter.Fit;
import bendline.trace.Foretold.Sighting;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The rod has one length and the hands move smoothly. So the point a fixed length inside the tip must move smoothly too, and the
 * frames about one foretell its tip. Where that jumps along the rod, it was cut short by a background of its own colour or drawn out by
 * the line, and is put back where hands and length say; else what the frame shows and what is foretold are weighed by what each is good
 * to.
 */
final class TipAnchor {

    /** In so much time hands go on as a parabola. */
    private static final Foretold.Window WINDOW = new Foretold.Window(0.12, 5, 20);

    private static final int FEWEST = 5;

    /** What measuring the end costs anyway, pixels. */
    private static final double SMALL_PX = 2;

    /** Share of a line that is left at least. */
    private static final double LEAST_LEFT = 0.3;

    private TipAnchor() {}

    /** The same looks with tips put right where they were out of line. */
    static List<Look> steadied(List<Look> looks, RodLength.Estimate rod) {
        List<@Nullable Sighting> hands = new ArrayList<>();
        for (Look look : looks) {
            Fit fit = look.chosen();
            hands.add(fit == null ? null : hand(fit, look.seconds(), rod));
        }
        List<Look> out = new ArrayList<>(looks);
        for (int t = 0; t < out.size(); t++) {
            Fit fit = looks.get(t).chosen();
            Sighting hand = hands.get(t);
            List<Sighting> about = hand == null ? List.of() : WINDOW.about(t, looks, hands::get);
            Foretold foretold =
                    about.size() < FEWEST ? null : Foretold.at(looks.get(t).seconds(), about);
            if (fit != null && hand != null && foretold != null) {
                out.set(t, looks.get(t).with(moved(fit, hand, foretold, endSd(fit, rod))));
            }
        }
        return out;
    }

    private static double endSd(Fit fit, RodLength.Estimate rod) {
        return Math.hypot(fit.alongSdPx(), StatedError.drawn(fit, rod));
    }

    /** A rod's length inside the tip. */
    private static Sighting hand(Fit fit, double seconds, RodLength.Estimate rod) {
        double s = fit.line().length() + fit.hiddenPx() - rod.along(fit.line());
        return new Sighting(
                fit.line().at(s), fit.line().tangentAt(Math.max(0, s)), Math.hypot(SMALL_PX, endSd(fit, rod)), seconds);
    }

    private static Fit moved(Fit fit, Sighting hand, Foretold foretold, double endSd) {
        double by = foretold.excess(hand, foretold.jumps(hand), endSd);
        if (fit.hiddenPx() > 0) {
            return by < fit.hiddenPx() ? fit.withHidden(fit.hiddenPx() - by) : fit;
        }
        double to = fit.line().length() - by;
        if (to < LEAST_LEFT * fit.line().length()) {
            return fit;
        }
        double sd = foretold.jumps(hand)
                ? 1.5 * foretold.sd() + 0.05 * Math.abs(by)
                : Math.min(fit.alongSdPx(), Math.max(fit.alongSdPx() / 2, foretold.sd()));
        return fit.withTip(fit.line().cut(to), sd);
    }
}
