package org.lensward.risk.preparation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.lensward.eye.Allergen;
import org.lensward.eye.Sign;
import org.lensward.finding.FindingCode;
import org.lensward.risk.Bring;
import org.lensward.risk.TheatreItem;
import org.lensward.risk.preparation.AnaestheticChoice.Chosen;
import org.lensward.risk.preparation.AnaestheticChoice.NoneLeft;
import org.lensward.risk.preparation.AnaestheticChoice.Undecided;

/** What holds of the preparation of anyone: above all that no precaution contradicts another. */
class PreparationLaws {

    private static final Set<TheatreItem> ANAESTHETICS = Set.of(
            TheatreItem.TOPICAL_ANAESTHETIC,
            TheatreItem.SUB_TENON_SET,
            TheatreItem.NEEDLE_BLOCK_SET,
            TheatreItem.GENERAL_ANAESTHETIC);

    /** What a pharmacist knows of the shipped agents, written apart from the policy; common practice, no source. */
    private static final Set<Sign> NO_MANNITOL = Set.of(Sign.HEART_FAILURE, Sign.KIDNEY_DISEASE);

    @Provide
    Arbitrary<Patient> anyone() {
        return Patients.anyone();
    }

    private static Set<Allergen> forbidden(Patient patient) {
        return patient.allergies().stream().flatMap(each -> each.to().stream()).collect(Collectors.toSet());
    }

    private static Set<TheatreItem> items(Preparation prepared) {
        return prepared.bring().things().stream().map(Bring::item).collect(Collectors.toSet());
    }

    private static boolean affirms(Patient patient, Sign... signs) {
        return Arrays.stream(signs).anyMatch(sign -> patient.signs().getOrDefault(sign, false));
    }

    @Property
    void nothing_brought_or_given_contains_what_the_patient_does_not_tolerate(@ForAll("anyone") Patient patient) {
        Preparation prepared = patient.prepared();
        Stream<Allergen> brought = prepared.bring().things().stream().flatMap(each -> each.contains().stream());
        Stream<Allergen> given = prepared.agents().stream()
                .flatMap(each -> each.agent().stream())
                .flatMap(each -> each.contains().stream());
        assertThat(Stream.concat(brought, given).filter(forbidden(patient)::contains))
                .isEmpty();
    }

    @Property
    void no_agent_is_given_that_a_sign_forbids(@ForAll("anyone") Patient patient) {
        Set<String> given = patient.prepared().agents().stream()
                .flatMap(each -> each.agent().stream())
                .map(Agent::name)
                .collect(Collectors.toSet());
        if (affirms(patient, Sign.ASTHMA, Sign.HEART_FAILURE)) {
            assertThat(given).doesNotContain("timolol");
        }
        if (affirms(patient, NO_MANNITOL.toArray(Sign[]::new))) {
            assertThat(given).doesNotContain("mannitol");
        }
        if (affirms(patient, Sign.KIDNEY_DISEASE)) {
            assertThat(given).doesNotContain("acetazolamide");
        }
        if (affirms(patient, Sign.RESISTANT_BACTERIA)) {
            assertThat(given).doesNotContain("cefuroxime", "moxifloxacin");
        }
        if (patient.allergies().stream()
                .anyMatch(each -> each.severe() && each.to().contains(Allergen.PENICILLIN))) {
            assertThat(given).doesNotContain("cefuroxime");
        }
    }

    @Property
    void there_is_one_anaesthetic_or_it_is_undecided_or_a_persons(@ForAll("anyone") Patient patient) {
        Preparation prepared = patient.prepared();
        Set<TheatreItem> brought = new HashSet<>(items(prepared));
        brought.retainAll(ANAESTHETICS);
        Set<FindingCode> codes =
                prepared.findings().stream().map(each -> each.code()).collect(Collectors.toSet());
        AnaestheticChoice choice = prepared.anaesthetic();
        if (choice instanceof Chosen chosen) {
            assertThat(brought).containsExactly(chosen.kind().item());
            assertThat(codes).doesNotContain(FindingCode.ANAESTHETIC_UNDECIDED, FindingCode.NO_ANAESTHETIC_LEFT);
        } else if (choice instanceof Undecided undecided) {
            assertThat(brought).containsExactly(undecided.leaning().item());
            assertThat(codes).contains(FindingCode.ANAESTHETIC_UNDECIDED);
        } else {
            assertThat(choice).isInstanceOf(NoneLeft.class);
            assertThat(brought).isEmpty();
            assertThat(codes).contains(FindingCode.NO_ANAESTHETIC_LEFT);
        }
    }

    /** Section 2 of the clinical reference; common practice, no source. */
    @Property
    void the_anaesthetic_is_never_one_that_the_patient_cannot_have(@ForAll("anyone") Patient patient) {
        Set<TheatreItem> brought = items(patient.prepared());
        double length =
                patient.eye().biometry().orElseThrow().axialLength().value().value();
        if (length > 26 || affirms(patient, Sign.STAPHYLOMA, Sign.WARFARIN, Sign.DIRECT_ANTICOAGULANT)) {
            assertThat(brought).doesNotContain(TheatreItem.NEEDLE_BLOCK_SET);
        }
        if (affirms(patient, Sign.CANNOT_FIXATE) || length > 26) {
            assertThat(brought).doesNotContain(TheatreItem.TOPICAL_ANAESTHETIC);
        }
        if (affirms(patient, Sign.CANNOT_COOPERATE)) {
            assertThat(brought)
                    .doesNotContain(
                            TheatreItem.TOPICAL_ANAESTHETIC, TheatreItem.SUB_TENON_SET, TheatreItem.NEEDLE_BLOCK_SET);
        }
    }

    @Property
    void precautions_do_not_contradict_each_other(@ForAll("anyone") Patient patient) {
        Preparation prepared = patient.prepared();
        Set<TheatreItem> brought = items(prepared);
        assertThat(brought.contains(TheatreItem.CAPSULAR_TENSION_RING)
                        && brought.contains(TheatreItem.SUTURED_RING_SEGMENT))
                .isFalse();
        Verdict loop = prepared.nucleus().stream()
                .filter(each -> each.method() == NucleusMethod.LOOP)
                .map(each -> each.judgement().verdict())
                .findFirst()
                .orElseThrow();
        if (loop == Verdict.DOES_NOT_SUIT) {
            assertThat(brought).doesNotContain(TheatreItem.NUCLEUS_LOOP);
        }
        if (brought.contains(TheatreItem.NUCLEUS_LOOP)) {
            assertThat(brought).contains(TheatreItem.COHESIVE_VISCOELASTIC).doesNotContain(TheatreItem.CAPSULE_HOOKS);
        }
        if (affirms(patient, Sign.PHACODONESIS, Sign.LENS_DISLOCATION)) {
            assertThat(prepared.lensTypes())
                    .filteredOn(each -> each.type() != LensType.MONOFOCAL)
                    .allMatch(each -> each.judgement().verdict() == Verdict.DOES_NOT_SUIT);
        }
    }

    @Property
    void an_allergy_more_never_adds_an_agent_that_contains_it(
            @ForAll("anyone") Patient patient, @ForAll Allergen substance) {
        Preparation prepared = patient.allergicTo(substance).prepared();
        assertThat(prepared.agents().stream().flatMap(each -> each.agent().stream()))
                .noneMatch(agent -> agent.contains().contains(substance));
    }

    @Property
    void where_no_agent_is_left_the_plan_says_so_once(@ForAll("anyone") Patient patient) {
        Preparation prepared = patient.prepared();
        long without = prepared.agents().stream()
                .filter(each -> each.agent().isEmpty())
                .count();
        assertThat(prepared.findings())
                .filteredOn(each -> each.code() == FindingCode.NO_AGENT_LEFT)
                .hasSize((int) without);
        assertThat(prepared.findings()).doesNotHaveDuplicates();
    }

    @Property
    void precautions_stand_in_the_order_of_their_topics_each_once(@ForAll("anyone") Patient patient) {
        List<Topic> topics =
                patient.prepared().precautions().stream().map(Precaution::topic).toList();
        assertThat(topics).isSortedAccordingTo(Comparator.naturalOrder()).doesNotHaveDuplicates();
    }

    @Property
    void every_precaution_has_reasons_with_evidence_or_something_to_find_out(@ForAll("anyone") Patient patient) {
        assertThat(patient.prepared().precautions()).allSatisfy(each -> {
            assertThat(each.action()).isNotBlank();
            assertThat(each.source()).isNotBlank();
            assertThat(each.reasons().isEmpty()).isEqualTo(each.evidence().isEmpty());
            assertThat(each.reasons().size() + each.unknown().size()).isPositive();
        });
    }

    /** A denied sign and an unmentioned one differ: silence is always somebody's question. */
    @Property
    void silence_about_what_decides_is_a_question(@ForAll("anyone") Patient patient) {
        Collection<Sign> silent = Stream.of(Sign.GLAUCOMA, Sign.WARFARIN, Sign.TAMSULOSIN, Sign.CORNEA_GUTTATA)
                .filter(sign -> !patient.signs().containsKey(sign))
                .toList();
        assertThat(patient.prepared().unknown())
                .containsAll(silent.stream().map(Question::about).toList());
    }

    @Property
    void the_same_patient_is_prepared_in_the_same_way(@ForAll("anyone") Patient patient) {
        assertThat(patient.prepared()).isEqualTo(patient.prepared());
        assertThat(patient.prepared().toString()).isEqualTo(patient.prepared().toString());
    }

    @Property
    void a_day_needs_no_less_than_any_of_its_eyes(@ForAll("anyone") Patient one, @ForAll("anyone") Patient other) {
        BringList eye = one.prepared().bring();
        BringList day = BringList.ofDay(
                List.of(eye, other.prepared().bring()), Preparations.policy().shared());
        assertThat(eye.things()).allSatisfy(thing -> {
            Optional<Bring> same = day.things().stream()
                    .filter(each ->
                            each.item() == thing.item() && each.particulars().equals(thing.particulars()))
                    .findFirst();
            assertThat(same).hasValueSatisfying(each -> assertThat(each.count()).isGreaterThanOrEqualTo(thing.count()));
        });
    }
}
