package bendline.cli;

import bendline.simulate.Presets;
import bendline.simulate.Scenario;
import bendline.simulate.ScenarioFiles;
import bendline.simulate.Simulator;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Iterator;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** A scenario in, a clip with exact truth out. */
@Command(
        name = "simulate",
        description = "Make a clip of a scripted cast, with what is true of it beside it.",
        mixinStandardHelpOptions = true,
        versionProvider = VersionCommand.Provider.class,
        sortOptions = false,
        footer = {
            "",
            "Writes NAME.mp4, NAME.truth.json and NAME.scenario.json into DIR, where none of them may exist yet. To make"
                    + " a cast of your own, write a preset with --scenario-only, edit it and give the file.",
            "Exit status: 0 done, 2 wrong use, 3 the scenario can't be used, 4 the program failed."
        })
final class SimulateCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Parameters(
            paramLabel = "SCENARIO",
            description = "A scenario file, or a preset: ${COMPLETION-CANDIDATES}.",
            completionCandidates = PresetNames.class)
    private String what;

    @Option(names = "--out", paramLabel = "DIR", required = true, description = "Folder to write into.")
    private Path out;

    @Option(names = "--scenario-only", description = "Write the scenario and render nothing.")
    private boolean scenarioOnly;

    @Mixin
    private TalkOptions talk;

    /** Names for the help text. */
    static final class PresetNames implements Iterable<String> {
        @Override
        public Iterator<String> iterator() {
            return Presets.names().iterator();
        }
    }

    @Override
    public Integer call() throws IOException {
        talk.apply();
        Scenario scenario = scenario();
        List<String> names = Stream.of(".mp4", ".truth.json", ".scenario.json")
                .filter(ending -> !scenarioOnly || ending.equals(".scenario.json"))
                .map(ending -> scenario.name() + ending)
                .toList();
        Path folder = folder(names);
        Path staging = Files.createTempDirectory(folder, "." + scenario.name() + "-");
        try (Bars bars = talk.bars()) {
            write(scenario, staging, bars);
            for (String name : names) {
                Files.move(staging.resolve(name), folder.resolve(name), StandardCopyOption.ATOMIC_MOVE);
            }
        } finally {
            for (String name : names) {
                Files.deleteIfExists(staging.resolve(name));
            }
            Files.delete(staging);
        }
        if (!talk.quiet()) {
            names.forEach(name -> spec.commandLine().getOut().println(folder.resolve(name)));
        }
        return ExitStatus.DONE;
    }

    private void write(Scenario scenario, Path staging, Bars bars) throws IOException {
        ScenarioFiles.writeScenario(scenario, staging.resolve(scenario.name() + ".scenario.json"));
        if (!scenarioOnly) {
            int frames = scenario.frames();
            Simulator.render(
                    scenario,
                    staging.resolve(scenario.name() + ".mp4"),
                    done -> bars.at("Rendering", (double) done / frames));
        }
    }

    private Scenario scenario() {
        if (Presets.names().contains(what)) {
            return Presets.named(what);
        }
        Path file = Path.of(what);
        if (!Files.exists(file)) {
            throw wrongUse("There is no preset and no file \"" + what + "\"; the presets are "
                    + String.join(", ", Presets.names()) + ".");
        }
        try {
            return ScenarioFiles.readScenario(file);
        } catch (IOException e) {
            throw new UnusableScenario(e);
        }
    }

    private Path folder(List<String> names) {
        try {
            Path folder = Files.createDirectories(out);
            for (String name : names) {
                if (Files.exists(folder.resolve(name))) {
                    throw wrongUse("\"" + folder.resolve(name)
                            + "\" is already there; name another folder with --out or remove it.");
                }
            }
            return folder;
        } catch (IOException e) {
            throw wrongUse("The folder \"" + out + "\" can't be made; name another with --out.");
        }
    }

    private ParameterException wrongUse(String sentence) {
        return new ParameterException(spec.commandLine(), sentence);
    }

    /** A scenario file that says what can't be. */
    static final class UnusableScenario extends RuntimeException {

        private static final long serialVersionUID = 1L;

        UnusableScenario(IOException cause) {
            super(oneLine(cause.getMessage()) + "; correct it, or start from a preset with --scenario-only.", cause);
        }

        private static String oneLine(String text) {
            return text.strip().replaceAll("\\.$", "").replaceAll("\\s*\\R\\s*", " ");
        }
    }
}
