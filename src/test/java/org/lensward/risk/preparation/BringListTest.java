package org.lensward.risk.preparation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.lensward.risk.TheatreItem.CAPSULE_DYE;
import static org.lensward.risk.TheatreItem.COHESIVE_VISCOELASTIC;
import static org.lensward.risk.TheatreItem.DYE_ABSORBING_LASER;
import static org.lensward.risk.TheatreItem.IRIS_HOOKS;
import static org.lensward.risk.preparation.Patient.ordinary;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.lensward.eye.Allergen;
import org.lensward.eye.Sign;
import org.lensward.lens.KitLens;
import org.lensward.lens.KitRole;
import org.lensward.lens.LensKit;
import org.lensward.lens.Lenses;
import org.lensward.lens.PlanningMethod;
import org.lensward.lens.Variant;
import org.lensward.optics.Formulas;
import org.lensward.quantity.Dioptres;
import org.lensward.risk.Bring;
import org.lensward.risk.TheatreItem;

/** One list for an eye and one for a theatre day. */
class BringListTest {

    private static Bring thing(TheatreItem item, int count, String reason) {
        return new Bring(item, count, "", Set.of(), reason);
    }

    private static KitLens lens(KitRole role, double power) {
        PlanningMethod method =
                new PlanningMethod("SRK/T", Formulas.all().get(0), Variant.AS_PUBLISHED, Optional.empty());
        return new KitLens(role, Lenses.bag(), Dioptres.of(power), Dioptres.of(-0.1), method);
    }

    private static BringList eye(double power) {
        return BringList.ofEye(List.of(
                        thing(IRIS_HOOKS, 1, "tamsulosin"),
                        thing(DYE_ABSORBING_LASER, 1, "swollen lens"),
                        new Bring(CAPSULE_DYE, 1, "trypan blue 0.06 %", Set.of(Allergen.TRYPAN_BLUE), "white lens")))
                .and(new LensKit(lens(KitRole.PRIMARY, power), List.of(lens(KitRole.SPARE, power))));
    }

    @Test
    void asked_for_twice_a_thing_is_brought_once_in_the_larger_number_for_both_reasons() {
        BringList list = BringList.ofEye(List.of(
                thing(IRIS_HOOKS, 1, "tamsulosin"),
                thing(IRIS_HOOKS, 2, "small pupil"),
                thing(IRIS_HOOKS, 1, "tamsulosin")));
        assertThat(list.things()).containsExactly(thing(IRIS_HOOKS, 2, "tamsulosin; small pupil"));
    }

    @Test
    void what_it_contains_is_kept() {
        BringList list = BringList.ofEye(List.of(
                new Bring(COHESIVE_VISCOELASTIC, 1, "", Set.of(Allergen.HYALURONATE), "a"),
                new Bring(COHESIVE_VISCOELASTIC, 1, "", Set.of(Allergen.LATEX), "")));
        assertThat(list.things().get(0).contains()).containsExactlyInAnyOrder(Allergen.HYALURONATE, Allergen.LATEX);
        assertThat(list.things().get(0).reason()).isEqualTo("a");
    }

    @Test
    void the_capsule_opening_adds_its_own() {
        BringList list = ordinary().with(Sign.TAMSULOSIN).prepared().bring();
        assertThat(list.and(List.of(thing(IRIS_HOOKS, 1, "small"), thing(CAPSULE_DYE, 1, "white lens")))
                        .things())
                .extracting(Bring::item)
                .startsWith(CAPSULE_DYE, IRIS_HOOKS)
                .doesNotHaveDuplicates();
    }

    @Test
    void over_a_day_what_is_used_up_adds_up_and_what_is_shared_does_not() {
        BringList day = BringList.ofDay(List.of(eye(21), eye(21.5), eye(21)), Set.of(DYE_ABSORBING_LASER));
        assertThat(day.things())
                .extracting(Bring::item, Bring::count)
                .containsExactly(tuple(CAPSULE_DYE, 3), tuple(IRIS_HOOKS, 3), tuple(DYE_ABSORBING_LASER, 1));
        assertThat(BringList.ofDay(List.of(eye(21), eye(22)), Set.of()).things())
                .extracting(Bring::count)
                .containsOnly(2);
    }

    @Test
    void lenses_of_every_kit_are_counted() {
        BringList day = BringList.ofDay(List.of(eye(21), eye(21.5), eye(21)), Set.of());
        assertThat(day.lenses())
                .extracting(LensToBring::role, LensToBring::power, LensToBring::count)
                .containsExactly(
                        tuple(KitRole.PRIMARY, Dioptres.of(21), 2),
                        tuple(KitRole.PRIMARY, Dioptres.of(21.5), 1),
                        tuple(KitRole.SPARE, Dioptres.of(21), 2),
                        tuple(KitRole.SPARE, Dioptres.of(21.5), 1));
        assertThat(day.lenses())
                .extracting(LensToBring::model)
                .containsOnly(Lenses.bag().name());
    }

    @Test
    void lenses_of_other_models_are_kept_apart() {
        LensToBring one = new LensToBring(KitRole.PRIMARY, "one", Dioptres.of(21), 1);
        LensToBring other = new LensToBring(KitRole.PRIMARY, "other", Dioptres.of(21), 1);
        BringList day = BringList.ofDay(
                List.of(new BringList(List.of(), List.of(other)), new BringList(List.of(), List.of(one))), Set.of());
        assertThat(day.lenses()).containsExactly(one, other);
    }

    @Test
    void an_ordinary_eye_brings_drops_antiseptic_and_antibiotic() {
        assertThat(ordinary().prepared().bring().things())
                .extracting(Bring::item)
                .containsExactly(
                        TheatreItem.INTRACAMERAL_ANTIBIOTIC, TheatreItem.ANTISEPTIC, TheatreItem.TOPICAL_ANAESTHETIC);
    }

    @Test
    void nothing_is_brought_for_what_must_first_be_found_out() {
        Preparation prepared = Patient.unknown().prepared();
        assertThat(prepared.bring().things())
                .extracting(Bring::item)
                .containsExactly(
                        TheatreItem.INTRACAMERAL_ANTIBIOTIC, TheatreItem.ANTISEPTIC, TheatreItem.TOPICAL_ANAESTHETIC);
        assertThat(prepared.unknown()).contains("whether the patient can fixate", "pressure", "axial length");
    }
}
