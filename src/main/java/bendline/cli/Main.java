package bendline.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import picocli.CommandLine;
import picocli.CommandLine.ParseResult;

/** Entry point of the command line. */
public final class Main {

    private Main() {}

    /** Runs a command and ends the program with its exit status. */
    public static void main(String[] args) {
        PrintWriter out = new PrintWriter(System.out, true, StandardCharsets.UTF_8);
        PrintWriter err = new PrintWriter(System.err, true, StandardCharsets.UTF_8);
        int status = run(out, err, args);
        out.flush();
        err.flush();
        System.exit(status);
    }

    /**
     * Runs a command.
     *
     * @param out where results are printed
     * @param err where errors and progress are printed
     * @param args the command line
     * @return the exit status: 0 done, 2 wrong use, 3 input can't be used, 4 the program failed
     */
    public static int run(PrintWriter out, PrintWriter err, String... args) {
        CommandLine line = new CommandLine(new BendlineCommand())
                .setOut(out)
                .setErr(err)
                .setUsageHelpLongOptionsMaxWidth(30)
                .setParameterExceptionHandler((problem, a) -> report(problem, err, false))
                .setExecutionExceptionHandler((problem, l, parsed) -> report(problem, err, isVerbose(parsed)));
        try {
            return line.execute(args);
        } catch (StackOverflowError | OutOfMemoryError problem) {
            return report(problem, err, false);
        }
    }

    private static boolean isVerbose(ParseResult parsed) {
        ParseResult last = parsed;
        while (last.hasSubcommand()) {
            last = last.subcommand();
        }
        return last.hasMatchedOption("--verbose");
    }

    private static int report(Throwable problem, PrintWriter err, boolean verbose) {
        Complaint complaint = Complaint.about(problem);
        err.println("bendline: " + complaint.sentence());
        if (verbose) {
            problem.printStackTrace(err);
        }
        err.flush();
        return complaint.status();
    }
}
