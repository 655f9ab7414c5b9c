package bendline.web;

import bendline.book.Entry;
import bendline.book.Person;
import org.jspecify.annotations.Nullable;

/**
 * Who asks for a page.
 *
 * @param token what the browser's cookie holds
 * @param allowed whether this one may come in
 * @param person who it is; null for whoever keeps the book
 * @param role {@code keeper}, {@code pupil} or {@code coach}
 */
record Visitor(String token, boolean allowed, @Nullable Person person, String role) {

    /** What the visitor's own pages send back with everything that changes something; other sites can't know it. */
    String proof() {
        return Secrets.hash("page " + token);
    }

    @Nullable
    String personId() {
        return person == null ? null : person.id();
    }

    /** Whether every clip may be seen. */
    boolean seesAll() {
        return !role.equals("pupil");
    }

    boolean owns(Entry entry) {
        return seesAll()
                || (person != null && person.id().equals(entry.session().personId()));
    }
}
