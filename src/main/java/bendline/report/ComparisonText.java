package bendline.report;

import bendline.compare.Comparison;
import bendline.compare.Difference;
import java.util.List;

/** A comparison in lines for the console. */
public final class ComparisonText {

    private ComparisonText() {}

    /** What changed besides the stroke, one sentence each. */
    public static List<String> besides(Comparison c) {
        return CompareWords.besides(c);
    }

    /** One measure in one line. */
    public static String line(Difference d) {
        return CompareWords.verdict(d) + ": " + d.label() + " " + CompareWords.difference(d) + ". "
                + String.join(" ", CompareWords.says(d));
    }
}
