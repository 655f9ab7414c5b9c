package bendline.report;

import bendline.analysis.ClipAnalysis;
import bendline.stroke.Kinematics;
import bendline.stroke.Stroke;
import bendline.trace.FrameTrace;
import bendline.trace.Trace;
import bendline.trace.Tracked;
import java.io.IOException;
import java.util.Locale;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.jspecify.annotations.Nullable;

/**
 * Writes {@code frames.csv}: one row a decoded frame, positions in the pixels of that frame's own picture, angles and
 * speeds only within a cast. A cell is empty where nothing was measured; guesses that bridge a gap are not written.
 */
final class FramesCsv {

    private static final CSVFormat FORMAT = CSVFormat.DEFAULT
            .builder()
            .setRecordSeparator('\n')
            .setHeader(
                    "frame",
                    "seconds",
                    "cast",
                    "grip_x",
                    "grip_y",
                    "tip_x",
                    "tip_y",
                    "tip_sd",
                    "tip_seen",
                    "rig_x",
                    "rig_y",
                    "rig_sd",
                    "rig_seen",
                    "butt_angle_deg",
                    "chord_ratio",
                    "tip_speed_mps")
            .get();

    void write(ClipAnalysis analysis, Appendable out) throws IOException {
        Trace trace = analysis.trace();
        CSVPrinter printer = new CSVPrinter(out, FORMAT);
        for (int i = 0; i < trace.frames().size(); i++) {
            FrameTrace f = trace.inPicture(i);
            printer.printRecord(row(f, strokeAt(analysis, f.frame())));
        }
        printer.flush();
    }

    private static @Nullable Stroke strokeAt(ClipAnalysis analysis, int frame) {
        return analysis.casts().stream()
                .map(c -> c.stroke())
                .filter(s -> frame >= s.firstFrame() && frame <= s.lastFrame())
                .findFirst()
                .orElse(null);
    }

    private static Object[] row(FrameTrace f, @Nullable Stroke stroke) {
        Tracked grip = f.grip();
        Tracked tip = f.tip();
        Tracked rig = f.rig();
        return new Object[] {
            f.frame(),
            number(f.seconds(), 6),
            stroke == null ? "" : stroke.number(),
            x(grip),
            y(grip),
            x(tip),
            y(tip),
            number(tip.sdPx(), 2),
            tip.seen() ? 1 : 0,
            x(rig),
            y(rig),
            number(rig.sdPx(), 2),
            rig.seen() ? 1 : 0,
            stroke == null
                    ? ""
                    : number(Math.toDegrees(at(stroke, f.frame(), k(stroke).buttAngleRad())), 2),
            stroke == null ? "" : number(at(stroke, f.frame(), k(stroke).chordRatio()), 4),
            stroke == null ? "" : number(at(stroke, f.frame(), k(stroke).tipSpeed()), 2)
        };
    }

    private static Kinematics k(Stroke stroke) {
        return stroke.kinematics();
    }

    private static double at(Stroke stroke, int frame, double[] series) {
        int i = frame - stroke.kinematics().firstFrame();
        return i >= 0 && i < series.length ? series[i] : Double.NaN;
    }

    private static String x(Tracked t) {
        return t.seen() && t.position() != null ? number(t.position().x(), 2) : "";
    }

    private static String y(Tracked t) {
        return t.seen() && t.position() != null ? number(t.position().y(), 2) : "";
    }

    private static String number(double value, int decimals) {
        return Double.isFinite(value) ? String.format(Locale.ROOT, "%." + decimals + "f", value) : "";
    }
}
