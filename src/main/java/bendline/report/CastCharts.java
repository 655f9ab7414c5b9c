package bendline.report;

import bendline.analysis.ClipAnalysis;
import bendline.stroke.BodyMotion;
import bendline.stroke.Event;
import bendline.stroke.EventKind;
import bendline.stroke.Stroke;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The charts of one cast. */
final class CastCharts {

    /** Those that can be told apart when the whole cast is in view. */
    private static final Set<EventKind> MAIN = EnumSet.of(
            EventKind.BACKSWING_START,
            EventKind.BACKSWING_END,
            EventKind.FORWARD_START,
            EventKind.RELEASE,
            EventKind.TIP_LOWEST,
            EventKind.CLIP_NOD);

    private final ClipAnalysis analysis;
    private final Stroke stroke;

    CastCharts(ClipAnalysis analysis, Stroke stroke) {
        this.analysis = analysis;
        this.stroke = stroke;
    }

    /**
     * One chart in both widths.
     *
     * @param kind which, part of file names
     * @param heading for people
     * @param caption what to look for, for people
     * @param marked the moments that stand on it by their numbers
     * @param wide SVG
     * @param narrow SVG
     * @param csv the same figures
     */
    record Chart(
            Kind kind,
            String heading,
            String caption,
            List<EventKind> marked,
            String wide,
            String narrow,
            String csv) {}

    /** What a chart shows. */
    enum Kind {
        BEND("bend"),
        WHOLE("whole-cast"),
        FORWARD("forward-stroke"),
        LOAD("load"),
        CHAIN("chain");

        private final String id;

        Kind(String id) {
            this.id = id;
        }

        String id() {
            return id;
        }

        /** Whether it is one of the two that everybody is shown. */
        boolean first() {
            return this == BEND || this == FORWARD;
        }
    }

    /** Those that the cast allows, in the order of the report. */
    List<Chart> draw() {
        List<Chart> out = new ArrayList<>();
        bend().ifPresent(out::add);
        load().ifPresent(out::add);
        forward().ifPresent(out::add);
        chain().ifPresent(out::add);
        out.add(whole());
        return out;
    }

    private String id(Kind kind, ChartSize size) {
        return "cast" + stroke.number() + "-" + kind.id() + "-" + size.id();
    }

    private Optional<Chart> bend() {
        String title = "Curves of the blank from the start of the forward push until the rod is straight again";
        BendFanChart chart = new BendFanChart(stroke);
        Optional<BendFanChart.Fan> wide = chart.draw(ChartSize.WIDE, id(Kind.BEND, ChartSize.WIDE), title);
        Optional<BendFanChart.Fan> narrow = chart.draw(ChartSize.NARROW, id(Kind.BEND, ChartSize.NARROW), title);
        if (wide.isEmpty() || narrow.isEmpty()) {
            return Optional.empty();
        }
        String caption = Words.of(
                "One curve every %.0f ms of real time. Thin lines: the blank takes up bend; thick line: most bend; dashed"
                        + " lines: it straightens. Round beads: the tip, one a frame; square ones: the upper hand; a gap in the"
                        + " beads is a frame in which the blank was not found. The view: %s.",
                1000 * wide.get().stepSeconds() / analysis.info().slowMotion().factor(),
                stroke.bend().view());
        return Optional.of(new Chart(
                Kind.BEND,
                "How the blank bent",
                caption,
                List.of(),
                wide.get().svg(),
                narrow.get().svg(),
                wide.get().csv()));
    }

    private Optional<Chart> load() {
        String title = "Pull on the tip and energy of the bend over time";
        LoadChart chart = new LoadChart(stroke);
        Optional<LoadChart.Drawn> wide = chart.draw(ChartSize.WIDE, id(Kind.LOAD, ChartSize.WIDE), title);
        Optional<LoadChart.Drawn> narrow = chart.draw(ChartSize.NARROW, id(Kind.LOAD, ChartSize.NARROW), title);
        if (wide.isEmpty() || narrow.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new Chart(
                Kind.LOAD,
                "What the blank carried",
                "Read from the bend, the rod's own weight, inertia and the air taken out, and from the rig's acceleration where it"
                        + " was weighed and seen; the pale band (68 %) holds what is unknown of stiffness, scale and mass. A slack"
                        + " line that comes tight pulls harder, for less than a frame, than is shown here. Where the reading is too unsure nothing is drawn. "
                        + Words.capital(stroke.bend().load().basis()) + ".",
                wide.get().marked(),
                wide.get().svg(),
                narrow.get().svg(),
                wide.get().csv()));
    }

    /** Two links at least, or there is no order to see. */
    private Optional<Chart> chain() {
        BodyMotion body = stroke.body();
        if (body == null) {
            return Optional.empty();
        }
        ChainChart wide = new ChainChart(body.peaks(), ChartSize.WIDE);
        if (wide.count() < 2) {
            return Optional.empty();
        }
        String title = "When hips, shoulders, hands, butt and tip are fastest";
        String missing = body.peaks().stream()
                .filter(p -> p.seconds() == null)
                .map(p -> " Not told: " + p.part().label() + " (" + p.basis() + ").")
                .collect(Collectors.joining());
        return Optional.of(new Chart(
                Kind.CHAIN,
                "The order of body, hands and rod",
                "Each mark: when that part is fastest. The bar under its name holds the true moment in two cases of three;"
                        + " parts whose bars overlap can't be put in order. Wanted: from the body outwards, the tip last."
                        + missing,
                List.of(),
                wide.svg(id(Kind.CHAIN, ChartSize.WIDE), title),
                new ChainChart(body.peaks(), ChartSize.NARROW).svg(id(Kind.CHAIN, ChartSize.NARROW), title),
                ChartCsv.chain(body.peaks())));
    }

    private Chart whole() {
        double[] t = stroke.kinematics().clipSeconds();
        return timeLines(
                Kind.WHOLE,
                "The whole cast",
                "Clip time runs to the right, as a player shows it. The pale band is the uncertainty (68 %); where a line"
                        + " breaks off, nothing was seen.",
                t[0],
                t[t.length - 1],
                MAIN);
    }

    private Optional<Chart> forward() {
        Event start = stroke.event(EventKind.FORWARD_START);
        Optional<Double> end = Stream.of(EventKind.RELEASE, EventKind.ROD_STRAIGHT, EventKind.STOP)
                .map(k -> stroke.event(k).seconds())
                .filter(Objects::nonNull)
                .max(Comparator.naturalOrder());
        if (start.seconds() == null || end.isEmpty()) {
            return Optional.empty();
        }
        double margin = 0.12 * analysis.info().slowMotion().factor();
        return Optional.of(timeLines(
                Kind.FORWARD,
                "The forward stroke, close up",
                "The same lines, stretched between the push and the straight rod.",
                start.seconds() - margin,
                end.get() + margin,
                EnumSet.allOf(EventKind.class)));
    }

    private Chart timeLines(Kind kind, String heading, String caption, double from, double to, Set<EventKind> kinds) {
        String title = heading + ": butt angle, compression and tip speed over time";
        double length = analysis.trace().freeLengthPx();
        TimeLineChart wide = new TimeLineChart(stroke, ChartSize.WIDE, from, to, kinds);
        TimeLineChart narrow = new TimeLineChart(stroke, ChartSize.NARROW, from, to, kinds);
        return new Chart(
                kind,
                heading,
                caption,
                wide.marked(),
                wide.svg(id(kind, ChartSize.WIDE), title, length),
                narrow.svg(id(kind, ChartSize.NARROW), title, length),
                ChartCsv.lines(wide.panels(length), from, to));
    }
}
