package bendline.cli;

import bendline.analysis.CastAnalysis;
import bendline.analysis.ClipAnalysis;
import bendline.technique.Finding;
import java.io.PrintWriter;
import java.nio.file.Path;

/** A few lines for the console: what was found and where the report lies. */
final class Summary {

    private Summary() {}

    static void print(ClipAnalysis analysis, Path out, PrintWriter to) {
        if (analysis.casts().isEmpty()) {
            to.println(analysis.quality().says().get(0));
        }
        for (CastAnalysis cast : analysis.casts()) {
            Finding next = cast.review().next();
            to.println("Cast " + cast.stroke().number() + ": "
                    + (next == null ? "no fault found that could be told." : next.title() + ". " + next.brief()));
        }
        to.println("Report: " + out.resolve("report.html"));
    }
}
