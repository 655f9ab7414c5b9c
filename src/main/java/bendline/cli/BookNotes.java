package bendline.cli;

import bendline.book.Drill;
import bendline.book.Entry;
import bendline.book.Kit;
import bendline.book.Person;
import bendline.book.PracticeBook;
import bendline.book.Selection;
import bendline.book.Session;
import bendline.book.Technique;
import bendline.book.Throw;
import java.io.PrintWriter;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Locale;
import java.util.UUID;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The small commands that show or write down one kind of thing. */
final class BookNotes {

    private BookNotes() {}

    /** Kit by its name; null for no name. */
    static @Nullable Kit kit(PracticeBook book, @Nullable String name) {
        if (name == null) {
            return null;
        }
        return book.kit().stream()
                .filter(k -> k.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new bendline.book.BookException("There is no kit named " + name
                        + " in the book; write it down first with book kit \"" + name + "\"."));
    }

    static String distance(double metres, @Nullable Double plusMinus) {
        return plusMinus == null
                ? String.format(Locale.ROOT, "%.1f m", metres)
                : String.format(Locale.ROOT, "%.1f ± %.1f m", metres, plusMinus);
    }

    /** A cast in one line. */
    static String line(Entry e, PracticeBook book) {
        Throw t = e.cast();
        StringBuilder out = new StringBuilder(e.name());
        if (t.distanceM() != null) {
            out.append("  ")
                    .append(distance(t.distanceM(), t.distanceSdM()))
                    .append(" (")
                    .append(t.distanceHow())
                    .append(')');
        }
        part(out, "kit ", e.kit() == null ? null : e.kit().name());
        part(out, "technique ", e.technique() == null ? null : e.technique().name());
        part(out, "", t.hitClip() == null ? null : t.hitClip() ? "hit the clip" : "missed the clip");
        part(out, "", t.baitOn() == null ? null : t.baitOn() ? "bait on" : "bait lost");
        part(out, "", t.notes().isEmpty() ? null : t.notes());
        if (e.clip() != null) {
            part(out, "clip ", e.clip().name() + (book.has(e.clip()) ? "" : " (MISSING)"));
            part(out, "", e.analysis() == null ? "not analysed" : null);
        }
        return out.toString();
    }

    private static void part(StringBuilder out, String what, @Nullable String value) {
        if (value != null) {
            out.append("; ").append(what).append(value);
        }
    }

    /** Casts. */
    @Command(name = "list", description = "List the casts.", mixinStandardHelpOptions = true)
    static final class List implements Callable<Integer> {

        @Spec
        private CommandSpec spec;

        @Parameters(arity = "0..1", paramLabel = "SELECTION", description = "Which, for example technique=slow back.")
        private @Nullable String which;

        @Mixin
        private BookOptions books;

        @Override
        public Integer call() {
            PracticeBook book = books.open();
            java.util.List<Entry> entries = book.entries(which == null ? Selection.ALL : Selection.parse(which));
            PrintWriter out = spec.commandLine().getOut();
            entries.forEach(e -> out.println(line(e, book)));
            if (entries.isEmpty()) {
                out.println("No cast.");
            }
            return ExitStatus.DONE;
        }
    }

    /** Sessions. */
    @Command(
            name = "sessions",
            description = "List the sessions, or write down more of the one called NAME.",
            mixinStandardHelpOptions = true,
            sortOptions = false)
    static final class Sessions implements Callable<Integer> {

        @Spec
        private CommandSpec spec;

        @Parameters(arity = "0..1", paramLabel = "NAME", description = "Its day unless it was named otherwise.")
        private @Nullable String name;

        @Mixin
        private SessionOptions options;

        @Mixin
        private BookOptions books;

        @Override
        public Integer call() {
            PracticeBook book = name == null ? books.open() : books.openOrBegin();
            if (name != null) {
                options.write(book, name);
            }
            PrintWriter out = spec.commandLine().getOut();
            for (Session s : book.sessions()) {
                if (name == null || s.name().equals(name)) {
                    out.println(words(s, book));
                }
            }
            return ExitStatus.DONE;
        }

        private static String words(Session s, PracticeBook book) {
            StringBuilder out = new StringBuilder(s.name());
            book.people().stream().filter(p -> p.id().equals(s.personId())).forEach(p -> part(out, "", p.name()));
            part(out, "", s.place());
            part(out, "", s.water());
            part(out, "wind ", s.wind());
            Selection own = new Selection(s.name(), null, null, null, null, null);
            int casts = book.entries(own).size();
            return out.append("; ")
                    .append(casts)
                    .append(casts == 1 ? " cast" : " casts")
                    .toString();
        }
    }

    /** People. */
    @Command(name = "people", description = "List the people, or write down NAME.", mixinStandardHelpOptions = true)
    static final class People implements Callable<Integer> {

        @Spec
        private CommandSpec spec;

        @Parameters(arity = "0..1", paramLabel = "NAME")
        private @Nullable String name;

        @Option(names = "--handed", paramLabel = "left|right", description = "The hand at the reel.")
        private @Nullable String handed;

        @Mixin
        private BookOptions books;

        @Override
        public Integer call() {
            if (handed != null && !handed.matches("left|right")) {
                throw new picocli.CommandLine.ParameterException(
                        spec.commandLine(), "--handed is left or right, not \"" + handed + "\".");
            }
            PracticeBook book = name == null ? books.open() : books.openOrBegin();
            if (name != null) {
                book.person(new Person(UUID.randomUUID().toString(), name, handed, ""));
            }
            book.people()
                    .forEach(p -> spec.commandLine()
                            .getOut()
                            .println(p.name() + (p.handed() == null ? "" : ", " + p.handed() + "-handed")));
            return ExitStatus.DONE;
        }
    }

    /** Techniques. */
    @Command(
            name = "techniques",
            description = "List the ways of casting tried, or write down NAME.",
            mixinStandardHelpOptions = true)
    static final class Techniques implements Callable<Integer> {

        @Spec
        private CommandSpec spec;

        @Parameters(arity = "0..1", paramLabel = "NAME")
        private @Nullable String name;

        @Option(names = "--what", paramLabel = "TEXT", description = "What is done otherwise.")
        private String what = "";

        @Mixin
        private BookOptions books;

        @Override
        public Integer call() {
            PracticeBook book = name == null ? books.open() : books.openOrBegin();
            if (name != null) {
                book.technique(new Technique(UUID.randomUUID().toString(), name, what));
            }
            book.techniques()
                    .forEach(t -> spec.commandLine()
                            .getOut()
                            .println(t.name() + (t.what().isEmpty() ? "" : ": " + t.what())));
            return ExitStatus.DONE;
        }
    }

    /** Drills. */
    @Command(name = "drills", description = "List the drills, or set one.", mixinStandardHelpOptions = true)
    static final class Drills implements Callable<Integer> {

        @Spec
        private CommandSpec spec;

        @Parameters(arity = "0..1", paramLabel = "TEXT", description = "What to practise.")
        private @Nullable String what;

        @Option(names = "--done", description = "It has been done.")
        private boolean done;

        @Option(names = "--for", paramLabel = "NAME", description = "For whom.")
        private @Nullable String person;

        @Mixin
        private BookOptions books;

        @Override
        public Integer call() {
            PracticeBook book = what == null ? books.open() : books.openOrBegin();
            String today = LocalDate.now(ZoneId.systemDefault()).toString();
            if (what != null && done && book.drillDone(what, today) == 0) {
                throw new bendline.book.BookException(
                        "There is no open drill \"" + what + "\"; book drills lists them.");
            }
            if (what != null && !done) {
                String who = person == null
                        ? null
                        : book.person(new Person(UUID.randomUUID().toString(), person, null, ""))
                                .id();
                book.drill(new Drill(UUID.randomUUID().toString(), who, what, today, null));
            }
            book.drills()
                    .forEach(d -> spec.commandLine()
                            .getOut()
                            .println((d.doneOn() == null ? "open since " + d.setOn() : "done on " + d.doneOn()) + ": "
                                    + d.what()));
            return ExitStatus.DONE;
        }
    }
}
