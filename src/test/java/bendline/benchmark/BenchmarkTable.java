package bendline.benchmark;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;

/** Writes scores as Markdown: every target beside what was reached, misses marked. */
final class BenchmarkTable {

    private static final List<String> RIVALS = List.of("CSRT", "KCF", "LK");
    private static final double PERCENT = 100;

    private final StringBuilder out = new StringBuilder();

    /** One set of clips: the rows of the targets with ours and the general trackers side by side. */
    BenchmarkTable set(String heading, ClipScore s) {
        out.append("\n**").append(heading).append("**\n\n");
        out.append("| what | target | Bendline | CSRT | KCF | Lucas–Kanade |\n|---|---|---|---|---|---|\n");
        tip(s);
        rigAndBlank(s);
        strokes(s.casts());
        calibration(s);
        row(
                "followed without a click (tip right in ≥ 90 % of its frames)",
                "≥ 90 % of clips", of(s.noClicks(), 90, Double.POSITIVE_INFINITY));
        return this;
    }

    private void tip(ClipScore s) {
        PointScore ours = PointScore.of(s.trace());
        rivals(
                "tip, median error where seen",
                "≤ 1 px",
                ours,
                s,
                p -> px(p.errors().median(), 1));
        rivals(
                "tip, 95 % of errors where seen",
                "≤ 4 px", ours, s, p -> px(p.errors().p95(), 4));
        rivals("tip lost, or wrong by more than 20 px", "≤ 1 %", ours, s, p -> of(p.lostOrWrong(), 0, 1));
        rivals("tip called seen, of the frames in view", "–", ours, s, p -> plain(p.seen()));
        both("tip, median error of ours and of theirs in the frames that both call seen", s, Spread::median);
        both("the same, 95 % of errors", s, Spread::p95);
        row(
                "tip wrong by more than 20 px, of those called seen",
                "–",
                plain(s.trace().tipWrongAmongSeen()));
        row(
                "tip called seen where it is out of the picture",
                "–",
                plain(s.trace().tipInvented()));
    }

    private void rigAndBlank(ClipScore s) {
        TraceScore t = s.trace();
        row("rig, median error before release", "≤ 2 px", px(t.rig().median(), 2));
        row("rig, 95 % of errors before release", "–", px(t.rig().p95(), Double.POSITIVE_INFINITY));
        row("rig seen, of all frames in view", "≥ 90 %", of(t.rigSeen(), 90, Double.POSITIVE_INFINITY));
        row("rig seen, of the frames in view before release", "–", plain(t.rigSeenBefore()));
        row("rig called seen where it is out of the picture", "–", plain(t.rigInvented()));
        row("blank, mean distance", "≤ 1 px", px(t.blank().mean(), 1));
        row("blank traced, of the frames with the tip in view", "–", plain(t.blankTraced()));
    }

    private void strokes(CastScore c) {
        row(
                "compression, 68 % (95 %) of errors",
                "± 0.015",
                judged(c.compression().quantile(0.68), 0.015, "%.4f", "")
                        + text(" (%.4f)", c.compression().p95()));
        load(c);
        row(
                "events but the release, median error",
                "≤ 0.5 frames",
                judged(c.events().errors(k -> !k.equals("release")).median(), 0.5, "%.2f", " frames"));
        row(
                "events but the release, 95 % of errors",
                "≤ 1.5 frames",
                judged(c.events().errors(k -> !k.equals("release")).p95(), 1.5, "%.2f", " frames"));
        Spread release = c.events().errors("release"::equals);
        row(
                "release, 68 % (95 %) of errors",
                "≤ 1 frame", judged(release.quantile(0.68), 1, "%.2f", " frames") + text(" (%.2f)", release.p95()));
        row("moments told, of those that happened", "–", plain(c.events().told(k -> true)));
        row(
                "launch speed, 68 % of errors",
                "± 4 %", judged(PERCENT * c.launchSpeed().quantile(0.68), 4, "%.1f", " %") + told(c.launchSpeed(), c));
        row(
                "launch angle, 68 % of errors",
                "± 2°", judged(c.launchAngleDeg().quantile(0.68), 2, "%.1f", "°") + told(c.launchAngleDeg(), c));
        row("casts reported, of those made", "all", of(c.found(), PERCENT, Double.POSITIVE_INFINITY));
        row("casts reported that nobody made", "0", judged(c.invented(), 0, "%.0f", ""));
        row(
                "findings: false alarms, of the casts without the fault",
                "0",
                of(c.findings().falseAlarms(), 0, 0));
        row("findings: misses, of the plain cases", "0", of(c.findings().misses(), 0, 0));
        row(
                "findings: no verdict, of plain cases and casts without the fault",
                "–",
                plain(c.findings().undecided()));
    }

    /** The rod was measured under a weight beforehand, as an angler can with a bottle of water. */
    private void load(CastScore c) {
        Spread arcs = c.load().arcs();
        row(
                "compression of the bend arcs, the phone's angle undone, 68 % (95 %) of errors",
                "± 0.015", judged(arcs.quantile(0.68), 0.015, "%.4f", "") + text(" (%.4f)", arcs.p95()));
        Spread pull = c.load().pull();
        row(
                "largest pull on the tip over 40 ms, 68 % of errors",
                "± 20 %", judged(PERCENT * pull.quantile(0.68), 20, "%.1f", " %") + told(pull, c));
        Spread energy = c.load().energy();
        row(
                "most energy in the bend, 68 % of errors",
                "–",
                (energy.count() == 0 ? "not told" : text("%.1f %%", PERCENT * energy.quantile(0.68)))
                        + told(energy, c));
        row("largest pulls within their stated 68 %", "60–76 %", of(c.load().pullWithin(), 60, 76));
    }

    private void calibration(ClipScore s) {
        row("tips within their stated 68 % radius", "60–76 %", of(s.trace().tipWithinSd(), 60, 76));
        row("rigs within their stated 68 % radius", "60–76 %", of(s.trace().rigWithinSd(), 60, 76));
        row(
                "directions at the grip within their stated 68 %",
                "60–76 %", of(s.trace().buttWithinSd(), 60, 76));
        row("moments within their stated 68 %", "60–76 %", of(s.casts().events().withinStated(k -> true), 60, 76));
    }

    /** Time and memory against decoding alone. */
    BenchmarkTable load(String clip, Load decode, Load analyse) {
        out.append("\n**Time and memory**, each in a process of its own, on ")
                .append(clip)
                .append("\n\n");
        out.append("| what | target | decoding alone | whole analysis | ratio |\n|---|---|---|---|---|\n");
        out.append(text(
                "| wall clock | ≤ 2 × decoding | %.1f s | %.1f s | %s |%n",
                decode.seconds(), analyse.seconds(), judged(analyse.seconds() / decode.seconds(), 2, "%.2f", "")));
        out.append(text(
                "| processor time | – | %.1f s | %.1f s | %.2f |%n",
                decode.cpuSeconds(), analyse.cpuSeconds(), analyse.cpuSeconds() / decode.cpuSeconds()));
        out.append(text(
                "| largest resident memory | ≤ 1024 MiB | %.0f MiB | %s | %.2f |%n",
                decode.peakMiB(),
                judged(analyse.peakMiB(), 1024, "%.0f", " MiB"),
                analyse.peakMiB() / decode.peakMiB()));
        return this;
    }

    /** The marked clip against real time. */
    BenchmarkTable marked(String clip, double clipSeconds, Load mark) {
        out.append(text(
                "%nThe marked clip with its panel, of %s (%.1f s): written in %.1f s, %s of real time (target ≤ 1.5); %.1f s"
                        + " of processor time, %.0f MiB.%n",
                clip,
                clipSeconds,
                mark.seconds(),
                judged(mark.seconds() / clipSeconds, 1.5, "%.2f", " times"),
                mark.cpuSeconds(),
                mark.peakMiB()));
        return this;
    }

    /** The tip clip by clip. */
    BenchmarkTable clips(String heading, List<ClipScore> clips) {
        out.append("\n**").append(heading).append("**\n\n");
        out.append("| clip | tip median px | tip 95 % px | lost or wrong | rig median px | rig seen | blank mean px"
                + " | release, frames | casts told / made |\n|---|---|---|---|---|---|---|---|---|\n");
        for (ClipScore c : clips) {
            out.append(clip(c));
        }
        return this;
    }

    /** One row of the table clip by clip. */
    static String clip(ClipScore c) {
        return text(
                "| %s | %.2f | %.2f | %s | %.2f | %s | %.2f | %.2f | %d / %d%s |%n",
                c.name(),
                c.trace().tip().median(),
                c.trace().tip().p95(),
                plain(c.trace().tipLostOrWrong()),
                c.trace().rig().median(),
                plain(c.trace().rigSeen()),
                c.trace().blank().mean(),
                c.casts().events().errors("release"::equals).median(),
                c.casts().found().hits(),
                c.casts().found().of(),
                c.casts().invented() == 0 ? "" : " and " + c.casts().invented() + " invented");
    }

    /** Moments kind by kind, and verdicts fault by fault. */
    BenchmarkTable details(ClipScore s) {
        out.append("\n| moment | told | median, frames | 95 %, frames | within stated |\n|---|---|---|---|---|\n");
        for (String kind : s.casts().events().entries().stream()
                .map(EventScore.Entry::kind)
                .distinct()
                .sorted()
                .toList()) {
            Spread e = s.casts().events().errors(kind::equals);
            out.append(text(
                    "| %s | %s | %.2f | %.2f | %s |%n",
                    kind,
                    plain(s.casts().events().told(kind::equals)),
                    e.median(),
                    e.p95(),
                    plain(s.casts().events().withinStated(kind::equals))));
        }
        out.append('\n').append(s.casts().findings().table());
        return this;
    }

    /** A paragraph. */
    BenchmarkTable say(String paragraph) {
        out.append('\n').append(paragraph).append('\n');
        return this;
    }

    private void rivals(String what, String target, PointScore ours, ClipScore s, Function<PointScore, String> cell) {
        List<String> cells = new ArrayList<>();
        cells.add(cell.apply(ours));
        Map<String, PointScore> baselines = s.baselines();
        for (String rival : RIVALS) {
            PointScore score = baselines.get(rival);
            cells.add(score == null ? "–" : cell.apply(score).replace(" ✗", ""));
        }
        out.append("| ").append(what).append(" | ").append(target).append(" | ");
        out.append(String.join(" | ", cells)).append(" |\n");
    }

    /** One that gives up early is only asked where it is easy; so each beside ours where both were asked. */
    private void both(String what, ClipScore s, ToDoubleFunction<Spread> value) {
        List<String> cells = RIVALS.stream()
                .map(rival -> s.baselines().getOrDefault(rival, PointScore.NONE).both())
                .map(b -> b.ours().count() == 0
                        ? "–"
                        : text("%.2f and %.2f px", value.applyAsDouble(b.ours()), value.applyAsDouble(b.theirs())))
                .toList();
        out.append("| ").append(what).append(" | – | – | ");
        out.append(String.join(" | ", cells)).append(" |\n");
    }

    private void row(String what, String target, String reached) {
        out.append("| ").append(what).append(" | ").append(target).append(" | ");
        out.append(reached).append(" | – | – | – |\n");
    }

    private static String told(Spread errors, CastScore casts) {
        return text(", told for %d of %d casts", errors.count(), casts.found().of());
    }

    private static String px(double value, double limit) {
        return judged(value, limit, "%.2f", " px");
    }

    private static String judged(double value, double limit, String format, String unit) {
        if (Double.isNaN(value)) {
            return "not told ✗";
        }
        return text(format, value) + unit + (value <= limit ? "" : " ✗");
    }

    private static String of(Tally tally, double leastPercent, double mostPercent) {
        double percent = PERCENT * tally.share();
        boolean met = percent >= leastPercent && percent <= mostPercent;
        return plain(tally) + (met || tally.of() == 0 ? "" : " ✗");
    }

    private static String plain(Tally tally) {
        return tally.of() == 0 ? "–" : text("%.1f %% (%d of %d)", PERCENT * tally.share(), tally.hits(), tally.of());
    }

    private static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }

    @Override
    public String toString() {
        return out.toString();
    }
}
