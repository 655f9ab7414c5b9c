package bendline.book;

import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.mapper.reflect.ConstructorMapper;
import org.jspecify.annotations.Nullable;

/** Rows of the database as records and back. The columns are the records' components in snake_case. */
final class Rows {

    private Rows() {}

    static void register(Jdbi jdbi) {
        List.of(
                        Person.class,
                        Kit.class,
                        Session.class,
                        Technique.class,
                        Clip.class,
                        Throw.class,
                        Analysis.class,
                        Drill.class,
                        Target.class,
                        Correction.class,
                        Note.class,
                        Upload.class,
                        Job.class,
                        Member.class)
                .forEach(c -> jdbi.registerRowMapper(ConstructorMapper.factory(c)));
    }

    static <T> List<T> all(Handle h, String table, String order, Class<T> type) {
        return h.createQuery("SELECT * FROM " + table + " ORDER BY " + order)
                .mapTo(type)
                .list();
    }

    static <T> Optional<T> named(Handle h, String table, String name, Class<T> type) {
        return h.createQuery("SELECT * FROM " + table + " WHERE name = ?")
                .bind(0, name)
                .mapTo(type)
                .findOne();
    }

    static <T extends Record> T insert(Handle h, String table, T row) {
        List<String> names = new ArrayList<>();
        for (RecordComponent c : row.getClass().getRecordComponents()) {
            names.add(c.getName());
        }
        String columns = names.stream().map(Rows::column).collect(Collectors.joining(", "));
        String values = names.stream().map(n -> ":" + n).collect(Collectors.joining(", "));
        h.createUpdate("INSERT INTO " + table + " (" + columns + ") VALUES (" + values + ")")
                .bindMethods(row)
                .execute();
        return row;
    }

    private static String column(String name) {
        return name.replaceAll("([A-Z])", "_$1").toLowerCase(Locale.ROOT);
    }

    /** The clip with these bytes, at its place now. */
    static Clip clip(Handle h, Clip kept) {
        h.createUpdate("INSERT INTO clip (id, sha256, name, file, bytes) VALUES (:id, :sha256, :name, :file, :bytes)"
                        + " ON CONFLICT (sha256) DO UPDATE SET file = excluded.file")
                .bindMethods(kept)
                .execute();
        return h.createQuery("SELECT * FROM clip WHERE sha256 = ?")
                .bind(0, kept.sha256())
                .mapTo(Clip.class)
                .one();
    }

    /** Inserts a session, or writes what is given over what is there under its name. */
    static Session session(Handle h, Session wanted) {
        Optional<Session> there = named(h, "session", wanted.name(), Session.class);
        if (there.isEmpty()) {
            return insert(h, "session", wanted);
        }
        h.createUpdate("UPDATE session SET person_id = coalesce(:personId, person_id), place = coalesce(:place, place),"
                        + " water = coalesce(:water, water), wind_mps = coalesce(:windMps, wind_mps),"
                        + " wind_from_deg = coalesce(:windFromDeg, wind_from_deg),"
                        + " camera_side = coalesce(:cameraSide, camera_side),"
                        + " notes = CASE WHEN :notes = '' THEN notes ELSE :notes END WHERE name = :name")
                .bindMethods(wanted)
                .execute();
        return named(h, "session", wanted.name(), Session.class).orElseThrow();
    }

    static List<Entry> entries(Handle h, Selection which) {
        Map<String, Session> sessions = byId(all(h, "session", "id", Session.class), Session::id);
        Map<String, Person> people = byId(all(h, "person", "id", Person.class), Person::id);
        Map<String, Kit> kit = byId(all(h, "kit", "id", Kit.class), Kit::id);
        Map<String, Technique> techniques = byId(all(h, "technique", "id", Technique.class), Technique::id);
        Map<String, Clip> clips = byId(all(h, "clip", "id", Clip.class), Clip::id);
        Map<String, Analysis> newest = new TreeMap<>();
        all(h, "analysis", "made_at, id", Analysis.class).forEach(a -> newest.put(a.clipId(), a));
        String order = "(SELECT day FROM session s WHERE s.id = session_id),"
                + " (SELECT name FROM session s WHERE s.id = session_id), number";
        return all(h, "throw", order, Throw.class).stream()
                .map(t -> {
                    Session s = Objects.requireNonNull(sessions.get(t.sessionId()));
                    return new Entry(
                            t,
                            s,
                            of(people, s.personId()),
                            of(kit, t.kitId()),
                            of(techniques, t.techniqueId()),
                            of(clips, t.clipId()),
                            of(newest, t.clipId()));
                })
                .filter(e -> chosen(e, which))
                .toList();
    }

    private static <T> Map<String, T> byId(List<T> rows, Function<T, String> id) {
        return rows.stream().collect(Collectors.toMap(id, Function.identity()));
    }

    private static <T> @Nullable T of(Map<String, T> rows, @Nullable String id) {
        return id == null ? null : rows.get(id);
    }

    private static boolean chosen(Entry e, Selection s) {
        Person person = e.person();
        Kit kit = e.kit();
        Technique technique = e.technique();
        return fits(s.session(), e.session().name())
                && fits(s.person(), person == null ? null : person.name())
                && fits(s.kit(), kit == null ? null : kit.name())
                && fits(s.technique(), technique == null ? null : technique.name())
                && (s.from() == null || e.session().day().compareTo(s.from()) >= 0)
                && (s.to() == null || e.session().day().compareTo(s.to()) <= 0);
    }

    private static boolean fits(@Nullable String wanted, @Nullable String is) {
        return wanted == null || wanted.equals(is);
    }
}
