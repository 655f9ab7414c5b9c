package bendline.book;

import org.jspecify.annotations.Nullable;

/**
 * A cast with everything that is written down around it.
 *
 * @param cast itself
 * @param session when and where
 * @param person who
 * @param kit with what
 * @param technique which way
 * @param clip what shows it
 * @param analysis the newest analysis of that clip
 */
public record Entry(
        Throw cast,
        Session session,
        @Nullable Person person,
        @Nullable Kit kit,
        @Nullable Technique technique,
        @Nullable Clip clip,
        @Nullable Analysis analysis) {

    /** How people name it: session and number. */
    public String name() {
        return session.name() + "/" + cast.number();
    }
}
