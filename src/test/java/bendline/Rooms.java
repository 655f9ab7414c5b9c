package bendline;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The tables of DEVELOPERS.md that say which package may use what, so that the text and the rule cannot part.
 *
 * @param packages every package in the table's order, with what it may use
 * @param libraries package prefix of a library, with our packages that may use it
 */
record Rooms(Map<String, Row> packages, Map<String, Set<String>> libraries) {

    private static final Pattern NAME = Pattern.compile("`([a-z0-9.]+)`(\\*?)");

    /**
     * What a package may use.
     *
     * @param whole packages of which it may use everything
     * @param data packages of which it may use the data only: records, enums, exceptions
     */
    record Row(Set<String> whole, Set<String> data) {}

    static Rooms read(Path developers) throws IOException {
        List<String> lines = Files.readAllLines(developers);
        Map<String, Row> packages = new LinkedHashMap<>();
        for (String[] cells : table(lines, "package")) {
            packages.put(
                    names(cells[0], false).iterator().next(), new Row(names(cells[3], false), names(cells[3], true)));
        }
        Map<String, Set<String>> libraries = new LinkedHashMap<>();
        for (String[] cells : table(lines, "library")) {
            for (String library : names(cells[0], false)) {
                libraries.put(library, names(cells[1], false));
            }
        }
        return new Rooms(packages, libraries);
    }

    private static List<String[]> table(List<String> lines, String firstHeading) {
        List<String[]> out = new ArrayList<>();
        boolean inside = false;
        for (String line : lines) {
            if (line.startsWith("| " + firstHeading + " |")) {
                inside = true;
            } else if (!line.startsWith("|")) {
                inside = false;
            } else if (inside && !line.startsWith("|---") && !line.startsWith("| ---")) {
                out.add(line.substring(1).split("\\|"));
            }
        }
        return out;
    }

    private static Set<String> names(String cell, boolean starred) {
        Set<String> out = new LinkedHashSet<>();
        Matcher m = NAME.matcher(cell);
        while (m.find()) {
            if (starred == m.group(2).equals("*")) {
                out.add(m.group(1));
            }
        }
        return out;
    }
}
