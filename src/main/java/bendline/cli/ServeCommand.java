package bendline.cli;

import bendline.report.Reader;
import bendline.web.ServeSettings;
import bendline.web.WebServer;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** The program in a browser. */
@Command(
        name = "serve",
        description = "Show the practice book in a browser, take clips in from the phone, review them.",
        mixinStandardHelpOptions = true,
        versionProvider = VersionCommand.Provider.class,
        sortOptions = false,
        footer = {
            "",
            "Only this computer can open the pages unless --lan is given. Runs until it is ended with Ctrl+C; whatever was"
                    + " going on then is taken up at the next start.",
            "Exit status: 0 ended, 2 wrong use, 3 the book or the port can't be used, 4 the program failed."
        })
final class ServeCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Option(
            names = "--port",
            paramLabel = "N",
            defaultValue = "8420",
            description = "Port; 0 for any free one. Usual: 8420.")
    private int port;

    @Option(
            names = "--lan",
            description =
                    "Let others on the network come in: with the pairing code that is printed, or with --club by name"
                            + " and password. The connection is not encrypted: only on a network you trust.")
    private boolean lan;

    @Option(names = "--club", description = "Everybody signs in: pupils see their own clips, coaches see all.")
    private boolean club;

    @Option(
            names = "--most-mb",
            paramLabel = "MB",
            defaultValue = "2000",
            description = "The largest clip taken. Usual: 2000.")
    private int mostMegabytes;

    @Option(
            names = "--pictures-gb",
            paramLabel = "GB",
            defaultValue = "10",
            description =
                    "How much the pictures to step through may take on the disk altogether; those not looked at for"
                            + " longest go first, and are made again when they are asked for. Usual: 10.")
    private double picturesGigabytes;

    @Mixin
    private ReaderOptions readers;

    @Mixin
    private BookOptions books;

    @Override
    public Integer call() throws Exception {
        ServeSettings settings = new ServeSettings(
                books.folder(),
                port,
                lan,
                club,
                mostMegabytes * 1_000_000L,
                Math.round(picturesGigabytes * 1e9),
                readers.reader(),
                workbench(readers.reader()),
                BookAnalysis.program());
        try (WebServer server = WebServer.start(settings)) {
            tell(server);
            new CountDownLatch(1).await();
        }
        return ExitStatus.DONE;
    }

    /** This program once more, with memory of its own. */
    private static List<String> workbench(Reader reader) {
        List<String> line = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx2g",
                "-Djava.awt.headless=true",
                "-cp",
                System.getProperty("java.class.path"),
                Main.class.getName(),
                "workbench",
                "--locale",
                reader.locale().toLanguageTag()));
        if (reader.yards()) {
            line.add("--yards");
        }
        return line;
    }

    private void tell(WebServer server) {
        PrintWriter out = spec.commandLine().getOut();
        out.println("Bendline: " + server.address());
        if (!lan) {
            out.println("Only this computer can open it; for the phone, end it and start it with --lan.");
        }
        for (String address : server.addresses()) {
            out.println("On the network: " + address);
        }
        if (!server.addresses().isEmpty()) {
            out.println(WebServer.square(server.addresses().get(0)));
            out.println(
                    club
                            ? "Everybody on this network can open the sign-in page; the connection is not encrypted."
                            : "Pairing code: " + server.pairingCode()
                                    + "\nWhoever has it sees, adds and corrects every clip in this book. Everybody on this network can"
                                    + " open the page that asks for it; the connection is not encrypted.");
        }
        String invitation = server.firstInvitation();
        if (!invitation.isEmpty()) {
            out.println("No coach has an account yet. The first joins here, once: "
                    + server.address().replaceAll("/$", "") + invitation);
        }
        out.flush();
    }
}
