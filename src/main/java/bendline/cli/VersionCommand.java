package bendline.cli;

import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Prints the version. */
@Command(
        name = "version",
        description = "Print the version and the Java it runs on.",
        mixinStandardHelpOptions = true,
        versionProvider = VersionCommand.Provider.class)
final class VersionCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() {
        for (String line : new Provider().getVersion()) {
            spec.commandLine().getOut().println(line);
        }
        return ExitStatus.DONE;
    }

    /** Reads the version from the jar. */
    static final class Provider implements IVersionProvider {

        @Override
        public String[] getVersion() {
            @Nullable String version = Main.class.getPackage().getImplementationVersion();
            return new String[] {
                "bendline " + (version == null ? "(not from a jar)" : version) + ", Java "
                        + Runtime.version() + ", " + System.getProperty("os.name") + " "
                        + System.getProperty("os.arch")
            };
        }
    }
}
