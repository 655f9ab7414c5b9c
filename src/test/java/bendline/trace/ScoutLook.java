package bendline.trace;

import bendline.body.HandHints;
import bendline.footage.ClipInfo;
import bendline.footage.Footage;
import bendline.footage.Frame;
import bendline.footage.LumaReader;
import bendline.geometry.Point;
import bendline.image.Area;
import bendline.scene.Scene;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/**
 * Where a few pictures of a clip say that the rod is held, with and without the hint from hands, beside the truth where there is
 * one: {@code ScoutLook CLIP GRIPS.csv …}; a line of the grips is {@code x,y}, one a frame, {@code -} for no truth.
 */
public final class ScoutLook {

    private static final int SCOUT_FRAMES = 32;
    private static final int HINT_FRAMES = 8;

    private ScoutLook() {}

    /** Prints it. */
    public static void main(String[] args) throws Exception {
        for (int i = 0; i + 1 < args.length; i += 2) {
            look(Path.of(args[i]), args[i + 1].equals("-") ? List.of() : grips(Path.of(args[i + 1])));
        }
    }

    private static List<Point> grips(Path csv) throws Exception {
        try (Stream<String> lines = Files.lines(csv)) {
            return lines.map(l -> l.split(","))
                    .map(p -> new Point(Double.parseDouble(p[0]), Double.parseDouble(p[1])))
                    .toList();
        }
    }

    private static void look(Path clip, List<Point> grips) {
        Footage footage = Footage.open(clip);
        ClipInfo info = footage.survey(f -> {});
        Scene scene = Scene.survey(footage, info, f -> {});
        Scouts scouts = new Scouts(info.width(), info.height());
        List<Frame> kept = new ArrayList<>();
        int step = Math.max(1, info.frames() / SCOUT_FRAMES);
        Area whole = new Area(0, 0, info.width(), info.height());
        try (LumaReader reader = footage.tinted()) {
            for (Frame f = reader.next(); f != null; f = reader.next()) {
                if (f.index() % step == step / 2) {
                    scouts.add(
                            f.seconds(),
                            scene.backdrop()
                                    .difference(f, scene.motion().toReference().get(f.index()), whole));
                    if (scouts.size() % (SCOUT_FRAMES / HINT_FRAMES) == 2) {
                        kept.add(f);
                        continue;
                    }
                }
                reader.giveBack(f);
            }
        }
        System.out.printf(Locale.ROOT, "%s %dx%d%n", clip.getFileName(), info.width(), info.height());
        long t0 = System.nanoTime();
        List<Point> pivots = scouts.pivots();
        long t1 = System.nanoTime();
        pivots.forEach(p -> System.out.println("   pivot " + words(scouts.at(p), grips)));
        long t2 = System.nanoTime();
        List<Point> hints = HandHints.places(kept, scene.motion());
        long t3 = System.nanoTime();
        hints.forEach(p -> System.out.println("   hint  " + words(scouts.at(p), grips)));
        Hands plain = pivots.isEmpty() ? null : scouts.hands(pivots);
        List<Point> both = new ArrayList<>(pivots);
        both.addAll(hints);
        Hands hinted = both.isEmpty() ? null : scouts.hands(both);
        System.out.println("   plain  " + (plain == null ? "none" : words(plain, grips)));
        System.out.println("   hinted " + (hinted == null ? "none" : words(hinted, grips)));
        System.out.printf(
                Locale.ROOT,
                "   seconds: pivots %.2f, their curves %.2f, hints %.2f in %d frames%n",
                (t1 - t0) / 1e9,
                (t2 - t1) / 1e9,
                (t3 - t2) / 1e9,
                kept.size());
    }

    private static String words(Hands h, List<Point> grips) {
        double[] away =
                grips.stream().mapToDouble(g -> g.distance(h.pivot())).sorted().toArray();
        String off = away.length == 0
                ? ""
                : String.format(Locale.ROOT, "off by %.0f, at least %.0f", away[away.length / 2], away[0]);
        return h.curves().isEmpty()
                ? String.format(
                        Locale.ROOT,
                        "%.0f,%.0f no curves %s",
                        h.pivot().x(),
                        h.pivot().y(),
                        off)
                : String.format(
                        Locale.ROOT,
                        "%.0f,%.0f score %.2f agreement %.2f curves %d length %.0f meeting off %.0f %s",
                        h.pivot().x(),
                        h.pivot().y(),
                        h.score(),
                        h.length().agreement(),
                        h.curves().size(),
                        h.length().freePx(),
                        h.meeting().distance(h.pivot()),
                        off);
    }
}
