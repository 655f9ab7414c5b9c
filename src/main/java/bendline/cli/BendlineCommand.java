package bendline.cli;

import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The program itself, which only makes sense with a command. */
@Command(
        name = "bendline",
        description = {"Reads a side-on phone clip of an overhead feeder cast and says what the stroke did.", ""},
        subcommands = {
            AnalyseCommand.class,
            ReachCommand.class,
            RodCommand.class,
            CompareCommand.class,
            BookCommand.class,
            ServeCommand.class,
            WorkbenchCommand.class,
            SimulateCommand.class,
            VersionCommand.class,
            CommandLine.HelpCommand.class
        },
        mixinStandardHelpOptions = true,
        versionProvider = VersionCommand.Provider.class,
        synopsisSubcommandLabel = "COMMAND",
        footer = {"", "Exit status: 0 done, 2 wrong use, 3 input can't be used, 4 the program failed."})
final class BendlineCommand implements Runnable {

    @Spec
    private CommandSpec spec;

    @Override
    public void run() {
        throw new ParameterException(
                spec.commandLine(), "No command was given; name one, for example analyse CLIP --out DIR.");
    }
}
