package bendline.book;

import org.jspecify.annotations.Nullable;

/**
 * One cast.
 *
 * @param id never changes
 * @param sessionId when it was made
 * @param number counted from 1 within the session
 * @param clipId the clip that shows it; null for none
 * @param clipCast which of the clip's casts it is, counted from 1
 * @param kitId with what
 * @param techniqueId which way of casting was tried
 * @param distanceM as measured, metres
 * @param distanceHow how that was measured
 * @param distanceSdM its 68 % uncertainty; null where nobody said
 * @param hitClip whether the line came to the clip
 * @param baitOn whether the bait was still on
 * @param notes free text
 * @param addedAt ISO instant
 */
public record Throw(
        String id,
        String sessionId,
        int number,
        @Nullable String clipId,
        int clipCast,
        @Nullable String kitId,
        @Nullable String techniqueId,
        @Nullable Double distanceM,
        @Nullable String distanceHow,
        @Nullable Double distanceSdM,
        @Nullable Boolean hitClip,
        @Nullable Boolean baitOn,
        String notes,
        String addedAt) {}
