package org.lensward;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.fhir.context.FhirContext;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.DetectedIssue;
import org.hl7.fhir.r4.model.Resource;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.lensward.finding.FindingCode;
import org.lensward.finding.Severity;
import org.lensward.record.Fhir;
import org.lensward.record.ProfileValidator;
import org.lensward.record.ReferenceTargets;

/** Every refusal has an example in {@code fhir-profiles/examples/refusals}, and it is what the program says. */
class RefusalsTest {

    private static final FhirContext FHIR = Fhir.r4();

    /**
     * Refusals that are no plan's: of a scan, the lens bank, an implant's record, a recall, a lens check, a message or a file. A booking
     * without its patient is refused whole, before there is a plan to withhold: {@code unreadable-missing-patient}.
     */
    private static final String NOT_OF_A_PLAN =
            "(label|record|unit(?!-unknown)|bank|implant|recall|check|message|file|patient|site)-.*";

    private static Map<String, String> said;

    @BeforeAll
    static void refuse() throws IOException {
        said = Refusals.all();
    }

    @Test
    void an_example_is_what_the_program_says() throws IOException {
        Map<String, String> published = new TreeMap<>();
        try (Stream<Path> files = Files.list(Refusals.FOLDER)) {
            for (Path file : files.toList()) {
                published.put(file.getFileName().toString().replace(".json", ""), Files.readString(file));
            }
        }

        assertThat(published).as("run org.lensward.record.PublishedFiles").isEqualTo(new TreeMap<>(said));
    }

    @Test
    void every_finding_that_withholds_a_plan_has_an_example() throws IOException {
        assertThat(Refusals.withheld().keySet())
                .containsExactlyInAnyOrderElementsOf(Stream.of(FindingCode.values())
                        .filter(code -> code.severity() == Severity.WITHHOLDS)
                        .map(FindingCode::code)
                        .filter(code -> !code.matches(NOT_OF_A_PLAN))
                        .toList());
    }

    @Test
    void a_record_with_the_wrong_in_it_has_no_lens_and_one_without_has() throws IOException {
        for (Map.Entry<String, FaultyRecord> each : Refusals.withheld().entrySet()) {
            Terminal refused = each.getValue().planned();
            assertThat(refused.exit()).as(each.getKey()).isEqualTo(3);
            assertThat(refused.out()).as(each.getKey()).doesNotContain("\"DeviceRequest\"", "\"Task\"");
        }
        assertThat(Terminal.run("plan", "demo-data/an-ordinary-eye/in.json").exit())
                .isZero();
    }

    @Test
    void an_example_keeps_its_profile() {
        assertThat(said.values())
                .extracting(json -> (Resource) FHIR.newJsonParser().parseResource(json))
                .allSatisfy(example -> {
                    assertThat(ProfileValidator.errors(example))
                            .as(example.getId())
                            .isEmpty();
                    if (example instanceof DetectedIssue) {
                        assertThat(ReferenceTargets.misdirected(example)).isEmpty();
                    }
                });
    }
}
