package bendline.web;

/**
 * How far a clip's analysis has come.
 *
 * @param state {@code waiting}, {@code working}, {@code following} after a correction, {@code done} or {@code failed}
 * @param says the stage, or why it failed
 * @param fraction 0 to 1 of the stage
 * @param version grows whenever something was followed anew
 */
record Standing(String state, String says, double fraction, int version) {

    boolean busy() {
        return state.equals("waiting") || state.equals("working");
    }

    Standing with(String newState, String newSays, double newFraction) {
        return new Standing(newState, newSays, newFraction, version);
    }
}
