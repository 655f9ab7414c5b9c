package bendline.cli;

import bendline.footage.NativeLog;
import bendline.report.ReportOptions;
import bendline.web.Workbench;
import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** The process in which {@code serve} opens a clip; not for people. */
@Command(name = "workbench", hidden = true, description = "Opens one clip for serve.")
final class WorkbenchCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Mixin
    private ReaderOptions readers;

    @Override
    public Integer call() throws Exception {
        NativeLog.quiet();
        Workbench.run(
                new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8)),
                spec.commandLine().getOut(),
                ReportOptions.of(readers.toReader(), LocalDate.now()));
        return ExitStatus.DONE;
    }
}
