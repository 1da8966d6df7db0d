package org.lensward;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.fhir.context.FhirContext;
import java.nio.file.Path;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.OperationOutcome;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lensward.record.Fhir;

/** Whatever is wrong with the input, a person learns which resource and which element, and no lens is proposed. */
class BadInputTest {

    private static final Path FILES = Path.of("src/test/resources/bad-input");
    private static final FhirContext FHIR = Fhir.r4();

    @ParameterizedTest
    @CsvSource({
        "empty-bundle.json, Bundle.entry",
        "not-json.txt, Bundle",
        "wrong-fhir-version.json, Bundle",
        "not-a-bundle.json, Patient",
        "no-booking.json, Bundle.entry",
        "missing-patient.json, .subject",
    })
    void unreadable_input_is_refused_whole(String file, String element) {
        Terminal seen = Terminal.run("plan", FILES.resolve(file).toString());
        assertThat(seen.exit()).isEqualTo(2);
        OperationOutcome outcome = FHIR.newJsonParser().parseResource(OperationOutcome.class, seen.out());
        assertThat(outcome.getIssueFirstRep().getExpression().get(0).getValue()).contains(element);
        assertThat(outcome.getIssueFirstRep().getDiagnostics()).isNotBlank();
        assertThat(seen.err()).doesNotContain("\tat ");
    }

    @ParameterizedTest
    @CsvSource({
        "unknown-unit.json, unit-unknown, value.code",
        "both-eyes-on-one-measurement.json, measurement-for-both-eyes, bodySite",
        "negative-length.json, value-implausible, value",
        "future-date.json, date-in-future, effective",
        "k-without-index.json, index-missing, component",
        "two-lengths-of-one-day-disagree.json, measurements-contradict, value",
        "booking-for-both-eyes.json, booking-for-both-eyes, bodySite",
        "contact-ultrasound-with-optical-constants.json, constant-missing, property",
        "cylinder-without-axis.json, steep-meridian-missing, component",
    })
    void doubtful_data_withholds_the_plan_and_names_the_element(String file, String code, String element) {
        Terminal seen = Terminal.run("plan", FILES.resolve(file).toString());
        assertThat(seen.exit()).isEqualTo(3);
        assertThat(seen.err().lines().filter(line -> line.contains(code + ":")))
                .singleElement()
                .satisfies(line -> assertThat(line).contains("/").contains("." + element));
        Bundle written = FHIR.newJsonParser().parseResource(Bundle.class, seen.out());
        assertThat(written.getEntry())
                .extracting(entry -> entry.getResource().fhirType())
                .contains("Procedure", "DetectedIssue")
                .doesNotContain("DeviceRequest", "Task", "Observation");
    }

    @Test
    void radii_labelled_as_dioptres_are_no_cornea() {
        Terminal seen = Terminal.run(
                "plan", FILES.resolve("k-in-millimetres-labelled-dioptres.json").toString());
        assertThat(seen.exit()).isEqualTo(3);
        assertThat(seen.err().lines().filter(line -> line.contains("value-implausible:")))
                .hasSize(2)
                .allMatch(line -> line.contains("Observation/keratometry-right-01.component["));
        assertThat(seen.out()).doesNotContain("\"DeviceRequest\"", "\"Task\"");
    }

    /** Doubtful but possible: the plan goes on, and says so. */
    @ParameterizedTest
    @CsvSource({
        "axis-without-cylinder.json, condition meridian-without-astigmatism",
        "very-flat-cornea-without-a-laser.json, condition cornea-perhaps-reshaped",
    })
    void what_is_odd_is_said_beside_the_lens(String file, String code) {
        Terminal seen = Terminal.run("plan", FILES.resolve(file).toString());
        assertThat(seen.exit()).isZero();
        assertThat(seen.err()).contains("provisional");
        assertThat(seen.err().lines().filter(line -> line.contains(code + ":")))
                .singleElement()
                .satisfies(line -> assertThat(line).contains("Observation/keratometry-right-01.component"));
        assertThat(seen.out()).contains("DeviceRequest");
    }

    @Test
    void a_file_that_is_not_there_is_named() {
        Terminal seen = Terminal.run("plan", "no-such-file.json");
        assertThat(seen.exit()).isEqualTo(2);
        assertThat(seen.err()).contains("no-such-file.json");
    }

    @Test
    void standard_input_is_read_for_a_dash() {
        Terminal seen = Terminal.runWith("{\"resourceType\":\"Bundle\",\"type\":\"collection\"}", "plan", "-");
        assertThat(seen.exit()).isEqualTo(2);
        assertThat(seen.err()).contains("Bundle.entry");
    }
}
