package bendline.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The practice book. */
@Command(
        name = "book",
        description = "Keep a practice book: casts with their clips, kit, sessions, distances, drills.",
        mixinStandardHelpOptions = true,
        versionProvider = VersionCommand.Provider.class,
        synopsisSubcommandLabel = "WHAT",
        subcommands = {
            BookAddCommand.class,
            BookMeasureCommand.class,
            BookNotes.List.class,
            BookNotes.Sessions.class,
            BookNotes.People.class,
            BookNotes.Techniques.class,
            BookNotes.Drills.class,
            BookKitCommand.class,
            BookAnalyseCommand.class,
            BookTrendCommand.class,
            BookCare.Export.class,
            BookCare.Import.class,
            BookCare.Backup.class,
            BookCare.Check.class
        },
        footer = {"", "Exit status: 0 done, 2 wrong use, 3 the book or a clip can't be used, 4 the program failed."})
final class BookCommand implements Runnable {

    @Spec
    private CommandSpec spec;

    @Override
    public void run() {
        throw new ParameterException(
                spec.commandLine(), "book needs a word more; for example book add CLIP, or book --help.");
    }
}
