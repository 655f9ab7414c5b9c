package bendline.report;

import bendline.compare.Reading;
import bendline.compare.SessionTrend;
import bendline.compare.SessionTrend.Forecast;
import bendline.compare.SessionTrend.Outing;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.text.FieldPosition;
import java.text.NumberFormat;
import java.text.ParsePosition;
import java.time.LocalDate;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.DeviationRenderer;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import org.jfree.data.xy.YIntervalSeries;
import org.jfree.data.xy.YIntervalSeriesCollection;
import org.jspecify.annotations.Nullable;

/** Every cast as a ring over its session's day, the session's mean as a bar, and what lies ahead as a band, if it can be told. */
final class TrendChart {

    private static final int HEIGHT = 320;

    private final SessionTrend trend;
    private final List<Forecast> ahead;
    private final @Nullable Double target;

    /** @param ahead forecasts of several days, in order; empty for none */
    TrendChart(SessionTrend trend, List<Forecast> ahead, @Nullable Double target) {
        this.trend = trend;
        this.ahead = ahead.stream().filter(f -> Double.isFinite(f.value())).toList();
        this.target = target;
    }

    String svg(ChartSize size, String id, String title) {
        XYSeriesCollection dots = new XYSeriesCollection();
        XYSeries casts = new XYSeries("casts", false);
        XYSeries means = new XYSeries("means", false);
        for (Outing o : trend.outings()) {
            for (Reading r : o.readings()) {
                casts.add(o.day().toEpochDay(), r.value());
            }
            means.add(o.day().toEpochDay(), o.mean());
        }
        dots.addSeries(casts);
        dots.addSeries(means);
        XYPlot plot = new XYPlot(dots, days(size), range(size), dots(Palette.BLANK.light()));
        plot.setDataset(1, band());
        plot.setRenderer(1, band(Palette.SOFT.light()));
        ChartParts.bare(plot);
        if (target != null) {
            ValueMarker line = new ValueMarker(target);
            line.setPaint(Palette.INK.light());
            line.setAlpha(1f);
            line.setStroke(new BasicStroke(1.4f, 0, 0, 1f, new float[] {8, 4}, 0));
            plot.addRangeMarker(line);
        }
        years(plot, size);
        JFreeChart chart = new JFreeChart(null, size.font(), plot, false);
        chart.setBackgroundPaint(null);
        chart.setPadding(new RectangleInsets(4, 0, 0, 10));
        return new SvgSheet(id, size.width(), HEIGHT, title).draw(chart);
    }

    private static XYLineAndShapeRenderer dots(Color colour) {
        XYLineAndShapeRenderer out = new XYLineAndShapeRenderer(false, true);
        out.setSeriesPaint(0, colour);
        out.setSeriesShape(0, new Ellipse2D.Double(-4, -4, 8, 8));
        out.setSeriesShapesFilled(0, false);
        out.setSeriesOutlineStroke(0, new BasicStroke(1.6f));
        out.setSeriesPaint(1, Palette.INK.light());
        out.setSeriesShape(1, new Rectangle2D.Double(-9, -1.4, 18, 2.8));
        return out;
    }

    private YIntervalSeriesCollection band() {
        YIntervalSeries s = new YIntervalSeries("ahead");
        ahead.forEach(f -> s.add(f.day().toEpochDay(), f.value(), f.low(), f.high()));
        YIntervalSeriesCollection out = new YIntervalSeriesCollection();
        out.addSeries(s);
        return out;
    }

    private static DeviationRenderer band(Color colour) {
        DeviationRenderer out = new DeviationRenderer(true, false);
        out.setAlpha(0.2f);
        out.setSeriesPaint(0, colour);
        out.setSeriesFillPaint(0, colour);
        out.setSeriesStroke(0, new BasicStroke(1.6f, 0, 0, 1f, new float[] {4, 4}, 0));
        return out;
    }

    private NumberAxis range(ChartSize size) {
        NumberAxis range = ChartParts.axis(size.font());
        double low = target == null ? Double.POSITIVE_INFINITY : target;
        double high = target == null ? Double.NEGATIVE_INFINITY : target;
        for (Outing o : trend.outings()) {
            for (Reading r : o.readings()) {
                low = Math.min(low, r.value());
                high = Math.max(high, r.value());
            }
        }
        for (Forecast f : ahead) {
            low = Math.min(low, f.low());
            high = Math.max(high, f.high());
        }
        double room = Math.max(1e-6, 0.08 * (high - low));
        range.setRange(low - room, high + room);
        return range;
    }

    private LocalDate first() {
        return trend.outings().get(0).day();
    }

    private LocalDate last() {
        LocalDate last = trend.outings().get(trend.outings().size() - 1).day();
        return ahead.isEmpty() ? last : ahead.get(ahead.size() - 1).day();
    }

    private NumberAxis days(ChartSize size) {
        NumberAxis axis = ChartParts.axis(size.font());
        double span = Math.max(2, last().toEpochDay() - first().toEpochDay());
        axis.setRange(first().toEpochDay() - 0.06 * span, last().toEpochDay() + 0.06 * span);
        axis.setTickUnit(new NumberTickUnit(Math.max(1, Math.ceil(span / (size == ChartSize.WIDE ? 6 : 3)))));
        axis.setNumberFormatOverride(new DayFormat());
        return axis;
    }

    /** The axis has months and days only. */
    private void years(XYPlot plot, ChartSize size) {
        String text = first().getYear() == last().getYear()
                ? Integer.toString(first().getYear())
                : first().getYear() + "–" + last().getYear();
        XYTextAnnotation a = new XYTextAnnotation(
                text, plot.getDomainAxis().getLowerBound(), plot.getRangeAxis().getUpperBound());
        a.setFont(size.boldFont());
        a.setPaint(Palette.SOFT.light());
        a.setTextAnchor(TextAnchor.TOP_LEFT);
        plot.addAnnotation(a);
    }

    /** Days since 1970 as month and day. Not a decimal format, which would print plain numbers by a shorter way of its own. */
    private static final class DayFormat extends NumberFormat {

        private static final long serialVersionUID = 1L;

        @Override
        public StringBuffer format(double day, StringBuffer to, FieldPosition at) {
            return format(Math.round(day), to, at);
        }

        @Override
        public StringBuffer format(long day, StringBuffer to, FieldPosition at) {
            LocalDate d = LocalDate.ofEpochDay(day);
            return to.append(Words.of("%02d-%02d", d.getMonthValue(), d.getDayOfMonth()));
        }

        @Override
        public Number parse(String text, ParsePosition at) {
            throw new UnsupportedOperationException("an axis only writes its days");
        }
    }
}
