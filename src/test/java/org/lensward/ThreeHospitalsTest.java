package org.lensward;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.fhir.context.FhirContext;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Base;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.DetectedIssue;
import org.hl7.fhir.r4.model.DeviceRequest;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.RiskAssessment;
import org.hl7.fhir.r4.model.Task;
import org.hl7.fhir.r4.model.Type;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lensward.demo.TheatreDay;
import org.lensward.record.Fhir;
import org.lensward.record.ProfileValidator;
import org.lensward.record.Shelf;

/** One patient, one eye, the same measurements, as three differently made hospitals send them: one plan, by the real command. */
class ThreeHospitalsTest {

    private static final Path FOLDER = Path.of("demo-data/three-hospitals");
    private static final FhirContext FHIR = Fhir.r4();

    private static Terminal run(String command, String hospital) {
        Path folder = FOLDER.resolve(hospital);
        return Terminal.run(
                command,
                folder.resolve("in.json").toString(),
                "--site-codes",
                folder.resolve("site-codes.yaml").toString());
    }

    private static List<Resource> planned(String hospital) {
        Terminal seen = run("plan", hospital);
        assertThat(seen.exit()).isZero();
        return FHIR.newJsonParser().parseResource(Bundle.class, seen.out()).getEntry().stream()
                .map(Bundle.BundleEntryComponent::getResource)
                .toList();
    }

    @Test
    void the_plans_are_identical() {
        List<String> north = lines("north");
        assertThat(lines("middle")).isEqualTo(north);
        assertThat(lines("south")).isEqualTo(north);
        assertThat(north)
                .contains("state ready", "target -0.500000 [diop]", "finding caution zonules-weak")
                .anyMatch(line -> line.startsWith("lens plan Harbour 60 lens-power=21.000000 [diop]"))
                .filteredOn(line -> line.startsWith("predicted"))
                .hasSize(5);
    }

    @ParameterizedTest
    @ValueSource(strings = {"north", "middle", "south"})
    void what_is_written_is_valid_and_names_the_hospitals_own_resources(String hospital) {
        List<Resource> written = planned(hospital);
        written.forEach(each ->
                assertThat(ProfileValidator.errors(each)).as(each.getId()).isEmpty());
        assertThat(written.stream()
                        .filter(DetectedIssue.class::isInstance)
                        .map(DetectedIssue.class::cast)
                        .flatMap(each -> each.getImplicated().stream()))
                .isNotEmpty()
                .allMatch(each -> each.getReference().matches("\\w+/(n|mid|s)-?\\w+(-\\w+)*"));
    }

    /** Only the system that the map names tells the patient from another. */
    @ParameterizedTest
    @CsvSource({"north, N-40117", "middle, P77-0031", "south, 900-114"})
    void the_lens_check_asks_for_the_identifiers_that_count(String hospital, String number) {
        Task check = planned(hospital).stream()
                .filter(Task.class::isInstance)
                .map(Task.class::cast)
                .findFirst()
                .orElseThrow();
        assertThat(check.getInput())
                .filteredOn(
                        input -> input.getType().getCodingFirstRep().getCode().equals("patient-identifier"))
                .singleElement()
                .extracting(input -> ((Identifier) input.getValue()).getValue())
                .isEqualTo(number);
    }

    /** The check plans again from the hospital's own codes and finds the plan it was opened for. */
    @ParameterizedTest
    @CsvSource({"north, n-b", "middle, mid-b", "south, s-b"})
    void the_plan_can_be_confirmed_where_it_was_made(String hospital, String booking, @TempDir Path folder)
            throws IOException {
        Terminal seen = Terminal.run(
                "check",
                withTwoNumbers(hospital, folder),
                "--site-codes",
                FOLDER.resolve(hospital).resolve("site-codes.yaml").toString(),
                "--booking",
                booking,
                "--confirm",
                "The surgeon");
        assertThat(seen.err()).contains("confirmation: confirmed");
        assertThat(seen.exit()).isZero();
    }

    @ParameterizedTest
    @ValueSource(strings = {"north", "middle", "south"})
    void the_theatres_day_is_planned_with_the_hospitals_codes(String hospital) {
        assertThat(run("day", hospital).out()).contains("-b");
    }

    @ParameterizedTest
    @ValueSource(strings = {"north", "middle", "south"})
    void every_code_on_a_measurement_is_understood(String hospital) {
        Terminal seen = run("codes", hospital);
        assertThat(seen.exit()).isZero();
        assertThat(seen.out()).doesNotContain("ambiguous  eye", "unmapped   eye");
    }

    @ParameterizedTest
    @CsvSource({"north, 3", "middle, 3", "south, 2"})
    void without_its_map_no_lens_is_proposed(String hospital, int exit) {
        String file = FOLDER.resolve(hospital).resolve("in.json").toString();
        Terminal seen = Terminal.run("plan", file);
        assertThat(seen.exit()).isEqualTo(exit);
        assertThat(seen.out()).doesNotContain("\"DeviceRequest\"");
        assertThat(Terminal.run("codes", file).exit()).isEqualTo(3);
    }

    @Test
    void the_theatre_day_does_not_hold_them() {
        assertThat(new TheatreDay(FHIR).bundles())
                .hasSize(12)
                .flatExtracting(Bundle::getEntry)
                .extracting(entry -> entry.getResource().getIdElement().getIdPart())
                .doesNotContain("n-b", "mid-b", "s-b");
    }

    /** A lens check asks for two numbers; the patient gets a second one of the system that counts. */
    private static String withTwoNumbers(String hospital, Path folder) throws IOException {
        String text = Files.readString(FOLDER.resolve(hospital).resolve("in.json"));
        Bundle all = FHIR.newJsonParser().parseResource(Bundle.class, text);
        Patient patient = new Shelf(all).all(Patient.class).findFirst().orElseThrow();
        patient.addIdentifier(patient.getIdentifierFirstRep().copy().setValue("second-number"));
        return Files.writeString(folder.resolve("in.json"), FHIR.newJsonParser().encodeResourceToString(all))
                .toString();
    }

    /** All of a plan but the names of resources. */
    private static List<String> lines(String hospital) {
        return planned(hospital).stream()
                .flatMap(ThreeHospitalsTest::lines)
                .sorted()
                .toList();
    }

    private static Stream<String> lines(Resource resource) {
        if (resource instanceof Procedure plan) {
            return Stream.of(
                    "state " + plan.getExtensionString("https://lensward.org/fhir/StructureDefinition/plan-state"),
                    "eye " + code(plan.getBodySiteFirstRep()),
                    "target "
                            + value(plan.getExtensionByUrl(
                                            "https://lensward.org/fhir/StructureDefinition/target-refraction")
                                    .getValue()));
        }
        if (resource instanceof DeviceRequest lens) {
            String parameters = String.join(
                    " ",
                    lens.getParameter().stream()
                            .map(each -> code(each.getCode()) + "=" + value(each.getValue()))
                            .toList());
            return Stream.of("lens " + lens.getIntent().toCode() + " "
                    + lens.getCodeCodeableConcept().getText() + " " + parameters);
        }
        if (resource instanceof Observation predicted) {
            String components = String.join(
                    " ",
                    predicted.getComponent().stream()
                            .map(each -> code(each.getCode()) + "=" + value(each.getValue()))
                            .toList());
            return Stream.of(
                    "predicted " + code(predicted.getMethod()) + " " + value(predicted.getValue()) + " " + components);
        }
        if (resource instanceof RiskAssessment risk) {
            return Stream.of("risk "
                    + risk.getPredictionFirstRep().getProbabilityDecimalType().getValue());
        }
        return resource instanceof DetectedIssue issue
                ? Stream.of("finding "
                        + issue.getExtensionString("https://lensward.org/fhir/StructureDefinition/finding-severity")
                        + " " + code(issue.getCode()))
                : Stream.empty();
    }

    private static String code(CodeableConcept concept) {
        return concept.getCodingFirstRep().getCode();
    }

    /** To a millionth: one hospital's micrometres are another's millimetres only but for the last bit. */
    private static String value(Type value) {
        if (value instanceof Quantity quantity) {
            BigDecimal rounded = quantity.getValue().setScale(6, RoundingMode.HALF_EVEN);
            return rounded.toPlainString() + " " + quantity.getCode();
        }
        Base base = value;
        return base instanceof CodeableConcept concept ? code(concept) : String.valueOf(base.primitiveValue());
    }
}
