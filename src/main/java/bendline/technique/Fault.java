package bendline.technique;

import bendline.stroke.Event;
import bendline.stroke.EventKind;
import bendline.stroke.Stroke;
import bendline.technique.Criterion.Answer;
import bendline.technique.Finding.Check;
import bendline.technique.Finding.State;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * A fault that is looked for: found where enough of its criteria speak for it, clear where they no longer can, else it cannot
 * be told.
 *
 * @param id name in files
 * @param title words for people
 * @param criteria its sides
 * @param needed how many must speak for it; two wherever two can be had
 * @param evidence the moments whose frames show it
 * @param praise what to say where it is clear, with {measure} in braces; empty for nothing
 * @param cost why it costs distance or control
 * @param drill what to practise
 * @param roots measures of which one at least must not be known to be right, or what else was seen has another cause; may be empty
 */
record Fault(
        String id,
        String title,
        List<Criterion> criteria,
        int needed,
        List<EventKind> evidence,
        String praise,
        String cost,
        String drill,
        Set<String> roots) {

    Fault(
            String id,
            String title,
            List<Criterion> criteria,
            int needed,
            List<EventKind> evidence,
            String praise,
            String cost,
            String drill) {
        this(id, title, criteria, needed, evidence, praise, cost, drill, Set.of());
    }

    /** The same that is not found where all of these measures are known and right. */
    Fault rootedIn(String... measures) {
        return new Fault(id, title, criteria, needed, evidence, praise, cost, drill, Set.of(measures));
    }

    Finding look(Stroke stroke, Limits limits) {
        List<Answer> answers = criteria.stream().map(c -> c.ask(stroke, limits)).toList();
        State state = state(answers);
        List<Check> checks = answers.stream().flatMap(a -> a.checks().stream()).toList();
        return new Finding(
                id,
                title,
                state,
                state == State.FOUND ? severity(answers) : 0,
                checks,
                frames(stroke),
                Sentences.brief(state, answers),
                Sentences.says(state, answers, needed),
                cost,
                drill);
    }

    private State state(List<Answer> answers) {
        long found = count(answers, State.FOUND);
        long open = count(answers, State.CANNOT_TELL);
        boolean missing = false;
        boolean mustOpen = false;
        for (Answer a : answers) {
            missing |= a.criterion().must() && a.state() == State.CLEAR;
            mustOpen |= a.criterion().must() && a.state() == State.CANNOT_TELL;
        }
        if (missing || found + open < needed || rootless(answers)) {
            return State.CLEAR;
        }
        return found >= needed && !mustOpen ? State.FOUND : State.CANNOT_TELL;
    }

    private boolean rootless(List<Answer> answers) {
        return !roots.isEmpty()
                && answers.stream()
                        .flatMap(a -> a.checks().stream())
                        .filter(c -> roots.contains(c.measure().id()))
                        .allMatch(c -> c.verdict() == State.CLEAR);
    }

    private static long count(List<Answer> answers, State state) {
        return answers.stream().filter(a -> a.state() == state).count();
    }

    /** Mean of the strongest criteria that were needed, and never nothing. */
    private double severity(List<Answer> answers) {
        List<Double> found = answers.stream()
                .filter(a -> a.state() == State.FOUND)
                .map(Answer::severity)
                .sorted(Comparator.reverseOrder())
                .limit(needed)
                .toList();
        double mean = found.stream().mapToDouble(x -> x).average().orElse(0);
        return Math.max(0.05, Math.round(mean * 100) / 100.0);
    }

    private List<Integer> frames(Stroke stroke) {
        TreeSet<Integer> frames = new TreeSet<>();
        for (EventKind k : evidence) {
            Event e = stroke.event(k);
            if (e.frame() != null) {
                frames.add(e.frame());
            }
        }
        return new ArrayList<>(frames);
    }
}
