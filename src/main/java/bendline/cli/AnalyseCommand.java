package bendline.cli;

import bendline.analysis.Analyser;
import bendline.analysis.ClipAnalysis;
import bendline.footage.Footage;
import bendline.report.CastFolder;
import bendline.report.SummaryJson;
import bendline.scene.Setup;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** A clip in, a folder with the report out. */
@Command(
        name = "analyse",
        description = "Follow the rod through CLIP and write a report folder.",
        mixinStandardHelpOptions = true,
        versionProvider = VersionCommand.Provider.class,
        sortOptions = false,
        footer = {
            "",
            "Writes report.html, analysis.json, frames.csv, curves.csv, marked.mp4, frames/ and charts/ into DIR, which"
                    + " must not exist yet or be empty; report.pdf too with --pdf.",
            "Exit status: 0 done (also where the clip holds no cast), 2 wrong use, 3 the clip can't be used, 4 the"
                    + " program failed."
        })
final class AnalyseCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Parameters(paramLabel = "CLIP", description = "The clip to read.")
    private Path clip;

    @Option(names = "--out", paramLabel = "DIR", required = true, description = "Folder to write.")
    private Path out;

    @Option(
            names = "--turn",
            paramLabel = "DEG",
            defaultValue = "0",
            description = "Turn the picture clockwise by 90, 180 or 270 degrees, for a clip that lies on its side"
                    + " because it doesn't say how it was held.")
    private int turnDegrees;

    @Option(names = "--json", description = "Print one line of JSON for scripts, and nothing else.")
    private boolean json;

    @Mixin
    private FaceOptions faces;

    @Mixin
    private ReportChoices choices;

    @Mixin
    private SetupOptions setupOptions;

    @Mixin
    private ConditionOptions conditionOptions;

    @Mixin
    private BlankOptions blankOptions;

    @Mixin
    private TalkOptions talk;

    @Override
    public Integer call() throws Exception {
        Setup setup = blankOptions.addedTo(setupOptions.toSetup(conditionOptions.toConditions()));
        if (turnDegrees < 0 || turnDegrees > 270 || turnDegrees % 90 != 0) {
            throw new ParameterException(
                    spec.commandLine(), "The turn " + turnDegrees + " is not one of 0, 90, 180 and 270 degrees.");
        }
        choices.check();
        CastFolder.check(out);
        talk.apply();
        try (Bars bars = json ? Bars.silent() : talk.bars()) {
            ClipAnalysis analysis = new Analyser().analyse(Footage.open(clip, turnDegrees), setup, bars);
            new CastFolder().write(analysis, out, choices.toOptions(faces.of(analysis, bars)), bars);
            bars.close();
            tell(analysis);
        }
        return ExitStatus.DONE;
    }

    private void tell(ClipAnalysis analysis) {
        String leftOut = CastFolder.leftOut();
        if (!talk.quiet() && !json && leftOut != null) {
            spec.commandLine().getErr().println("bendline: " + leftOut);
        }
        if (json) {
            spec.commandLine().getOut().println(SummaryJson.line(analysis, out));
        } else if (!talk.quiet()) {
            Summary.print(analysis, out, spec.commandLine().getOut());
        }
    }
}
