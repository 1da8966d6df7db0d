package org.lensward.risk.opening;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

/** Published edge strengths contradict each other; the plan says so and ranks nothing. */
class EdgeStrengthTest {

    @ParameterizedTest
    @CsvFileSource(resources = "/published/capsule-edge.csv", useHeadersInDisplayName = true)
    void every_measurement_is_told_as_printed(String study, String torn, String photodisrupted, String higher) {
        boolean tornHigher = Double.parseDouble(torn) > Double.parseDouble(photodisrupted);
        assertThat(tornHigher).isEqualTo(higher.equals("TORN_BY_HAND"));
        assertThat(EdgeStrength.published())
                .anyMatch(told -> told.startsWith(study) && told.contains(torn) && told.contains(photodisrupted));
    }

    @Test
    void the_studies_conflict() throws IOException {
        try (BufferedReader file = new BufferedReader(new InputStreamReader(
                Objects.requireNonNull(getClass().getResourceAsStream("/published/capsule-edge.csv")),
                StandardCharsets.UTF_8))) {
            List<String> lines =
                    file.lines().filter(line -> !line.startsWith("#")).toList();
            assertThat(lines.stream()
                            .skip(1)
                            .map(line -> line.substring(line.lastIndexOf(',') + 1))
                            .collect(Collectors.toSet()))
                    .containsExactlyInAnyOrder("TORN_BY_HAND", "PHOTODISRUPTION");
        }
    }

    @Test
    void every_plan_says_that_edge_strength_did_not_enter() {
        assertThat(OpeningCandidate.reference().plan().caveat())
                .contains("did not enter this choice", "common practice, no source", "published measurements conflict");
    }
}
