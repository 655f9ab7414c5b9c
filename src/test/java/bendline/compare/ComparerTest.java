package bendline.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import bendline.compare.Cast.Turn;
import bendline.compare.Difference.Verdict;
import bendline.technique.Finding.State;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class ComparerTest {

    private static final CastSet BEFORE = Sets.tempo("before", 2.0, 2.2, 1.9, 2.1, 2.3, 1.8);
    private static final CastSet AFTER = Sets.tempo("after", 3.0, 3.2, 2.9, 3.1, 3.3, 2.8);

    private static Difference only(Comparison c) {
        return c.family().get(0);
    }

    @Test
    void aPlainChangeIsShownWithItsSizeAndCreditedToNothingElse() {
        Comparison c = Sets.comparer("tempo").compare(BEFORE, AFTER);
        Difference d = only(c);
        assertThat(d.verdict()).isEqualTo(Verdict.MORE);
        assertThat(d.shift().estimate()).isCloseTo(1.0, within(1e-9));
        assertThat(d.shift().low()).isLessThan(1).isPositive();
        assertThat(d.shift().p()).isCloseTo(2.0 / 924, within(1e-9));
        assertThat(d.explainedBy()).isEmpty();
        assertThat(c.differing()).isEmpty();
        assertThat(d.moreCasts()).isZero();
    }

    @Test
    void theSameCastsTheOtherWayRoundChangeTheSign() {
        Difference d = only(Sets.comparer("tempo").compare(AFTER, BEFORE));
        assertThat(d.verdict()).isEqualTo(Verdict.LESS);
        assertThat(d.shift().estimate()).isCloseTo(-1.0, within(1e-9));
    }

    @Test
    void threeAgainstThreeCanNeverShowAChangeHoweverPlain() {
        Comparison c = Sets.comparer("tempo").compare(Sets.tempo("A", 1, 1.01, 1.02), Sets.tempo("B", 9, 9.01, 9.02));
        assertThat(only(c).verdict()).isEqualTo(Verdict.CANNOT_TELL);
        assertThat(only(c).shift().bounded()).isFalse();
        assertThat(only(c).smallestChange()).isNaN();
        assertThat(only(c).moreCasts()).isEqualTo(1);
    }

    @Test
    void castsThatAgreeByLuckMoreCloselyThanTheyWereMeasuredShowNothing() {
        List<Cast> a = new ArrayList<>();
        List<Cast> b = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            a.add(Sets.cast("a" + i, null, Sets.measure("tempo", "1", 2 + 0.001 * i, 1)));
            b.add(Sets.cast("b" + i, null, Sets.measure("tempo", "1", 2.1 + 0.001 * i, 1)));
        }
        Difference d = only(Sets.comparer("tempo").compare(new CastSet("A", a), new CastSet("B", b)));
        assertThat(d.verdict()).isEqualTo(Verdict.NOT_SHOWN);
        assertThat(d.measurementShare()).isEqualTo(1);
        // ± 1 over six and six casts: 1.96 · sqrt(2/6) at 95 %, a little more at what the ranks really hold.
        assertThat(d.shift().high() - d.shift().estimate()).isBetween(1.13, 1.25);
    }

    @Test
    void whatElseChangedIsNamedAndTakesTheCredit() {
        CastSet heavier = new CastSet(
                "after",
                AFTER.casts().stream()
                        .map(c -> new Cast(
                                c.name(),
                                c.turn(),
                                Sets.conditions("RIG_MASS", "60 g", "FRAME_RATE", "120"),
                                c.wind(),
                                c.distance(),
                                c.measures()))
                        .toList());
        Comparison c = Sets.comparer("tempo").compare(BEFORE, heavier);
        assertThat(c.differing()).extracting(Confounder::what).containsExactly(Condition.RIG_MASS);
        assertThat(c.differing().get(0).inA()).containsExactly("85 g");
        assertThat(only(c).shown()).isTrue();
        assertThat(only(c).explainedBy()).extracting(Confounder::what).containsExactly(Condition.RIG_MASS);
    }

    @Test
    void mixedSidesOfTheCameraAndMixedHandsAreNamed() {
        CastSet a = sided(BEFORE, "left");
        Comparison mixed = Sets.comparer("tempo").compare(a, sided(AFTER, "left"));
        assertThat(mixed.confounders())
                .filteredOn(c -> c.state() == Confounder.State.MIXED)
                .extracting(Confounder::what)
                .containsExactly(Condition.HANDED, Condition.CAMERA_SIDE);
        Comparison other = Sets.comparer("tempo").compare(a, sided(AFTER, "right"));
        assertThat(other.differing())
                .extracting(Confounder::what)
                .containsExactly(Condition.HANDED, Condition.CAMERA_SIDE);
    }

    /** The first cast one way, the others to the right. */
    private static CastSet sided(CastSet set, String first) {
        List<Cast> casts = new ArrayList<>();
        for (Cast c : set.casts()) {
            String side = casts.isEmpty() ? first : "right";
            casts.add(new Cast(
                    c.name(),
                    c.turn(),
                    Sets.conditions("HANDED", side, "CAMERA_SIDE", side),
                    c.wind(),
                    c.distance(),
                    c.measures()));
        }
        return new CastSet(set.label(), casts);
    }

    @Test
    void whatIsNotToldThoughItMattersIsSaid() {
        CastSet silent = new CastSet(
                "A",
                BEFORE.casts().stream()
                        .map(c -> new Cast(c.name(), c.turn(), Map.of(), null, c.distance(), c.measures()))
                        .toList());
        Comparison c = Sets.comparer("tempo").compare(silent, AFTER);
        assertThat(c.confounders())
                .filteredOn(x -> x.state() == Confounder.State.NOT_TOLD)
                .extracting(Confounder::what)
                .containsExactlyInAnyOrder(Condition.ROD, Condition.LINE, Condition.RIG_MASS, Condition.WIND);
    }

    private static CastSet flown(String label, Wind wind, double... metres) {
        List<Cast> casts = new ArrayList<>();
        for (int i = 0; i < metres.length; i++) {
            casts.add(new Cast(
                    label + i,
                    null,
                    Sets.conditions("WIND", wind.toString()),
                    wind,
                    Cast.distance(metres[i], 0.3, "wraps"),
                    List.of()));
        }
        return new CastSet(label, casts);
    }

    @Test
    void aFollowingWindIsNotCreditedToTechnique() {
        CastSet calm = flown("calm", Sets.CALM, 60, 61, 62, 60.5, 61.5);
        CastSet same = flown("calm too", new Wind(1, 90), 70, 71, 72, 70.5, 71.5);
        CastSet pushed = flown("pushed", new Wind(8, 180), 70, 71, 72, 70.5, 71.5);
        Comparer comparer = Sets.comparer(Cast.DISTANCE);
        assertThat(only(comparer.compare(calm, same)).verdict()).isEqualTo(Verdict.MORE);
        assertThatThrownBy(() -> comparer.compare(calm, pushed))
                .isInstanceOf(ComparisonException.class)
                .hasMessageContaining("No measure is known")
                .hasMessageContaining("different winds");
        StillAir tenOff = c -> Cast.distance(
                c.distance().value() - (c.wind().calm() ? 0 : 10), 1, "ten metres off for wind, for this test");
        Comparison c = new Comparer(List.of(Cast.DISTANCE), Comparer.Pairing.NEVER, tenOff).compare(calm, pushed);
        assertThat(only(c).verdict()).isEqualTo(Verdict.NOT_SHOWN);
        assertThat(c.distances()).contains("still air");
        assertThat(c.differing()).extracting(Confounder::what).containsExactly(Condition.WIND);
    }

    private static CastSet every(String label, String session, int from, int step, double... values) {
        List<Cast> casts = new ArrayList<>();
        for (int i = 0; i < values.length; i++) {
            casts.add(Sets.cast(
                    label + i, new Turn(session, from + step * i), Sets.measure("tempo", "1", values[i], 0.01)));
        }
        return new CastSet(label, casts);
    }

    @Test
    void castsThatAlternateAreComparedAsPairsAndSeeThroughTiring() {
        CastSet a = every("A", "day", 1, 2, 1.0, 2.0, 3.1, 4.0, 5.2, 6.1);
        CastSet b = every("B", "day", 2, 2, 1.4, 2.5, 3.4, 4.5, 5.6, 6.4);
        Comparison paired = Sets.comparer("tempo").compare(a, b);
        assertThat(paired.paired()).isTrue();
        assertThat(only(paired).verdict()).isEqualTo(Verdict.MORE);
        assertThat(only(paired).shift().estimate()).isCloseTo(0.4, within(0.051));
        Comparison apart = new Comparer(List.of("tempo"), Comparer.Pairing.NEVER, StillAir.UNMODELLED).compare(a, b);
        assertThat(only(apart).verdict()).isEqualTo(Verdict.NOT_SHOWN);
        assertThat(apart.drifts().get(0).shown()).isTrue();
        assertThat(apart.drifts().get(0).perCast()).isCloseTo(0.51, within(0.03));
    }

    @Test
    void oneAfterTheOtherOnOneDayIsToldFromOtherDays() {
        CastSet first = every("A", "day", 1, 1, 1, 2, 1, 2);
        assertThat(Sets.comparer("tempo")
                        .compare(first, every("B", "day", 5, 1, 2, 1, 2, 1))
                        .sequence()
                        .kind())
                .isEqualTo(Sequence.Kind.A_THEN_B);
        assertThat(Sets.comparer("tempo")
                        .compare(first, every("B", "next day", 1, 1, 2, 1, 2, 1))
                        .sequence()
                        .kind())
                .isEqualTo(Sequence.Kind.APART);
        assertThat(Sets.comparer("tempo")
                        .compare(every("C", "day", 5, 1, 2, 1, 2, 1), every("D", "day", 1, 1, 1, 2, 2, 1))
                        .sequence()
                        .kind())
                .isEqualTo(Sequence.Kind.B_THEN_A);
    }

    @Test
    void refusesOneCastTheSameCastTwiceAndSetsThatShareNoMeasure() {
        Comparer comparer = Sets.comparer("tempo");
        assertThatThrownBy(() -> comparer.compare(BEFORE, Sets.tempo("lonely", 2)))
                .isInstanceOf(ComparisonException.class)
                .hasMessageContaining("lonely holds one cast");
        assertThatThrownBy(() -> comparer.compare(BEFORE, BEFORE))
                .isInstanceOf(ComparisonException.class)
                .hasMessageContaining("in both sets");
        CastSet other = new CastSet(
                "other",
                List.of(
                        Sets.cast("x", null, Sets.measure("ringHz", "Hz", 4, 1)),
                        Sets.cast("y", null, Sets.measure("ringHz", "Hz", 5, 1))));
        assertThatThrownBy(() -> comparer.compare(BEFORE, other))
                .isInstanceOf(ComparisonException.class)
                .hasMessageContaining("nothing to compare");
    }

    @Test
    void measuresOutsideTheFamilyAreShownButNotJudged() {
        List<Cast> a = new ArrayList<>();
        List<Cast> b = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            a.add(Sets.cast("a" + i, null, Sets.measure("tempo", "1", 2 + i, 0), Sets.measure("ringHz", "Hz", i, 0)));
            b.add(Sets.cast(
                    "b" + i, null, Sets.measure("tempo", "1", 3 + i, 0), Sets.measure("ringHz", "Hz", 90 + i, 0)));
        }
        Comparison c = Sets.comparer("tempo").compare(new CastSet("A", a), new CastSet("B", b));
        assertThat(c.differences()).extracting(Difference::id).containsExactly("tempo", "ringHz");
        assertThat(c.differences().get(1).verdict()).isEqualTo(Verdict.NOT_TESTED);
        assertThat(c.differences().get(1).pHolm()).isNaN();
    }

    @Test
    void theMeasureThatScattersMostIsNamed() {
        List<Cast> casts = new ArrayList<>();
        double[] tempo = {2, 5, 1, 6, 2, 7};
        for (int i = 0; i < tempo.length; i++) {
            casts.add(Sets.cast(
                    "c" + i,
                    null,
                    Sets.measure("tempo", "1", tempo[i], 0.1),
                    Sets.measure("compression", "1", 0.1 + 0.001 * i, 0.001)));
        }
        Uneven u = Uneven.of(new CastSet("A", casts), List.of("compression", "tempo"));
        assertThat(u.state()).isEqualTo(State.FOUND);
        assertThat(u.most().id()).isEqualTo("tempo");
        assertThat(u.most().highest().cast().name()).isEqualTo("c5");
        assertThat(Uneven.of(new CastSet("A", casts), List.of("compression")).state())
                .isEqualTo(State.CLEAR);
        assertThat(Uneven.of(new CastSet("A", casts.subList(0, 3)), List.of("tempo"))
                        .state())
                .isEqualTo(State.CANNOT_TELL);
    }

    @Test
    void scatterThatMeasuringAloneMakesIsNotUneven() {
        List<Cast> casts = new ArrayList<>();
        double[] tempo = {2, 4, 1, 5, 2, 4, 3, 3.5};
        for (int i = 0; i < tempo.length; i++) {
            casts.add(Sets.cast("c" + i, null, Sets.measure("tempo", "1", tempo[i], 1.5)));
        }
        assertThat(Uneven.of(new CastSet("A", casts), List.of("tempo")).state()).isNotEqualTo(State.FOUND);
    }
}
