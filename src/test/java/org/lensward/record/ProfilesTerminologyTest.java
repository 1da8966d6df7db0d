package org.lensward.record;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.fhir.context.support.DefaultProfileValidationSupport;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.CodeSystem;
import org.hl7.fhir.r4.model.CodeSystem.CodeSystemContentMode;
import org.hl7.fhir.r4.model.CodeSystem.ConceptDefinitionComponent;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.StructureDefinition;
import org.hl7.fhir.r4.model.ValueSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lensward.check.CheckState;
import org.lensward.check.Checkpoint;
import org.lensward.eye.Sign;
import org.lensward.finding.FindingCode;
import org.lensward.finding.Severity;
import org.lensward.lens.KitRole;
import org.lensward.lens.LensSite;
import org.lensward.plan.PlanState;
import org.lensward.risk.SurgeonGrade;

/** The published code systems against the enums that the program runs on, and every reference between artefacts. */
class ProfilesTerminologyTest {

    private static final CodeSystem DICOM =
            (CodeSystem) Objects.requireNonNull(new DefaultProfileValidationSupport(ProfileArtefacts.FHIR)
                    .fetchCodeSystem("http://dicom.nema.org/resources/ontology/DCM"));

    static List<CodeSystem> codeSystems() {
        return ProfileArtefacts.codeSystems();
    }

    @Test
    void a_code_system_holds_exactly_the_constants_of_its_enum() {
        assertThat(codes("finding")).containsExactlyInAnyOrderElementsOf(kebab(FindingCode.values()));
        assertThat(codes("finding-severity")).containsExactlyInAnyOrderElementsOf(kebab(Severity.values()));
        assertThat(codes("sign")).containsExactlyInAnyOrderElementsOf(kebab(Sign.values()));
        assertThat(codes("kit-role")).containsExactlyInAnyOrderElementsOf(kebab(KitRole.values()));
        assertThat(codes("lens-site")).containsExactlyInAnyOrderElementsOf(kebab(LensSite.values()));
        assertThat(codes("plan-state")).containsExactlyInAnyOrderElementsOf(kebab(PlanState.values()));
        assertThat(codes("check-state")).containsExactlyInAnyOrderElementsOf(kebab(CheckState.values()));
        assertThat(codes("checkpoint")).contains("confirmation").containsAll(kebab(Checkpoint.values()));
        assertThat(codes("surgeon-grade")).containsExactlyInAnyOrderElementsOf(kebab(SurgeonGrade.values()));
    }

    @Test
    void a_finding_is_published_with_the_severity_it_has() {
        for (ConceptDefinitionComponent concept : system("finding").getConcept()) {
            FindingCode code = FindingCode.valueOf(
                    concept.getCode().toUpperCase(Locale.ROOT).replace('-', '_'));
            assertThat(concept.getPropertyFirstRep().getValueCodeType().getValue())
                    .as(concept.getCode())
                    .isEqualTo(kebab(code.severity()));
        }
    }

    /** R4 2.24.0.1: an id has at most 64 characters. A key has 24, "plan-" 5, two hyphens 2, a counter 2. */
    @Test
    void a_finding_code_leaves_room_in_an_id() {
        assertThat(codes("finding")).allMatch(code -> code.length() <= 64 - 24 - 5 - 2 - 2);
    }

    /** Meanings as DICOM PS3.16 gives them, in the copy that HL7 publishes with R4 4.0.1. */
    @ParameterizedTest
    @CsvSource({
        "111750, Ultrasound Contact",
        "111751, Ultrasound Immersion",
        "111760, Haigis",
        "111762, Holladay 1",
        "111764, Hoffer Q",
        "111767, SRK-T",
        "111769, Haigis a0",
        "111770, Haigis a1",
        "111771, Haigis a2",
        "111772, Hoffer pACD Constant",
        "111773, Surgeon Factor"
    })
    void a_dicom_code_means_what_we_take_it_for(String code, String meaning) {
        assertThat(DICOM.getConcept())
                .filteredOn(concept -> concept.getCode().equals(code))
                .singleElement()
                .extracting(ConceptDefinitionComponent::getDisplay)
                .isEqualTo(meaning);
    }

    @ParameterizedTest
    @MethodSource("codeSystems")
    void a_code_system_is_complete_and_says_what_each_code_means(CodeSystem system) {
        assertThat(system.getContent()).isEqualTo(CodeSystemContentMode.COMPLETE);
        assertThat(system.getCaseSensitive()).isTrue();
        assertThat(system.getCount()).isEqualTo(system.getConcept().size());
        assertThat(system.getConcept())
                .allMatch(ConceptDefinitionComponent::hasDisplay)
                .allMatch(ConceptDefinitionComponent::hasDefinition)
                .extracting(ConceptDefinitionComponent::getCode)
                .doesNotHaveDuplicates()
                .allMatch(code -> code.matches("[a-z0-9]+(-[a-z0-9]+)*"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"profiles", "extensions", "terminology/code-systems", "terminology/value-sets", "examples"})
    void a_file_bears_the_name_of_its_artefact(String folder) {
        for (Path file : ProfileArtefacts.files(folder)) {
            Resource artefact = ProfileArtefacts.parse(file, Resource.class);
            String name = file.getFileName().toString().replace(".json", "");
            assertThat(artefact.getIdElement().getIdPart()).isEqualTo(name);
            if (!folder.equals("examples")) {
                assertThat(artefact.getNamedProperty("url").getValues().get(0).primitiveValue())
                        .isEqualTo(ProfileArtefacts.BASE + artefact.fhirType() + "/" + name);
            }
        }
    }

    @Test
    void no_two_definitions_share_an_address() {
        assertThat(Stream.concat(ProfileArtefacts.profiles().stream(), ProfileArtefacts.extensions().stream()))
                .extracting(StructureDefinition::getUrl)
                .doesNotHaveDuplicates();
    }

    @Test
    void every_value_set_is_bound_and_every_bound_value_set_is_there() {
        Set<String> bound = Stream.concat(ProfileArtefacts.profiles().stream(), ProfileArtefacts.extensions().stream())
                .flatMap(definition -> definition.getDifferential().getElement().stream())
                .filter(element -> element.getBinding().hasValueSet())
                .map(element -> element.getBinding().getValueSet())
                .collect(Collectors.toSet());

        assertThat(ProfileArtefacts.valueSets())
                .extracting(ValueSet::getUrl)
                .containsExactlyInAnyOrderElementsOf(bound);
    }

    @Test
    void a_value_set_lists_codes_of_ours_that_exist() {
        for (ValueSet set : ProfileArtefacts.valueSets()) {
            for (ValueSet.ConceptSetComponent include : set.getCompose().getInclude()) {
                if (include.getSystem().startsWith(ProfileArtefacts.BASE)) {
                    assertThat(codes(include.getSystem().replaceAll(".*/", "")))
                            .containsAll(include.getConcept().stream()
                                    .map(ValueSet.ConceptReferenceComponent::getCode)
                                    .toList());
                }
            }
        }
    }

    private static CodeSystem system(String name) {
        return ProfileArtefacts.codeSystems().stream()
                .filter(system -> system.getIdElement().getIdPart().equals(name))
                .findFirst()
                .orElseThrow(() -> new AssertionError("No code system " + name));
    }

    private static List<String> codes(String system) {
        return system(system).getConcept().stream()
                .map(ConceptDefinitionComponent::getCode)
                .toList();
    }

    private static List<String> kebab(Enum<?>[] constants) {
        return Arrays.stream(constants).map(ProfilesTerminologyTest::kebab).toList();
    }

    private static String kebab(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
