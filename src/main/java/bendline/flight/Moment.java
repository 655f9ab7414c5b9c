package bendline.flight;

import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;
import org.apache.commons.math3.util.FastMath;

/**
 * Where rig and line are at one moment, and how they move. Coordinates in metres from the rod tip: x in the direction of the
 * cast, y up, z from left to right.
 */
final class Moment {

    /** Numbers in the state: place, speed, bow, and the four accounts of {@link Ledger}. */
    static final int SIZE = 13;

    static final int ACCOUNTS = 9;

    static final double GRAVITY = 9.80665;

    /** Under this the line is so short that its bow can't matter; keeps its equation finite, m. */
    private static final double SHORT_M = 15;

    /** Where along a parabola's height its mean lies. */
    private static final double MEAN_OF_BOW = 2.0 / 3;

    final Vector3D place;
    final Vector3D speed;

    /** Middle of the line from the middle of the chord, across the chord. */
    final Vector3D bow;

    /** Unit vector from the tip to the rig. */
    final Vector3D chord;

    final double chordM;
    final double chordRate;

    /** The rig's speed across the chord. */
    final Vector3D turning;

    /** Chord, but never shorter than matters for the bow. */
    final double softM;

    private final double bowM;

    /** Line between tip and rig, m: a parabola's arc. */
    final double lengthM;

    Moment(double[] y) {
        place = new Vector3D(y[0], y[1], y[2]);
        speed = new Vector3D(y[3], y[4], y[5]);
        chordM = place.getNorm();
        chord = chordM > 1e-9 ? place.scalarMultiply(1 / chordM) : speed.normalize();
        chordRate = speed.dotProduct(chord);
        turning = speed.subtract(chordRate, chord);
        Vector3D b = new Vector3D(y[6], y[7], y[8]);
        bow = b.subtract(b.dotProduct(chord), chord);
        softM = Math.hypot(chordM, SHORT_M);
        bowM = bow.getNorm();
        lengthM = chordM + softM * longer(slope());
    }

    /** Direction of the line where it meets the rig. */
    Vector3D endOfLine() {
        return chord.subtract(4 / softM, bow).normalize();
    }

    /** Height of the line's mean above the tip, m. */
    double meanLineM() {
        return 0.5 * place.getY() + MEAN_OF_BOW * bow.getY();
    }

    /** Slope of the parabola at its ends against its chord. */
    private double slope() {
        return 4 * bowM / softM;
    }

    /** Arc of a parabola over its chord, less one: a sixth of the square of the slope at its ends, while that is small. */
    private static double longer(double slope) {
        return slope < 1e-4
                ? slope * slope / 6
                : 0.5 * (Math.sqrt(1 + slope * slope) + FastMath.asinh(slope) / slope) - 1;
    }

    private static double longerRate(double slope) {
        return slope < 1e-4
                ? slope / 3
                : 0.5 * (Math.sqrt(1 + slope * slope) / slope - FastMath.asinh(slope) / (slope * slope));
    }

    /** Rate of the line's length that goes with a rate of the bow, m/s. */
    double lengthRate(Vector3D bowRate) {
        double k = slope();
        double rate = longerRate(k);
        double deeper = bowM > 0 ? bow.dotProduct(bowRate) / bowM : 0;
        return chordRate + 4 * rate * deeper + (longer(k) - k * rate) * chordM * chordRate / softM;
    }
}
