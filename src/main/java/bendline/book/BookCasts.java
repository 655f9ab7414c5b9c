package bendline.book;

import bendline.compare.Cast;
import bendline.compare.Condition;
import bendline.compare.Wind;
import bendline.report.AnalysisReader;
import bendline.report.ReadCast;
import bendline.scene.Conditions;
import bendline.scene.Setup;
import bendline.stroke.Measure;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Casts of the book as a comparison or a trend looks at them. */
public final class BookCasts {

    private final PracticeBook book;

    /** @param book where they are written down */
    public BookCasts(PracticeBook book) {
        this.book = book;
    }

    /**
     * The cast's analysis; nothing where there is none or it holds no such cast.
     *
     * @throws bendline.report.AnalysisFileException where its files can't be read
     */
    public Optional<ReadCast> read(Entry e) {
        Analysis analysis = e.analysis();
        if (analysis == null) {
            return Optional.empty();
        }
        Path folder = book.file(analysis.folder());
        if (!Files.isDirectory(folder)) {
            return Optional.empty();
        }
        List<ReadCast> casts = new AnalysisReader().read(folder);
        int at = e.cast().clipCast() - 1;
        return at < casts.size() ? Optional.of(casts.get(at).as(e.name())) : Optional.empty();
    }

    /** The cast with all that is written down around it. */
    public Cast cast(Entry e, Optional<ReadCast> read) {
        Session session = e.session();
        // Sorted by name, sessions stand in the order of their days.
        String name = session.name().startsWith(session.day()) ? session.name() : session.day() + " " + session.name();
        Cast.Turn turn = new Cast.Turn(name, e.cast().number());
        Wind wind = wind(e.session());
        Measure distance = distance(e.cast());
        Map<Condition, String> told = conditions(e);
        Cast cast = read.map(r -> r.cast(e.name(), turn, told, wind, distance))
                .orElseGet(() -> new Cast(e.name(), turn, told, wind, distance, List.of()));
        return cast.withSetup(known(cast.setup(), e));
    }

    /** What the kit adds to what was told for the analysis; a rig that the clip stopped tells nothing of the wind. */
    private static Setup known(Setup told, Entry e) {
        Kit kit = e.kit();
        Double loaded = kit == null || kit.rigLoadedG() == null ? null : kit.rigLoadedG() / 1000;
        Conditions c = told.conditions();
        Double clip = Boolean.TRUE.equals(e.cast().hitClip())
                ? e.cast().distanceM()
                : c.outcome().clipM();
        Conditions.Outcome outcome = new Conditions.Outcome(c.outcome().tipHeightM(), clip, null, null);
        return new Setup(
                told.rodLengthM(),
                told.freeLengthM(),
                told.dropM(),
                told.castMassKg() == null ? loaded : told.rigMassKg(),
                told.castsTo(),
                told.slowMotionFactor(),
                told.marks(),
                new Conditions(c.rig(), c.tackle(), c.wind(), outcome),
                told.blank());
    }

    private static @Nullable Wind wind(Session s) {
        if (s.windMps() == null) {
            return null;
        }
        if (s.windFromDeg() == null && s.windMps() > Wind.CALM_MPS) {
            return null;
        }
        return new Wind(s.windMps(), s.windFromDeg() == null ? 0 : s.windFromDeg());
    }

    private static Measure distance(Throw t) {
        if (t.distanceM() == null) {
            return Cast.noDistance();
        }
        double sd = t.distanceSdM() == null ? Double.NaN : t.distanceSdM();
        return Cast.distance(t.distanceM(), sd, t.distanceHow() == null ? "not told" : t.distanceHow());
    }

    private static Map<Condition, String> conditions(Entry e) {
        Map<Condition, String> out = new EnumMap<>(Condition.class);
        Person person = e.person();
        if (person != null) {
            put(out, Condition.PERSON, person.name());
            put(out, Condition.HANDED, person.handed());
        }
        Kit kit = e.kit();
        if (kit != null) {
            put(out, Condition.ROD, kit.rod());
            put(out, Condition.REEL, kit.reel());
            put(out, Condition.LINE, kit.line());
            put(out, Condition.LEADER, kit.leader());
            put(out, Condition.RIG, kit.rig());
            put(out, Condition.STEM, kit.stem());
            put(out, Condition.RIG_MASS, words("%.0f g", kit.rigLoadedG()));
            put(out, Condition.DROP, words("%.2f m", kit.dropM()));
        }
        Session s = e.session();
        put(out, Condition.WIND, s.wind());
        put(out, Condition.PLACE, s.place());
        put(out, Condition.WATER, s.water());
        put(out, Condition.DAY, s.day());
        Analysis analysis = e.analysis();
        put(out, Condition.PROGRAM, analysis == null ? null : analysis.program());
        return out;
    }

    private static @Nullable String words(String format, @Nullable Double value) {
        return value == null ? null : String.format(Locale.ROOT, format, value);
    }

    private static void put(Map<Condition, String> into, Condition what, @Nullable String value) {
        if (value != null && !value.isBlank()) {
            into.put(what, value);
        }
    }
}
