package org.lensward.record;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.ElementDefinition.ConstraintSeverity;
import org.hl7.fhir.r4.model.ElementDefinition.ElementDefinitionConstraintComponent;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.StructureDefinition;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The profiles against HL7's R4 definitions and validator: they accept the examples and refuse what each rule is there to refuse. */
class ProfilesTest {

    static Stream<Named<Resource>> examples() {
        return ProfileArtefacts.examples().stream().map(ProfilesTest::named);
    }

    static Stream<Named<Resource>> artefacts() {
        return Stream.of(ProfileArtefacts.profiles(), ProfileArtefacts.codeSystems(), ProfileArtefacts.valueSets())
                .flatMap(List::stream)
                .map(ProfilesTest::named);
    }

    private static Named<Resource> named(Resource resource) {
        return Named.of(resource.fhirType() + " " + resource.getIdElement().getIdPart(), resource);
    }

    static Stream<Breach> breaches() {
        return Breach.all().stream().flatMap(breach -> Stream.of(breach, breach.inTheOtherEye()));
    }

    @ParameterizedTest
    @MethodSource("examples")
    void an_example_is_valid(Resource example) {
        assertThat(ProfileValidator.faults(example)).isEmpty();
    }

    /** What says nothing of an eye is valid twice. */
    @ParameterizedTest
    @MethodSource("examples")
    void an_example_of_the_other_eye_is_valid_too(Resource example) {
        assertThat(ProfileValidator.errors(OtherEye.of(example))).isEmpty();
    }

    @Test
    void every_warning_that_is_accepted_is_given() {
        List<String> given = ProfileArtefacts.examples().stream()
                .flatMap(example -> ProfileValidator.warnings(example).stream())
                .toList();

        assertThat(AcceptedWarnings.ofExamples()).hasSizeGreaterThan(4).allMatch(accepted -> given.stream()
                .anyMatch(warning -> warning.contains(accepted)));
    }

    @ParameterizedTest
    @MethodSource("artefacts")
    void an_artefact_is_valid_itself(Resource artefact) {
        assertThat(ProfileValidator.errors(artefact)).isEmpty();
    }

    /** An extension by itself is not put before the validator: it would look for packages on the network. */
    @Test
    void an_extension_can_be_expanded() {
        assertThat(ProfileArtefacts.extensions())
                .extracting(StructureDefinition::getUrl)
                .allSatisfy(url -> assertThat(ProfileValidator.definition(url).hasSnapshot())
                        .isTrue());
    }

    @Test
    void every_profile_that_can_be_declared_has_an_example_of_its_name() {
        assertThat(ProfileArtefacts.profiles())
                .filteredOn(profile -> !profile.getAbstract())
                .allSatisfy(profile -> assertThat(ProfileArtefacts.declared(
                                ProfileArtefacts.example(profile.getIdElement().getIdPart())))
                        .isEqualTo(profile.getUrl()));
    }

    @ParameterizedTest
    @MethodSource("breaches")
    void a_breach_is_refused(Breach breach) throws JsonProcessingException {
        Resource broken = breach.commit();
        List<String> said = invariants(ConstraintSeverity.WARNING).contains(breach.refusal())
                ? ProfileValidator.warnings(broken)
                : ProfileValidator.errors(broken);

        assertThat(said).anyMatch(message -> message.contains(breach.refusal()));
    }

    /** R4 comes with DICOM's codes, not with these; what is not held cannot be refused. */
    @Test
    void a_code_of_a_system_we_do_not_hold_is_no_error() {
        Procedure plan = (Procedure) ProfileArtefacts.example("eye-plan");
        for (String system : List.of("http://snomed.info/sct", "http://loinc.org", "http://www.whocc.no/atc")) {
            plan.setCode(new CodeableConcept(new Coding(system, "12345", "some code")));
            assertThat(ProfileValidator.errors(plan)).as(system).isEmpty();
        }
    }

    @Test
    void every_invariant_has_a_breach() {
        Set<String> refusals = Breach.all().stream().map(Breach::refusal).collect(Collectors.toSet());

        assertThat(invariants(ConstraintSeverity.ERROR)).isNotEmpty().isSubsetOf(refusals);
        assertThat(invariants(ConstraintSeverity.WARNING)).isNotEmpty().isSubsetOf(refusals);
    }

    /** Of the resources that name an eye at all, each invariant is kept by the right and by the left one, and broken by both. */
    @Test
    void every_invariant_of_an_eye_is_tried_with_the_right_and_with_the_left() {
        Map<String, Set<String>> eyes = breaches()
                .collect(Collectors.groupingBy(
                        Breach::refusal, Collectors.flatMapping(Breach::eyes, Collectors.toCollection(TreeSet::new))));

        assertThat(Stream.of(ConstraintSeverity.ERROR, ConstraintSeverity.WARNING)
                        .flatMap(severity -> invariants(severity).stream()))
                .allSatisfy(key -> assertThat(eyes.get(key)).as(key).isIn(Set.of(), Set.of("left", "right")));
        assertThat(eyes.values().stream().filter(both -> both.size() == 2)).hasSizeGreaterThan(15);
    }

    private static List<String> invariants(ConstraintSeverity severity) {
        return Stream.concat(ProfileArtefacts.profiles().stream(), ProfileArtefacts.extensions().stream())
                .map(StructureDefinition::getDifferential)
                .flatMap(differential -> differential.getElement().stream())
                .flatMap(element -> element.getConstraint().stream())
                .filter(constraint -> constraint.getSeverity() == severity)
                .map(ElementDefinitionConstraintComponent::getKey)
                .toList();
    }
}
