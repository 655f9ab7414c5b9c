package bendline.cli;

import bendline.flight.CommonPractice;
import bendline.flight.CommonPractice.Row;
import java.io.PrintWriter;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** The sayings of distance anglers against the model. */
@Command(
        name = "check",
        description =
                "Hold the flight against what distance anglers say (common practice, no source), with plain numbers and one"
                        + " fitted loss; prints a table.",
        mixinStandardHelpOptions = true,
        versionProvider = VersionCommand.Provider.class)
final class ReachCheckCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        out.println("| saying | said | worked out | |");
        out.println("|---|---|---|---|");
        for (Row r : CommonPractice.rows()) {
            out.println(String.format(
                    Locale.ROOT,
                    "| %s | %s to %s %s | %s %s | %s |",
                    r.what(),
                    Quantities.plain(r.from()),
                    Quantities.plain(r.to()),
                    r.unit(),
                    Quantities.plain(r.model()),
                    r.unit(),
                    r.fitted() ? "fitted" : r.holds() ? "holds" : "misses ✗"));
        }
        out.println();
        out.println(CommonPractice.given()
                + String.format(
                        Locale.ROOT,
                        " It comes to %.1f.",
                        CommonPractice.fitted().loss()));
        return ExitStatus.DONE;
    }
}
