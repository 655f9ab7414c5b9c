package bendline.scene;

import bendline.geometry.Homography;
import bendline.geometry.Point;
import bendline.image.Luma;
import bendline.image.PointFlow;
import bendline.image.Warp;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Measures how the camera moved, frame after frame, from background corners. Every frame is compared with one key frame
 * as long as enough of it is in view, so that errors do not add up; only when the view has moved on does a new key frame
 * take over.
 */
public final class CameraTracker {

    private static final int CORNERS = 250;
    /** Width to which pictures are reduced before corners are followed; sub-pixel flow makes up for it. */
    private static final int WORKING_WIDTH_PX = 1000;
    /** Share of the key frame's corners that must agree on a map before it is believed. */
    private static final double ENOUGH_INLIERS = 0.3;

    private static final int FEWEST_INLIERS = 12;
    /** A camera whose picture never shifts by more than this stood still; its maps are replaced by the identity. */
    private static final double STILL_PX = 0.35;

    private final List<Homography> toReference = new ArrayList<>();
    private int factor;
    private int lost;
    private @Nullable Luma key;
    private @Nullable Luma previous;
    private List<Point> corners = List.of();
    private Homography keyToReference = Homography.IDENTITY;
    private Homography keyToLast = Homography.IDENTITY;
    private int width;
    private int height;

    /** Takes the next frame and returns its map to the reference picture, picture pixels. Nothing of the frame is kept. */
    public Homography add(Luma picture) {
        if (key == null) {
            width = picture.width();
            height = picture.height();
            factor = Math.max(1, (int) Math.round((double) Math.max(width, height) / WORKING_WIDTH_PX));
        }
        Luma small = factor == 1 ? new Luma(width, height, picture.pixels().clone()) : Warp.reduce(picture, factor);
        Homography map = key == null ? start(small) : follow(key, small);
        previous = small;
        Homography full = scaled(map);
        toReference.add(full);
        return full;
    }

    /** The motion over all frames taken. */
    public CameraMotion motion() {
        double largest = 0;
        Point centre = new Point(width / 2.0, height / 2.0);
        Point corner = new Point(width, height);
        for (Homography a : toReference) {
            largest = Math.max(
                    largest,
                    Math.max(a.apply(centre).distance(centre), a.apply(corner).distance(corner)));
        }
        boolean trusted = lost <= toReference.size() / 20;
        if (!trusted || largest < STILL_PX) {
            List<Homography> still =
                    toReference.stream().map(a -> Homography.IDENTITY).toList();
            return new CameraMotion(still, trusted ? largest : Double.NaN, trusted);
        }
        return new CameraMotion(toReference, largest, true);
    }

    private Homography start(Luma small) {
        key = small;
        corners = PointFlow.corners(small, CORNERS);
        return Homography.IDENTITY;
    }

    private Homography follow(Luma from, Luma small) {
        PointFlow.Fit fit = PointFlow.fit(from, small, corners, keyToLast);
        if (!believed(fit) && previous != null && previous != from) {
            keyToReference = keyToLast.inverse().then(keyToReference);
            key = previous;
            corners = PointFlow.corners(previous, CORNERS);
            keyToLast = Homography.IDENTITY;
            fit = PointFlow.fit(previous, small, corners, Homography.IDENTITY);
        }
        if (fit != null && believed(fit)) {
            keyToLast = fit.map();
        } else {
            lost++;
        }
        return keyToLast.inverse().then(keyToReference);
    }

    private boolean believed(PointFlow.@Nullable Fit fit) {
        return fit != null
                && fit.inliers() >= FEWEST_INLIERS
                && fit.inliers() >= ENOUGH_INLIERS * corners.size()
                && plausible(fit.map());
    }

    private static boolean plausible(Homography a) {
        double det = a.a() * a.e() - a.b() * a.d();
        return det > 0.8 && det < 1.25 && Math.abs(a.b()) < 0.3 && Math.abs(a.d()) < 0.3;
    }

    private Homography scaled(Homography m) {
        return Homography.scale(1.0 / factor).then(m).then(Homography.scale(factor));
    }
}
