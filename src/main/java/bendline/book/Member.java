package bendline.book;

/**
 * Somebody with an account.
 *
 * @param personId who
 * @param role {@code pupil} or {@code coach}
 * @param password its hash, with salt and parameters
 * @param joinedAt ISO instant
 */
public record Member(String personId, String role, String password, String joinedAt) {

    /** Whether this one sees every member's clips. */
    public boolean coach() {
        return role.equals("coach");
    }
}
