package bendline.report;

import bendline.stroke.EventKind;
import bendline.stroke.LoadCurve;
import bendline.stroke.Stroke;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Pull on the tip and energy of the bend over time, with the moments of the forward stroke. */
final class LoadChart {

    /** Those that fall within the load, named where there is room. */
    private static final Set<EventKind> MARKED = EnumSet.of(
            EventKind.FORWARD_START,
            EventKind.FASTEST_TURN,
            EventKind.PEAK_BEND,
            EventKind.STOP,
            EventKind.RELEASE,
            EventKind.ROD_STRAIGHT);

    /** A reading less sure than this says nothing and would stretch the axis. */
    private static final double MOST_RELATIVE = 1.0;

    private static final double LEAST_SD_N = 3;

    private final Stroke stroke;

    LoadChart(Stroke stroke) {
        this.stroke = stroke;
    }

    /**
     * The chart in one width.
     *
     * @param svg the drawing
     * @param marked the moments on it
     * @param csv its figures
     */
    record Drawn(String svg, List<EventKind> marked, String csv) {}

    /** Nothing where no force could be read. */
    Optional<Drawn> draw(ChartSize size, String id, String title) {
        LoadCurve c = stroke.bend().load();
        if (c.size() < 3) {
            return Optional.empty();
        }
        double from = c.clipSeconds()[0];
        double to = c.clipSeconds()[c.size() - 1];
        TimeLineChart chart = new TimeLineChart(stroke, size, from, to, MARKED);
        List<TimeLineChart.Panel> panels = new ArrayList<>();
        panels.add(new TimeLineChart.Panel(
                "Pull on the tip, N", Palette.RIG, c.clipSeconds(), sure(c.newtons(), c.newtonsSd()), c.newtonsSd()));
        // Without a stiffness the rig alone tells the pull, and nothing the energy.
        if (Arrays.stream(c.energyJ()).anyMatch(Double::isFinite)) {
            panels.add(new TimeLineChart.Panel(
                    "Energy in the bend, J", Palette.BLANK, c.clipSeconds(), c.energyJ(), c.energySd()));
        }
        return Optional.of(new Drawn(chart.svg(id, title, panels), chart.marked(), ChartCsv.lines(panels, from, to)));
    }

    private static double[] sure(double[] values, double[] sds) {
        double[] out = values.clone();
        for (int i = 0; i < out.length; i++) {
            if (sds[i] > Math.max(LEAST_SD_N, MOST_RELATIVE * values[i])) {
                out[i] = Double.NaN;
            }
        }
        return out;
    }
}
