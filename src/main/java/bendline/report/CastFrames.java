package bendline.report;

import bendline.analysis.ClipAnalysis;
import bendline.stroke.Event;
import bendline.stroke.Stroke;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;

/** The stills of one cast on the page, each with the moments it shows. */
final class CastFrames {

    private final ClipAnalysis analysis;
    private final Stroke stroke;
    private final Map<Integer, Still> stills;
    private final Html html;

    CastFrames(ClipAnalysis analysis, Stroke stroke, Map<Integer, Still> stills, Html html) {
        this.analysis = analysis;
        this.stroke = stroke;
        this.stills = stills;
        this.html = html;
    }

    /** The strip of all known moments. */
    void moments() {
        TreeSet<Integer> shown = new TreeSet<>();
        known().forEach(e -> shown.add(e.frame()));
        shown.retainAll(stills.keySet());
        if (shown.isEmpty()) {
            return;
        }
        html.open("section", "id", "cast" + stroke.number() + "-moments");
        html.leaf("h2", "The stroke, moment by moment");
        html.leaf(
                "p",
                "Solid line: the blank. Ring and beads: the tip and where it came from. Diamond: the rig. Arc: the butt angle"
                        + " (0° level ahead, 90° upright, 180° level behind).");
        strip(shown, "Frames of the moments");
        html.close();
    }

    /** A strip of those of some frames of which there is a still. */
    void strip(Collection<Integer> wanted, String label) {
        List<Integer> shown = wanted.stream().filter(stills::containsKey).toList();
        if (shown.isEmpty()) {
            return;
        }
        html.open("div", "class", "strip", "tabindex", "0", "role", "region", "aria-label", label);
        shown.forEach(frame -> figure(frame, "frame"));
        html.close();
    }

    /** The still of a frame. */
    void figure(int frame, String style) {
        Still still = stills.get(frame);
        String caption = caption(frame);
        html.open("figure", "class", style);
        still.write(html, caption + ". " + still.alt());
        html.leaf("figcaption", caption);
        html.close();
    }

    private String caption(int frame) {
        double angle = CastPainter.buttAngleDeg(stroke, frame);
        String butt = Double.isFinite(angle) ? Words.of(", butt %.0f°", angle) : "";
        List<String> names = known().stream()
                .filter(e -> e.frame() == frame)
                .map(e -> EventWords.label(e.kind()) + ", " + when(e))
                .toList();
        return names.isEmpty()
                ? Words.of("Frame %d, %.3f s%s", frame, analysis.info().times().get(frame), butt)
                : String.join("; ", names) + butt;
    }

    /** With as many digits as it is known to. */
    private static String when(Event e) {
        String number = "%." + Math.min(3, Words.decimals(e.plusMinusSeconds())) + "f";
        return Words.of(number + " ± " + number + " s", e.seconds(), e.plusMinusSeconds());
    }

    private List<Event> known() {
        return stroke.events().values().stream()
                .filter(e -> e.seconds() != null && e.frame() != null)
                .sorted(Comparator.comparing(Event::seconds))
                .toList();
    }
}
