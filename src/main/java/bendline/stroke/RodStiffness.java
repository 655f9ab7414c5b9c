package bendline.stroke;

import bendline.rod.BendException;
import bendline.rod.Blank;
import bendline.rod.BlankLibrary;
import bendline.rod.ModelBlank;
import bendline.rod.NaturalFrequency;
import bendline.rod.Stiffness;
import bendline.scene.BlankFacts;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Which blank was bent, as far as what the user told and the ring after the release say.
 *
 * @param blank the part above the upper hand; null where nothing tells its stiffness
 * @param basis what it rests on, or why it is not known
 * @param doubt by how much what was told of stiffness and length contradicts the ring, as a power of e of the stiffness; 0 for not
 */
record RodStiffness(@Nullable Blank blank, String basis, double doubt) {

    /** Nothing contradicts it. */
    RodStiffness(@Nullable Blank blank, String basis) {
        this(blank, basis, 0);
    }

    /** What hangs on a bare tip after the release: the tip ring and the running line, kilograms. Common practice, no source. */
    private static final double BARE_TIP_KG = 0.002;

    /** What another law by which the stiffness falls from hand to tip does to a force, over its value: powers of 2.4 and 3. */
    private static final double LAW_SD = 0.08;

    /** How far a test curve as told may be off, over its value. Common practice, no source. */
    private static final double TOLD_SD = 0.1;

    /** By which factor a blank may be heavier or lighter than a generic one like it. Common practice, no source. */
    private static final double LIKELY_MASS = 2.5;

    /** What hands that hold a rod, not a vice, do to a mass read from its ring. Common practice, no source. */
    private static final double RING_MASS_SD = 0.2;

    /** A length above the hand for which no rod is described here. */
    private static final double SHORTEST_M = 1;

    /**
     * @param freeM upper hand to tip, metres; NaN where not known
     * @param facts what the user told; null for nothing
     * @param ring frequency of the bare rod
     */
    static RodStiffness of(double freeM, @Nullable BlankFacts facts, Found ring) {
        if (!(freeM >= SHORTEST_M && freeM <= 8)) {
            return new RodStiffness(
                    null, "needs a length in metres: give the rod's length or its length above the upper hand");
        }
        try {
            RodStiffness told = told(freeM, facts, ring);
            return facts == null ? told : checked(told, ring);
        } catch (BendException | IllegalArgumentException e) {
            return new RodStiffness(null, "the rod's stiffness could not be worked out: " + e.getMessage());
        }
    }

    private static RodStiffness told(double freeM, @Nullable BlankFacts facts, Found ring) {
        if (facts != null && facts.measured() != null) {
            BlankFacts.Measured m = facts.measured();
            Blank like = BlankLibrary.like(freeM, m.stiffnessNm2()).bending().stretchedTo(freeM);
            Blank blank = like.withTaper(like.taper().withTipStiffness(m.tipShare()))
                    .withStiffness(m.stiffnessNm2(), Math.hypot(m.relativeSd(), LAW_SD));
            return new RodStiffness(blank, "stiffness measured under a known weight");
        }
        if (facts != null && facts.testCurveKg() != null) {
            double kg = facts.testCurveKg();
            return found(Stiffness.fromTestCurve(like(freeM, kg), kg, TOLD_SD));
        }
        if (facts != null && facts.blankId() != null) {
            ModelBlank model = BlankLibrary.named(facts.blankId());
            return new RodStiffness(
                    model.bending().stretchedTo(freeM), "stiffness of the generic blank " + model.id() + ", ± 25 %");
        }
        if (facts != null && facts.castingWeightKg() != null) {
            double kg = facts.castingWeightKg();
            return found(Stiffness.fromCastingWeight(like(freeM, 16 * kg), kg));
        }
        if (ring.known()) {
            Blank like = BlankLibrary.like(freeM, Double.NaN).bending().stretchedTo(freeM);
            return found(Stiffness.fromRing(like, ring.value(), ring.sd(), BARE_TIP_KG));
        }
        return new RodStiffness(
                null, "needs the rod's stiffness: give its test curve, its casting weight or a blank like it");
    }

    /**
     * The ring holds stiffness, mass and length against one another: its square goes as EI over mass and the fourth power of the
     * length. Where a likely mass makes them agree, that is the blank's; else something told is wrong, and what follows from it is
     * no better known than by that much.
     */
    private static RodStiffness checked(RodStiffness told, Found ring) {
        Blank b = told.blank();
        if (b == null || !ring.known()) {
            return told;
        }
        double expected = new NaturalFrequency(b, BARE_TIP_KG).hz(1);
        double heavier = square(expected / ring.value());
        if (heavier >= 1 / LIKELY_MASS && heavier <= LIKELY_MASS) {
            double sd = Math.hypot(RING_MASS_SD, 2 * ring.sd() / ring.value());
            return new RodStiffness(
                    b.withMass(b.massKgPerM() * heavier, sd), told.basis() + ", mass of the blank from its ring");
        }
        double off = Math.abs(Math.log(heavier));
        Blank wide = b.withStiffness(b.stiffnessNm2(), Math.min(2, Math.hypot(b.stiffnessRelativeSd(), off)));
        return new RodStiffness(
                wide,
                told.basis()
                        + String.format(
                                Locale.ROOT,
                                "; but the rod was seen to ring at %.1f Hz and such a blank would at %.1f Hz: check its length and"
                                        + " what you said of its stiffness",
                                ring.value(),
                                expected),
                off);
    }

    private static double square(double x) {
        return x * x;
    }

    private static RodStiffness found(Stiffness.Found f) {
        return new RodStiffness(f.blank(), f.basis());
    }

    /** The generic blank nearest in length and test curve, at the rod's length. */
    private static Blank like(double freeM, double testCurveKg) {
        Blank medium = BlankLibrary.like(freeM, Double.NaN).bending().stretchedTo(freeM);
        double rough = medium.stiffnessNm2() * testCurveKg / Stiffness.testCurveKg(medium);
        return BlankLibrary.like(freeM, rough).bending().stretchedTo(freeM);
    }
}
