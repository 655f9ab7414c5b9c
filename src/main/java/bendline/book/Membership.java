package bendline.book;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Who belongs to the club, who is signed in, who may see what. Codes and tokens are kept as hashes only. */
public final class Membership {

    private final PracticeBook book;

    /** @param book where it is kept */
    public Membership(PracticeBook book) {
        this.book = book;
    }

    /** Everybody with an account. */
    public List<Member> members() {
        return book.read(h -> Rows.all(h, "member", "joined_at, person_id", Member.class));
    }

    /** Somebody's account. */
    public Optional<Member> member(@Nullable String personId) {
        return members().stream().filter(m -> m.personId().equals(personId)).findFirst();
    }

    /** Keeps an invitation for one person. */
    public void invite(String codeHash, String role) {
        book.execute(h -> h.execute(
                "INSERT INTO invitation (code_sha256, role, made_at) VALUES (?, ?, ?)",
                codeHash,
                role,
                Instant.now().toString()));
    }

    /** The role that an unused invitation of the last two weeks gives. */
    public Optional<String> invited(String codeHash) {
        return book.read(h -> h.createQuery(
                        "SELECT role FROM invitation WHERE code_sha256 = ? AND used_at IS NULL AND made_at > ?")
                .bind(0, codeHash)
                .bind(1, Instant.now().minusSeconds(14L * 86_400).toString())
                .mapTo(String.class)
                .findOne());
    }

    /**
     * Takes somebody in, using up the invitation.
     *
     * @return false where the invitation was used meanwhile
     * @throws BookException where the name has an account
     */
    public boolean join(String codeHash, Person person, Member member) {
        return book.write(h -> {
            int used = h.execute(
                    "UPDATE invitation SET used_at = ? WHERE code_sha256 = ? AND used_at IS NULL",
                    Instant.now().toString(),
                    codeHash);
            if (used == 0) {
                return false;
            }
            if (Rows.named(h, "person", person.name(), Person.class).isPresent()) {
                throw new BookException("The name " + person.name() + " is in the book already; take another.");
            }
            Rows.insert(h, "person", person);
            Rows.insert(h, "member", member);
            return true;
        });
    }

    /** Lets a browser in. */
    public void visit(String tokenHash, @Nullable String personId) {
        book.execute(h -> h.execute(
                "INSERT INTO visit (token_sha256, person_id, made_at) VALUES (?, ?, ?)",
                tokenHash,
                personId,
                Instant.now().toString()));
    }

    /** Whose browser it is: nothing where it was not let in within 30 days, empty text for nobody in particular. */
    public Optional<String> visitor(String tokenHash) {
        return book.read(
                h -> h.createQuery("SELECT coalesce(person_id, '') FROM visit WHERE token_sha256 = ? AND made_at > ?")
                        .bind(0, tokenHash)
                        .bind(1, Instant.now().minusSeconds(30L * 86_400).toString())
                        .mapTo(String.class)
                        .findOne());
    }

    /** Shows a browser out. */
    public void leave(String tokenHash) {
        book.execute(h -> h.execute("DELETE FROM visit WHERE token_sha256 = ?", tokenHash));
    }

    /** Lets somebody see a clip. */
    public void share(String clipId, String personId) {
        book.execute(
                h -> h.execute("INSERT OR IGNORE INTO share (clip_id, person_id) VALUES (?, ?)", clipId, personId));
    }

    /** Takes that back. */
    public void unshare(String clipId, String personId) {
        book.execute(h -> h.execute("DELETE FROM share WHERE clip_id = ? AND person_id = ?", clipId, personId));
    }

    /** With whom a clip is shared. */
    public Set<String> sharedWith(String clipId) {
        return book.read(h -> h.createQuery("SELECT person_id FROM share WHERE clip_id = ?")
                .bind(0, clipId)
                .mapTo(String.class)
                .set());
    }
}
