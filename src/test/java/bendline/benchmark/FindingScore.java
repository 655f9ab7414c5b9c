package bendline.benchmark;

import java.util.List;
import java.util.Locale;

/**
 * Verdicts against what was scripted.
 *
 * @param entries one a fault and cast
 */
public record FindingScore(List<Entry> entries) {

    /** Nothing. */
    public static final FindingScore NONE = new FindingScore(List.of());

    /**
     * One verdict.
     *
     * @param clip its name
     * @param id of the finding
     * @param grade none, borderline, mild or clear: how plainly the fault was made
     * @param verdict found, clear (of the fault), cannot-tell, or no-cast where the cast itself was overlooked
     */
    public record Entry(String clip, String id, String grade, String verdict) {}

    /** Copies the list. */
    public FindingScore {
        entries = List.copyOf(entries);
    }

    /** How often a verdict was given where the fault was made to a grade. */
    public int count(String id, String grade, String verdict) {
        return (int) entries.stream()
                .filter(e -> e.id().equals(id)
                        && e.grade().equals(grade)
                        && e.verdict().equals(verdict))
                .count();
    }

    /** Of the casts without the fault: reported all the same. */
    public Tally falseAlarms() {
        return tally("none", "found");
    }

    /** Of the casts with the plain fault: called clear of it. */
    public Tally misses() {
        return tally("clear", "clear");
    }

    /** Of the casts with or without the plain fault: no verdict. */
    public Tally undecided() {
        Tally out = Tally.NONE;
        for (Entry e : entries) {
            if (e.grade().equals("none") || e.grade().equals("clear")) {
                out = out.plus(e.verdict().equals("cannot-tell") || e.verdict().equals("no-cast"));
            }
        }
        return out;
    }

    private Tally tally(String grade, String verdict) {
        Tally out = Tally.NONE;
        for (Entry e : entries) {
            if (e.grade().equals(grade)) {
                out = out.plus(e.verdict().equals(verdict));
            }
        }
        return out;
    }

    /** A Markdown table of verdicts by grade, one row a fault and grade. */
    public String table() {
        StringBuilder out =
                new StringBuilder("| fault | made | found | clear of it | cannot tell | cast overlooked |\n");
        out.append("|---|---|---|---|---|---|\n");
        for (String id : entries.stream().map(Entry::id).distinct().sorted().toList()) {
            for (String grade : List.of("none", "borderline", "mild", "clear")) {
                int found = count(id, grade, "found");
                int clear = count(id, grade, "clear");
                int cannot = count(id, grade, "cannot-tell");
                int none = count(id, grade, "no-cast");
                if (found + clear + cannot + none > 0) {
                    out.append(String.format(
                            Locale.ROOT, "| %s | %s | %d | %d | %d | %d |%n", id, grade, found, clear, cannot, none));
                }
            }
        }
        return out.toString();
    }
}
