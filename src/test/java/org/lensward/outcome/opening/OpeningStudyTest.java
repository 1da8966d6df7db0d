package org.lensward.outcome.opening;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.lensward.outcome.Operated.DAY;
import static org.lensward.outcome.Operated.POLICY;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.lensward.outcome.Admission;
import org.lensward.outcome.AfterSurgery;
import org.lensward.outcome.Opening;
import org.lensward.outcome.Operated;
import org.lensward.quantity.Millimetres;
import org.lensward.risk.opening.OpeningTechnique;

/** Openings followed; the figures are worked by hand. */
class OpeningStudyTest {

    private final OpeningStudy study = new OpeningStudy(POLICY.groups());
    private final Admission admission = new Admission(POLICY);
    private int eyes;

    private static Opening.Seen seen(int day, double diameter, Optional<Double> off) {
        return new Opening.Seen(DAY.plusDays(day), Millimetres.of(diameter), off.map(Millimetres::of));
    }

    private void follow(Optional<OpeningTechnique> technique, double planned, Opening.Seen... all) {
        follow(new OpeningStudy[] {study}, technique, planned, all);
    }

    private void follow(
            OpeningStudy[] into, Optional<OpeningTechnique> technique, double planned, Opening.Seen... all) {
        List<Opening.Seen> later = List.of(all).subList(1, all.length);
        Opening opening = new Opening(technique, Optional.of(Millimetres.of(planned)), Optional.of(all[0]), later);
        Operated eye = Operated.ordinary()
                .keys(String.format("p%03d", eyes++), "o")
                .after(new AfterSurgery(false, Set.of(), Optional.empty(), List.of(), Optional.of(opening)));
        into[0].add(admission.admit(eye.eye()));
    }

    @Test
    void contraction_is_what_an_opening_lost_of_its_diameter() {
        Optional<OpeningTechnique> torn = Optional.of(OpeningTechnique.TORN_BY_HAND);
        follow(torn, 5.3, seen(0, 5.0, Optional.empty()), seen(30, 4.5, Optional.of(0.2)));
        follow(
                torn,
                5.2,
                seen(0, 5.5, Optional.empty()),
                seen(20, 5.5, Optional.empty()),
                seen(59, 5.39, Optional.of(0.1)));
        assertThat(study.courses()).singleElement().satisfies(course -> {
            assertThat(course.technique()).isEqualTo(OpeningTechnique.TORN_BY_HAND);
            assertThat(course.planned().value()).isEqualTo(5.25);
            assertThat(course.openings()).isEqualTo(2);
            assertThat(course.meanMade().value()).isCloseTo(5.25, within(1e-12));
            assertThat(course.times()).singleElement().satisfies(at -> {
                assertThat(at.from().value()).isEqualTo(14);
                assertThat(at.to().value()).isEqualTo(60);
                assertThat(at.eyes()).isEqualTo(2);
                // 10 % and 2 %
                assertThat(at.contraction().value()).isCloseTo(6, within(1e-9));
                assertThat(at.contractionDeviation().orElseThrow().value()).isCloseTo(Math.sqrt(32), within(1e-9));
                // 19 % and 3.96 %
                assertThat(at.areaLost().value()).isCloseTo(11.48, within(1e-9));
                assertThat(at.decentration().orElseThrow().value()).isCloseTo(0.15, within(1e-12));
            });
        });
    }

    @Test
    void techniques_diameters_and_times_are_kept_apart() {
        follow(
                Optional.of(OpeningTechnique.THERMAL),
                5.25,
                seen(0, 5, Optional.empty()),
                seen(500, 5.1, Optional.empty()));
        follow(
                Optional.of(OpeningTechnique.THERMAL),
                5.75,
                seen(0, 5.8, Optional.empty()),
                seen(1, 5.8, Optional.empty()));
        follow(Optional.empty(), 5.25, seen(0, 5, Optional.empty()));
        assertThat(study.courses()).hasSize(2);
        OpeningCourse.At late = study.courses().get(0).times().get(0);
        assertThat(late.from().value()).isEqualTo(400);
        assertThat(late.contraction().value()).isCloseTo(-2, within(1e-9));
        assertThat(late.contractionDeviation()).isEmpty();
        assertThat(late.decentration()).isEmpty();
        assertThat(study.courses().get(1).times().get(0).from().value()).isZero();
    }

    @Test
    void two_studies_make_one() {
        Optional<OpeningTechnique> torn = Optional.of(OpeningTechnique.TORN_BY_HAND);
        OpeningStudy other = new OpeningStudy(POLICY.groups());
        follow(torn, 5.25, seen(0, 5.0, Optional.empty()), seen(30, 4.5, Optional.empty()));
        follow(new OpeningStudy[] {other}, torn, 5.25, seen(0, 5.0, Optional.empty()), seen(30, 4.9, Optional.empty()));
        study.merge(other);
        assertThat(study.courses().get(0).times().get(0).contraction().value()).isCloseTo(6, within(1e-9));
        study.add(admission.admit(Operated.ordinary().keys("z", "1").eye()));
        study.add(admission.admit(Operated.ordinary().keys("z", "1").eye()));
        assertThat(study.courses().get(0).openings()).isEqualTo(2);
    }

    @Test
    void an_opening_has_a_width() {
        assertThatThrownBy(() -> seen(0, 0, Optional.empty())).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> seen(0, 5, Optional.of(-0.1))).isInstanceOf(IllegalArgumentException.class);
    }
}
