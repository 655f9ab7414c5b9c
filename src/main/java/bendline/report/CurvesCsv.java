package bendline.report;

import bendline.analysis.CastAnalysis;
import bendline.analysis.ClipAnalysis;
import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.scene.Setup.Side;
import bendline.stroke.EventKind;
import bendline.stroke.Stroke;
import bendline.trace.FrameTrace;
import bendline.trace.Trace;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.jspecify.annotations.Nullable;

/**
 * Writes {@code curves.csv}: the blank's curve in every frame of a cast in which it was found, as {@link #POINTS} points at
 * equal steps along it, the hand first. Lengths are in free lengths (hand to tip along the blank), x towards the water, y up,
 * from where the hand was at the forward start, so that curves of casts filmed from different places lie over one another.
 */
final class CurvesCsv {

    /** Enough that the chords between them stray from a strongly bent blank by less than a thousandth of its length. */
    static final int POINTS = 17;

    void write(ClipAnalysis analysis, Appendable out) throws IOException {
        CSVPrinter printer = new CSVPrinter(
                out,
                CSVFormat.DEFAULT
                        .builder()
                        .setRecordSeparator('\n')
                        .setHeader(header())
                        .get());
        for (CastAnalysis cast : analysis.casts()) {
            write(cast.stroke(), analysis.trace(), printer);
        }
        printer.flush();
    }

    /** The names of the columns. */
    static String[] header() {
        List<String> names = new ArrayList<>(List.of("frame", "seconds", "cast"));
        for (int i = 0; i < POINTS; i++) {
            names.add("x" + i);
            names.add("y" + i);
        }
        return names.toArray(String[]::new);
    }

    private static void write(Stroke stroke, Trace trace, CSVPrinter printer) throws IOException {
        Point origin = origin(stroke, trace);
        if (origin == null || !(trace.freeLengthPx() > 0)) {
            return;
        }
        double towardsWater = stroke.castsTo() == Side.RIGHT ? 1 : -1;
        for (int i = stroke.firstFrame(); i <= stroke.lastFrame(); i++) {
            FrameTrace f = trace.frames().get(i);
            Polyline blank = f.blank();
            if (blank == null) {
                continue;
            }
            List<String> row = new ArrayList<>();
            row.add(Integer.toString(f.frame()));
            row.add(number(f.seconds(), 6));
            row.add(Integer.toString(stroke.number()));
            for (Point p : blank.resampled(POINTS).points()) {
                row.add(number(towardsWater * (p.x() - origin.x()) / trace.freeLengthPx(), 4));
                row.add(number((origin.y() - p.y()) / trace.freeLengthPx(), 4));
            }
            printer.printRecord(row);
        }
    }

    /** Where the hand was at the forward start or, where that is not known, in the first frame that shows the blank. */
    private static @Nullable Point origin(Stroke stroke, Trace trace) {
        Integer start = stroke.event(EventKind.FORWARD_START).frame();
        int from = start == null ? stroke.firstFrame() : start;
        for (int i = from; i <= stroke.lastFrame(); i++) {
            Polyline blank = trace.frames().get(i).blank();
            if (blank != null) {
                return blank.first();
            }
        }
        return null;
    }

    private static String number(double value, int decimals) {
        return String.format(Locale.ROOT, "%." + decimals + "f", value);
    }
}
