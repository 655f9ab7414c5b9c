package bendline.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;

/** What the README tells people to type exists. */
class ReadmeTest {

    private static String readme() throws IOException {
        return Files.readString(Path.of("README.md"));
    }

    @Test
    void itsSampleIsThere() throws IOException {
        Matcher m = Pattern.compile("analyse (samples/\\S+) --out").matcher(readme());
        assertThat(m.find()).isTrue();
        assertThat(Path.of(m.group(1))).isNotEmptyFile();
    }

    private static void collect(CommandLine line, Set<String> known) {
        known.addAll(line.getCommandSpec().optionsMap().keySet());
        line.getSubcommands().values().forEach(c -> collect(c, known));
    }

    @Test
    void itNamesOnlyOptionsThatExistAndAllOfThoseThatTellOfTheCast() throws IOException {
        Set<String> known = new TreeSet<>();
        collect(new CommandLine(new BendlineCommand()), known);
        Set<String> named = new TreeSet<>();
        Matcher m = Pattern.compile("`[^`\n]*`|\n```[^`]*```").matcher(readme());
        while (m.find()) {
            Matcher option = Pattern.compile("(?<![\\w-])--[a-z][a-z-]+").matcher(m.group());
            while (option.find() && !m.group().contains("apt-get")) {
                named.add(option.group());
            }
        }
        assertThat(known).containsAll(named);
        Set<String> setup = new TreeSet<>(new CommandLine(new AnalyseCommand())
                .getCommandSpec()
                .optionsMap()
                .keySet());
        setup.removeAll(Set.of("--help", "-h", "--version", "-V", "--quiet", "--verbose"));
        assertThat(named).containsAll(setup);
    }

    /** The table of sayings is what the command prints today. */
    @Test
    void itsTableOfSayingsIsWhatTheCommandPrints() throws IOException {
        StringWriter out = new StringWriter();
        int status = Main.run(new PrintWriter(out), new PrintWriter(new StringWriter()), "reach", "check");
        assertThat(status).isZero();
        assertThat(readme()).contains(out.toString().strip());
    }
}
