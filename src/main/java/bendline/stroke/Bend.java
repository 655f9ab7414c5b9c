package bendline.stroke;

import java.util.List;

/**
 * How the blank bent from a little before the forward stroke until it is straight again.
 *
 * @param arcs one per frame in which the blank was seen, in order
 * @param metric whether the arcs are in metres; else in rod lengths from hand to tip
 * @param view how the phone was taken to stand, for people
 * @param load pull and energy
 */
public record Bend(List<BendArc> arcs, boolean metric, String view, LoadCurve load) {

    /** Nothing was followed. */
    public static final Bend NONE =
            new Bend(List.of(), false, "", LoadCurve.nothing("the forward stroke was not followed"));

    /** Copies the list. */
    public Bend {
        arcs = List.copyOf(arcs);
    }
}
