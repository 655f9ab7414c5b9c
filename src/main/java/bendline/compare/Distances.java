package bendline.compare;

import java.util.List;

/**
 * Distances made comparable: as measured where every cast was made in the same wind, as equivalents in still air where not.
 *
 * @param a set A with the distances to compare
 * @param b set B with them
 * @param stilled whether they are equivalents in still air, as far as these can be told
 * @param says what was done, in words
 */
record Distances(CastSet a, CastSet b, boolean stilled, String says) {

    static Distances of(CastSet a, CastSet b, StillAir stillAir) {
        boolean measured = List.of(a, b).stream()
                .allMatch(s -> s.casts().stream().anyMatch(c -> c.distance().value() != null));
        if (!measured) {
            return new Distances(a, b, false, "Distances were not measured in both sets.");
        }
        boolean told = List.of(a, b).stream()
                .allMatch(s -> s.casts().stream().allMatch(c -> c.distance().value() == null || c.wind() != null));
        if (Confounders.windsAlike(a, b)) {
            return new Distances(
                    a,
                    b,
                    false,
                    told
                            ? "Both sets were cast in the same wind, so distances are compared as measured."
                            : "Distances are compared as measured; the wind was not written down for every cast, so a change"
                                    + " of wind can't be ruled out.");
        }
        return new Distances(
                stilled(a, stillAir),
                stilled(b, stillAir),
                true,
                "The sets were cast in different winds, so distances are compared as their equivalent in still air, as far as"
                        + " that can be told.");
    }

    private static CastSet stilled(CastSet set, StillAir stillAir) {
        return new CastSet(
                set.label(),
                set.casts().stream()
                        .map(c -> c.distance().value() == null ? c : c.withDistance(stillAir.of(c)))
                        .toList());
    }
}
