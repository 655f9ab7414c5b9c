package bendline.report;

import bendline.technique.Finding;
import bendline.technique.Finding.Check;
import bendline.technique.Finding.State;
import bendline.technique.Review;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** Every fault that was looked for: found first, with frames and drill; then those that are not there; then the open ones. */
final class FindingsSection {

    private final Review review;
    private final CastFrames frames;
    private final String key;
    private final Html html;

    FindingsSection(Review review, CastFrames frames, String key, Html html) {
        this.review = review;
        this.frames = frames;
        this.key = key;
        this.html = html;
    }

    void write() {
        html.open("section", "id", key + "-findings");
        html.leaf("h2", "What was looked for");
        html.leaf(
                "p",
                "On each line the dot is what was measured, the bar through it its uncertainty, the upright stroke"
                        + " the limit, and the hatched side the fault's.");
        in(State.FOUND).sorted(Comparator.comparing(f -> -f.severity())).forEach(this::finding);
        clear(in(State.CLEAR).toList());
        open(in(State.CANNOT_TELL).toList());
        html.close();
    }

    private void clear(List<Finding> clear) {
        if (clear.isEmpty()) {
            return;
        }
        html.fold("h3", Words.of("Not there: %d", clear.size()));
        html.deeper(html.deeper() + 1);
        clear.forEach(this::finding);
        html.deeper(html.deeper() - 1);
        html.close();
    }

    private void open(List<Finding> open) {
        if (open.isEmpty()) {
            return;
        }
        html.fold("h3", Words.of("Cannot tell: %d, and why", open.size()));
        html.open("dl");
        open.forEach(f -> html.leaf("dt", f.title(), "id", key + "-" + f.id()).leaf("dd", f.says()));
        html.close();
        html.close();
    }

    private Stream<Finding> in(State state) {
        return review.findings().stream().filter(f -> f.state() == state);
    }

    private void finding(Finding f) {
        html.open("section", "class", "finding " + f.state().id(), "id", key + "-" + f.id());
        html.open("h3").text(f.title() + " ");
        html.leaf("span", StateWords.verdict(f), "class", "verdict").close();
        if (f.checks().isEmpty()) {
            html.leaf("p", f.says());
        } else {
            if (f.state() == State.FOUND) {
                html.leaf("p", f.brief());
            }
            html.open("ul", "class", "checks");
            for (int i = 0; i < f.checks().size(); i++) {
                check(f.checks().get(i), key + "-" + f.id() + "-" + i);
            }
            html.close();
        }
        if (f.state() == State.FOUND) {
            frames.strip(f.evidenceFrames(), "Frames that show it");
            labelled("What it costs", f.cost());
            labelled("Drill", f.drill());
        }
        html.close();
    }

    private void check(Check check, String id) {
        html.open("li");
        html.open("span").leaf("b", Words.capital(check.measure().label()));
        String value = check.measure().value() == null ? "" : Words.measured(check.measure()) + ", ";
        html.text(": " + value + StateWords.says(check));
        html.close().raw(LimitLine.draw(check, id));
        html.close();
    }

    private void labelled(String label, String text) {
        if (!text.isBlank()) {
            html.open("p").leaf("b", label + ": ").text(text).close();
        }
    }
}
