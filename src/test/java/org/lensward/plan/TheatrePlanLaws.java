package org.lensward.plan;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.lensward.eye.Allergen;
import org.lensward.eye.Allergy;
import org.lensward.eye.Sign;
import org.lensward.finding.FindingCode;
import org.lensward.risk.Bring;
import org.lensward.risk.TheatreItem;
import org.lensward.risk.preparation.Agent;
import org.lensward.risk.preparation.AgentChoice;

/** Whole plans of generated patients: no two parts of one plan contradict each other. */
class TheatrePlanLaws {

    @Provide
    Arbitrary<Cases> anyone() {
        Arbitrary<Sign[]> signs =
                Arbitraries.of(Sign.class).array(Sign[].class).uniqueElements().ofMaxSize(12);
        Arbitrary<Set<Allergen>> allergens =
                Arbitraries.of(Allergen.class).set().ofMaxSize(5);
        Arbitrary<Boolean> severe = Arbitraries.of(true, false);
        return Combinators.combine(signs, allergens, severe)
                .as((present, forbidden, grave) ->
                        Cases.ordinary().signs(present).allergicTo(forbidden, grave));
    }

    @Property(tries = 400)
    void nothing_is_brought_that_an_allergy_forbids(@ForAll("anyone") Cases anyone) {
        Set<Allergen> forbidden = new HashSet<>();
        anyone.booked().person().allergies().forEach(each -> forbidden.addAll(each.to()));
        for (Bring bring : Cases.plan(anyone).theatre().bring().things()) {
            assertThat(Collections.disjoint(bring.contains(), forbidden))
                    .as(bring + " for one allergic to " + forbidden)
                    .isTrue();
        }
    }

    @Property(tries = 400)
    void no_agent_is_chosen_that_a_sign_or_a_severe_reaction_forbids(@ForAll("anyone") Cases anyone) {
        var history = anyone.booked().eye().orElseThrow().history();
        List<Agent> chosen = Cases.plan(anyone).theatre().preparation().orElseThrow().agents().stream()
                .map(AgentChoice::agent)
                .flatMap(Optional::stream)
                .toList();
        for (Agent agent : chosen) {
            assertThat(agent.unsuitable())
                    .noneMatch(sign -> history.affirmed(sign).isPresent());
            anyone.booked().person().allergies().stream()
                    .filter(Allergy::severe)
                    .forEach(allergy -> assertThat(Collections.disjoint(allergy.to(), agent.crossReacts()))
                            .isTrue());
        }
    }

    @Property(tries = 400)
    void no_dye_no_needle_and_no_ring_where_another_rule_forbids_it(@ForAll("anyone") Cases anyone) {
        EyePlan plan = Cases.plan(anyone);
        Set<TheatreItem> items = new HashSet<>();
        plan.theatre().bring().things().forEach(each -> items.add(each.item()));
        List<FindingCode> found =
                plan.findings().stream().map(each -> each.code()).toList();
        assertThat(items.contains(TheatreItem.CAPSULE_DYE) && found.contains(FindingCode.DYE_FORBIDDEN))
                .isFalse();
        assertThat(items.contains(TheatreItem.NEEDLE_BLOCK_SET) && found.contains(FindingCode.NEEDLE_HAZARDOUS))
                .isFalse();
        assertThat(items.contains(TheatreItem.CAPSULAR_TENSION_RING)
                        && items.contains(TheatreItem.SUTURED_RING_SEGMENT))
                .isFalse();
        long anaesthetics = Arrays.asList(
                        TheatreItem.TOPICAL_ANAESTHETIC,
                        TheatreItem.SUB_TENON_SET,
                        TheatreItem.NEEDLE_BLOCK_SET,
                        TheatreItem.GENERAL_ANAESTHETIC)
                .stream()
                .filter(items::contains)
                .count();
        assertThat(anaesthetics).isLessThanOrEqualTo(1);
    }

    @Property(tries = 200)
    void the_same_patient_gets_the_same_plan(@ForAll("anyone") Cases anyone) {
        assertThat(Cases.plan(anyone)).isEqualTo(Cases.plan(anyone));
    }
}
