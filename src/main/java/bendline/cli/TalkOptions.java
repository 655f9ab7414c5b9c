package bendline.cli;

import bendline.footage.NativeLog;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** How much the program says while it works. */
final class TalkOptions {

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Option(names = "--quiet", description = "Print nothing but errors.")
    private boolean quiet;

    @Option(
            names = "--verbose",
            description = "Let the video libraries print their own lines and show where an error arose.")
    private boolean verbose;

    /** Sets how much the native libraries print. */
    void apply() {
        if (quiet && verbose) {
            throw new ParameterException(spec.commandLine(), "--quiet and --verbose contradict each other; give one.");
        }
        if (verbose) {
            NativeLog.verbose();
        } else {
            NativeLog.quiet();
        }
    }

    boolean quiet() {
        return quiet;
    }

    /** Bars where somebody watches, words unless they are unwanted. */
    Bars bars() {
        return quiet ? Bars.silent() : Bars.saying(spec.commandLine().getOut(), System.console() != null);
    }
}
