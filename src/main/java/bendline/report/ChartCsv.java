package bendline.report;

import bendline.flight.Gain;
import bendline.geometry.Point;
import bendline.stroke.BendArc;
import bendline.stroke.Peak;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.function.Consumer;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.jspecify.annotations.Nullable;

/** The figures of a chart as CSV, one row a point; names and units are those on the chart, numbers have points everywhere. */
final class ChartCsv {

    private static final int DECIMALS = 5;

    private final CSVPrinter printer;

    private ChartCsv(CSVPrinter printer) {
        this.printer = printer;
    }

    /** Lines over time between two clip times, as they are drawn; where nothing is known there is no row. */
    static String lines(List<TimeLineChart.Panel> panels, double from, double to) {
        return table(List.of("line", "seconds", "value", "plus_minus"), csv -> {
            for (TimeLineChart.Panel p : panels) {
                for (int i = 0; i < p.seconds().length; i++) {
                    boolean shown = p.seconds()[i] >= from && p.seconds()[i] <= to && Double.isFinite(p.values()[i]);
                    if (shown) {
                        double sd = p.sds()[i];
                        csv.row(p.name(), p.seconds()[i], p.values()[i], sd > 0 ? (Double) sd : null);
                    }
                }
            }
        });
    }

    /** The curves of the blank, hand first. */
    static String fan(List<BendArc> arcs, String unit) {
        return table(List.of("frame", "seconds", "point", "x", "y", "unit"), csv -> {
            for (BendArc arc : arcs) {
                List<Point> points = arc.line().points();
                for (int i = 0; i < points.size(); i++) {
                    csv.row(
                            arc.frame(),
                            arc.clipSeconds(),
                            i,
                            points.get(i).x(),
                            points.get(i).y(),
                            unit);
                }
            }
        });
    }

    /** When each link is fastest. */
    static String chain(List<Peak> peaks) {
        return table(
                List.of("part", "seconds", "plus_minus"),
                csv -> peaks.stream()
                        .filter(p -> p.seconds() != null)
                        .forEach(p -> csv.row(p.part().label(), p.seconds(), p.plusMinusSeconds())));
    }

    /** What each step brings. */
    static String gains(List<Gain> gains) {
        return table(
                List.of("step", "kind", "metres", "low", "high"),
                csv -> gains.stream()
                        .filter(g -> g.metres().value() != null)
                        .forEach(g -> csv.row(
                                g.change().label(),
                                g.change().kind().id(),
                                g.metres().value(),
                                g.metres().low(),
                                g.metres().high())));
    }

    private static String table(List<String> header, Consumer<ChartCsv> rows) {
        StringBuilder out = new StringBuilder();
        try {
            CSVFormat format = CSVFormat.DEFAULT
                    .builder()
                    .setRecordSeparator('\n')
                    .setHeader(header.toArray(String[]::new))
                    .get();
            rows.accept(new ChartCsv(new CSVPrinter(out, format)));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toString();
    }

    private void row(@Nullable Object... cells) {
        try {
            for (Object cell : cells) {
                printer.print(cell instanceof Double d ? number(d) : cell);
            }
            printer.println();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String number(double value) {
        return Double.isFinite(value)
                ? BigDecimal.valueOf(value)
                        .setScale(DECIMALS, RoundingMode.HALF_EVEN)
                        .stripTrailingZeros()
                        .toPlainString()
                : "";
    }
}
