package bendline.benchmark;

import bendline.benchmark.TraceNoise.Part;
import bendline.geometry.Angles;
import bendline.geometry.Point;
import bendline.geometry.Polyline;
import bendline.trace.FrameTrace;
import bendline.trace.Tracked;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Measures how the tracker errs on clips whose truth is known, from kept traces: {@code NoiseFit TRACES CLIPS…} prints the lines
 * of {@code trace-noise.csv}. Never to be run on the benchmark's clips.
 */
public final class NoiseFit {

    private static final double FAST_SECONDS = 0.4;
    private static final double LEAST_STRAY_PX = 8;
    private static final double LEAST_STRAY_DEG = 2;
    private static final int LEAST_FRAMES = 100;

    private NoiseFit() {}

    /** Runs it. */
    public static void main(String[] args) throws IOException {
        List<Path> clips = Arrays.stream(args).skip(1).map(Path::of).toList();
        for (ReadTraces.Kept k : ReadTraces.kept(Path.of(args[0]), clips)) {
            if (k.trace().foundRod() && !k.truth().casts().isEmpty()) {
                System.out.println(fit(k).line());
            }
        }
    }

    /** One frame's errors: of two coordinates, what the tracker states, whether it was seen; NaN where the truth has nothing. */
    private record Row(double time, boolean fast, boolean asked, boolean seen, double dx, double dy, double stated) {}

    private static TraceNoise fit(ReadTraces.Kept k) {
        List<Row> tip = new ArrayList<>();
        List<Row> butt = new ArrayList<>();
        List<Row> rig = new ArrayList<>();
        List<Row> flight = new ArrayList<>();
        List<Row> hand = new ArrayList<>();
        for (FrameTrace raw : k.trace().frames()) {
            FrameTrace f = k.trace().inPicture(raw.frame());
            TruthFrame t = k.truth().at(f.seconds());
            double at = f.seconds() / k.slow();
            boolean fast = k.truth().casts().stream()
                    .anyMatch(c -> Math.abs(c.events().get("release") / k.slow() - at) < FAST_SECONDS);
            tip.add(row(at, fast, t.tipInView(), f.tip(), t.tip()));
            (t.rigHeld() ? rig : flight).add(row(at, fast, t.rigInView(), f.rig(), t.rig()));
            hand.add(row(at, fast, true, f.grip(), t.grip()));
            butt.add(butt(at, fast, f.blank(), t.blank(), f.buttAngleSd()));
        }
        return new TraceNoise(
                k.name(),
                part(tip, LEAST_STRAY_PX, 1.515),
                part(butt, LEAST_STRAY_DEG, 1),
                part(rig, LEAST_STRAY_PX, 1.515),
                part(flight, LEAST_STRAY_PX, 1.515),
                part(centred(hand), LEAST_STRAY_PX, 1.515));
    }

    private static Row row(double at, boolean fast, boolean asked, Tracked t, @Nullable Point truth) {
        Point p = t.position();
        boolean seen = t.seen() && p != null;
        Point d = seen && p != null && truth != null ? p.minus(truth) : new Point(Double.NaN, Double.NaN);
        return new Row(at, fast, asked && truth != null, seen, d.x(), d.y(), t.sdPx());
    }

    private static Row butt(double at, boolean fast, @Nullable Polyline traced, @Nullable Polyline truth, double sd) {
        boolean seen = traced != null;
        double d = traced == null || truth == null
                ? Double.NaN
                : Math.toDegrees(Angles.wrap(NoisyFilm.direction(traced) - NoisyFilm.direction(truth)));
        return new Row(at, fast, truth != null, seen, d, Double.NaN, Math.toDegrees(sd));
    }

    /** The tracker's hand lies elsewhere on the rod than the truth's; what counts is how it moves against it. */
    private static List<Row> centred(List<Row> rows) {
        double mx = median(rows.stream().mapToDouble(Row::dx));
        double my = median(rows.stream().mapToDouble(Row::dy));
        return rows.stream()
                .map(r -> new Row(r.time, r.fast, r.asked, r.seen, r.dx - mx, r.dy - my, r.stated))
                .toList();
    }

    private static Part part(List<Row> rows, double leastStray, double radiusOverSd) {
        List<Row> seen = rows.stream()
                .filter(r -> r.asked && r.seen && !Double.isNaN(r.dx))
                .toList();
        double typical = median(seen.stream().mapToDouble(NoiseFit::size)) / (radiusOverSd > 1 ? 1.177 : 0.6745);
        double limit = Math.max(leastStray, 6 * typical);
        boolean[] stray = new boolean[rows.size()];
        for (int i = 0; i < stray.length; i++) {
            Row r = rows.get(i);
            stray[i] = r.asked && r.seen && size(r) > limit;
        }
        List<Row> good = seen.stream().filter(r -> size(r) <= limit).toList();
        double[] drift = drift(rows, stray);
        double sd =
                Math.sqrt(good.stream().mapToDouble(r -> r.dx * r.dx).average().orElse(0));
        double stated = median(good.stream().mapToDouble(r -> r.stated)) / radiusOverSd / Math.max(1e-6, sd);
        boolean[] gap = new boolean[rows.size()];
        for (int i = 0; i < gap.length; i++) {
            gap[i] = rows.get(i).asked && !rows.get(i).seen;
        }
        return new Part(
                sd,
                drift[0],
                drift[1],
                stated,
                share(rows, gap, false, r -> r.asked),
                share(rows, gap, true, r -> r.asked),
                runSeconds(rows, gap),
                share(rows, stray, false, r -> r.asked && r.seen),
                share(rows, stray, true, r -> r.asked && r.seen),
                runSeconds(rows, stray),
                median(IntStream.range(0, stray.length).filter(i -> stray[i]).mapToDouble(i -> size(rows.get(i)))));
    }

    /** Share of the variance that is alike from one frame to the next, and how long it stays so. */
    private static double[] drift(List<Row> rows, boolean[] stray) {
        double step = (rows.get(rows.size() - 1).time - rows.get(0).time) / Math.max(1, rows.size() - 1);
        int far = (int) Math.max(2, Math.round(0.1 / step));
        double near = alike(rows, stray, 1);
        double later = alike(rows, stray, far);
        if (!(near > 0.02) || rows.size() < LEAST_FRAMES) {
            return new double[] {0, 0.1};
        }
        double ratio = Math.max(0.02, Math.min(0.98, later / near));
        double seconds = -(far - 1) * step / Math.log(ratio);
        return new double[] {Math.min(1, near / Math.exp(-step / seconds)), seconds};
    }

    private static double alike(List<Row> rows, boolean[] stray, int lag) {
        double both = 0;
        double own = 0;
        for (int i = 0; i + lag < rows.size(); i++) {
            Row a = rows.get(i);
            Row b = rows.get(i + lag);
            boolean known = a.asked && b.asked && a.seen && b.seen && !stray[i] && !stray[i + lag];
            if (known && !Double.isNaN(a.dx + b.dx)) {
                both += a.dx * b.dx;
                own += 0.5 * (a.dx * a.dx + b.dx * b.dx);
            }
        }
        return own > 0 ? both / own : 0;
    }

    private static double share(
            List<Row> rows, boolean[] which, boolean fast, java.util.function.Predicate<Row> asked) {
        int hits = 0;
        int all = 0;
        for (int i = 0; i < which.length; i++) {
            if (rows.get(i).fast == fast && asked.test(rows.get(i))) {
                all++;
                hits += which[i] ? 1 : 0;
            }
        }
        return all == 0 ? 0 : (double) hits / all;
    }

    private static double runSeconds(List<Row> rows, boolean[] which) {
        int runs = 0;
        int frames = 0;
        for (int i = 0; i < which.length; i++) {
            frames += which[i] ? 1 : 0;
            runs += which[i] && (i == 0 || !which[i - 1]) ? 1 : 0;
        }
        double step = (rows.get(rows.size() - 1).time - rows.get(0).time) / Math.max(1, rows.size() - 1);
        return runs == 0 ? 0 : frames * step / runs;
    }

    private static double size(Row r) {
        return Double.isNaN(r.dy) ? Math.abs(r.dx) : Math.hypot(r.dx, r.dy);
    }

    private static double median(java.util.stream.DoubleStream values) {
        return new Spread(values.toArray()).median();
    }
}
