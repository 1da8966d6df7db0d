package org.lensward.lens;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.lensward.finding.FindingCode.BACK_UP_LENS_MISSING;
import static org.lensward.finding.FindingCode.POWER_NOT_MADE;
import static org.lensward.lens.KitRole.ANTERIOR_CHAMBER;
import static org.lensward.lens.KitRole.PRIMARY;
import static org.lensward.lens.KitRole.SPARE;
import static org.lensward.lens.KitRole.SULCUS;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.lensward.eye.Laterality;
import org.lensward.eye.Specimen;
import org.lensward.finding.Finding;
import org.lensward.finding.Outcome;
import org.lensward.finding.Severity;
import org.lensward.optics.FormulaName;
import org.lensward.quantity.Dioptres;

/** The kit of one eye. */
class KitPlannerTest {

    private static final Specimen EYE =
            Specimen.ordinary(Laterality.RIGHT, LocalDate.of(2026, 2, 16)).depth(3.1);

    private static Outcome<LensKit> plan(Specimen eye, LensModel... models) {
        Catalogue catalogue = new Catalogue(List.of(models));
        return Lenses.views(models[0], eye.biometry()).then(views -> new KitPlanner(Lenses.policy(TargetSide.MYOPIC))
                .plan(views, new MeasuredEye(eye.biometry(), Optional.empty()), catalogue, Dioptres.of(0)));
    }

    private static KitLens lens(Outcome<LensKit> kit, KitRole role) {
        return kit.value().orElseThrow().all().stream()
                .filter(each -> each.role() == role)
                .findFirst()
                .orElseThrow();
    }

    @Nested
    class Given_a_model_for_every_site {

        private final Outcome<LensKit> kit = plan(EYE, Lenses.bag(), Lenses.sulcus(), Lenses.anteriorChamber());

        @Test
        void the_kit_is_whole_and_nothing_is_said() {
            assertThat(kit.value().orElseThrow().all())
                    .extracting(KitLens::role)
                    .containsExactly(PRIMARY, SPARE, SULCUS, ANTERIOR_CHAMBER);
            assertThat(kit.findings()).isEmpty();
        }

        @Test
        void the_spare_is_the_primary_in_all_but_its_role() {
            KitLens primary = lens(kit, PRIMARY);
            assertThat(lens(kit, SPARE))
                    .isEqualTo(new KitLens(
                            SPARE, primary.model(), primary.power(), primary.predicted(), primary.method()));
        }

        @Test
        void the_prediction_is_what_the_trusted_formula_makes_of_the_labelled_power() {
            KitLens primary = lens(kit, PRIMARY);
            FormulaView srkT = Lenses.views(Lenses.bag(), EYE.biometry()).value().orElseThrow().all().stream()
                    .filter(view -> view.formula() == FormulaName.SRK_T)
                    .findFirst()
                    .orElseThrow();
            assertThat(primary.method().name()).isEqualTo(FormulaName.SRK_T);
            assertThat(primary.predicted()).isEqualTo(srkT.eye().refraction(primary.power()));
        }

        @Test
        void the_anterior_chamber_lens_is_planned_by_srk_t_and_its_own_constant() {
            KitLens chamber = lens(kit, ANTERIOR_CHAMBER);
            FormulaView own = Lenses.views(Lenses.anteriorChamber(), EYE.biometry())
                    .value()
                    .orElseThrow()
                    .all()
                    .get(0);
            assertThat(chamber.method().name()).isEqualTo(FormulaName.SRK_T);
            assertThat(chamber.predicted()).isEqualTo(own.eye().refraction(chamber.power()));
            assertThat(chamber.predicted().value()).isBetween(-0.5, 0.0);
            assertThat(chamber.power()).isLessThan(lens(kit, PRIMARY).power());
        }
    }

    @Nested
    class Given_no_back_up_models {

        private final Outcome<LensKit> kit = plan(EYE, Lenses.bag());

        @Test
        void primary_and_spare_stand() {
            assertThat(kit.value().orElseThrow().all())
                    .extracting(KitLens::role)
                    .containsExactly(PRIMARY, SPARE);
        }

        @Test
        void each_missing_back_up_is_a_condition_that_says_why() {
            assertThat(kit.findings())
                    .allSatisfy(finding -> assertThat(finding.severity()).isEqualTo(Severity.CONDITION))
                    .extracting(Finding::message)
                    .containsExactly(
                            "No sulcus lens can be planned: the catalogue offers 0 house lenses.",
                            "No anterior chamber lens can be planned: the catalogue offers 0 house lenses.");
        }
    }

    @Nested
    class Given_back_ups_that_do_not_serve {

        private Finding only(LensModel sulcus, LensModel chamber) {
            Outcome<LensKit> kit = plan(EYE, Lenses.bag(), sulcus, chamber);
            assertThat(kit.value()).isPresent();
            assertThat(kit.findings()).hasSize(1);
            assertThat(kit.findings().get(0).code()).isEqualTo(BACK_UP_LENS_MISSING);
            return kit.findings().get(0);
        }

        @Test
        void a_sulcus_power_that_is_not_made_is_a_condition() {
            LensModel weak = Lenses.madeIn(Lenses.sulcus(), Lenses.range(6, 10, 0.5));
            assertThat(only(weak, Lenses.anteriorChamber()).message())
                    .matches("No sulcus lens can be planned: The power needed, \\d\\d\\.\\d\\d D, lies outside"
                            + " the powers made of the sulcus lens\\.");
        }

        @Test
        void an_anterior_chamber_model_without_an_A_constant_is_a_condition() {
            LensModel byHoffer = new LensModel(
                    Lenses.anteriorChamber().evidence(),
                    "the chamber lens",
                    LensSite.ANTERIOR_CHAMBER,
                    false,
                    Lenses.anteriorChamber().opticDiameter(),
                    Lenses.anteriorChamber().ranges(),
                    Map.of());
            assertThat(only(Lenses.sulcus(), byHoffer).message())
                    .contains("anterior chamber lens", "has no constant for eyes measured by light");
        }

        @Test
        void two_sulcus_models_without_a_house_lens_are_a_condition() {
            LensModel second = Lenses.model("second", LensSite.SULCUS, Lenses.CONSTANTS);
            Outcome<LensKit> kit = plan(EYE, Lenses.bag(), Lenses.sulcus(), second, Lenses.anteriorChamber());
            assertThat(kit.findings())
                    .extracting(Finding::message)
                    .containsExactly("No sulcus lens can be planned: the catalogue offers 2 house lenses.");
        }
    }

    @Test
    void a_primary_power_that_is_not_made_withholds_the_kit() {
        LensModel weak = Lenses.madeIn(Lenses.bag(), Lenses.range(6, 10, 0.5));
        Outcome<LensKit> kit = plan(EYE, weak, Lenses.sulcus(), Lenses.anteriorChamber());
        assertThat(kit.value()).isEmpty();
        assertThat(kit.findings()).extracting(Finding::code).containsExactly(POWER_NOT_MADE);
    }

    @Test
    void a_kit_begins_with_its_primary_lens() {
        KitLens spare = lens(plan(EYE, Lenses.bag()), SPARE);
        assertThatIllegalArgumentException().isThrownBy(() -> new LensKit(spare, List.of()));
    }
}
