package bendline.cli;

import bendline.book.Person;
import bendline.book.PracticeBook;
import bendline.book.Session;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** What is written down of a session. */
final class SessionOptions {

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Option(names = "--day", paramLabel = "YYYY-MM-DD", description = "Day of the session; today unless told.")
    private @Nullable String day;

    @Option(names = "--person", paramLabel = "NAME", description = "Who casts.")
    private @Nullable String person;

    @Option(names = "--place", paramLabel = "TEXT", description = "Where.")
    private @Nullable String place;

    @Option(names = "--water", paramLabel = "TEXT", description = "On what water.")
    private @Nullable String water;

    @Option(names = "--wind", paramLabel = "M/S", description = "Wind where the angler stands, metres a second.")
    private @Nullable Double windMps;

    @Option(
            names = "--wind-from",
            paramLabel = "DEG",
            description =
                    "Where it comes from, seen along the cast: 0 in the face, 90 from the right, 180 from behind.")
    private @Nullable Double windFromDeg;

    @Option(names = "--camera-side", paramLabel = "TEXT", description = "On which side of the angler the phone stands.")
    private @Nullable String cameraSide;

    /** Writes the session down, or what is new of it. */
    Session write(PracticeBook book, @Nullable String name) {
        String on = day(name);
        check("wind", windMps, 60, "m/s");
        check("wind direction", windFromDeg, 359.999, "degrees");
        Person who = person == null ? null : book.person(new Person(id(), person, null, ""));
        return book.session(new Session(
                id(),
                name == null ? on : name,
                on,
                who == null ? null : who.id(),
                place,
                water,
                windMps,
                windFromDeg,
                cameraSide,
                ""));
    }

    private String day(@Nullable String name) {
        if (day == null) {
            // A session is mostly named by its day.
            return name != null && name.matches("\\d{4}-\\d\\d-\\d\\d.*")
                    ? parsed(name.substring(0, 10))
                    : LocalDate.now(java.time.ZoneId.systemDefault()).toString();
        }
        return parsed(day);
    }

    private String parsed(String text) {
        try {
            return LocalDate.parse(text).toString();
        } catch (DateTimeParseException e) {
            throw new ParameterException(
                    spec.commandLine(), "The day \"" + text + "\" can't be read; write it as 2026-05-03.");
        }
    }

    private void check(String what, @Nullable Double value, double most, String unit) {
        if (value != null && !(value >= 0 && value <= most)) {
            throw new ParameterException(
                    spec.commandLine(),
                    "The " + what + " " + value + " is outside 0 to " + Math.round(most) + " " + unit + ".");
        }
    }

    private static String id() {
        return UUID.randomUUID().toString();
    }
}
