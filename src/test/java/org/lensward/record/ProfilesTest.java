package org.lensward.record;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.util.List;
import java.util.Set;
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

    /** Warnings we accept, each for its reason. */
    private static final List<String> ACCEPTED_WARNINGS = List.of(
            "dom-6", // 1. no narrative: machines write these, the board renders them
            "should have a performer", // 2. the record names devices and people as it likes
            "should have an effective[x]", // 3. a prediction is of the operation day, which the booking holds
            "CodeSystem is unknown and can't be validated: urn:oid:", // 4. the hospital's own catalogue numbers
            "Provenance activity type", // 5. none of HL7's activities is planning
            "SetPurposeOfUse"); // 6. why a carton is put away is told in words

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

    static List<Breach> breaches() {
        return Breach.all();
    }

    @ParameterizedTest
    @MethodSource("examples")
    void an_example_is_valid(Resource example) {
        assertThat(ProfileValidator.errors(example)).isEmpty();
        assertThat(ProfileValidator.warnings(example))
                .allMatch(warning -> ACCEPTED_WARNINGS.stream().anyMatch(warning::contains));
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
