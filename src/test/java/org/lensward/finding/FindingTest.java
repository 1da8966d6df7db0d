package org.lensward.finding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.ArrayList;
import java.util.List;
import java.util.MissingFormatArgumentException;
import java.util.stream.Stream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class FindingTest {

    @Nested
    class A_finding {

        @Test
        void without_evidence_is_refused() {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> Finding.of(FindingCode.BOOKING_WITHOUT_EYE, List.of()))
                    .withMessageContaining("evidence");
        }

        @Test
        void without_its_particulars_is_refused() {
            assertThatExceptionOfType(MissingFormatArgumentException.class)
                    .isThrownBy(() -> Finding.of(FindingCode.PATIENT_MISSING, Findings.SOMEWHERE));
        }

        @Test
        void takes_severity_and_remedy_from_its_code() {
            assertThat(Findings.CAUTIONING.severity()).isEqualTo(FindingCode.CORNEAL_HEIGHT_CUSP.severity());
            assertThat(Findings.CAUTIONING.remedy()).isEqualTo(FindingCode.CORNEAL_HEIGHT_CUSP.remedy());
        }

        @Test
        void keeps_its_evidence_whatever_becomes_of_the_list() {
            List<Evidence> evidence = new ArrayList<>(List.of(Findings.SOMEWHERE));
            Finding finding = Finding.of(FindingCode.BOOKING_WITHOUT_EYE, evidence);
            evidence.clear();
            assertThat(finding.evidence()).containsExactly(Findings.SOMEWHERE);
        }
    }

    @Nested
    class Several_findings {

        @Test
        void withhold_if_any_does() {
            assertThat(Finding.withhold(Findings.ALL.stream())).isTrue();
        }

        @Test
        void do_not_withhold_if_none_does() {
            assertThat(Finding.withhold(Stream.of(Findings.CAUTIONING, Findings.NOTING)))
                    .isFalse();
            assertThat(Finding.withhold(Stream.empty())).isFalse();
        }
    }

    @Nested
    class Evidence_of_it {

        @Test
        void names_a_resource() {
            assertThatIllegalArgumentException().isThrownBy(() -> new Evidence(" ", "1", ""));
        }

        @Test
        void points_at_another_element_of_the_same_version() {
            assertThat(Findings.SOMEWHERE.at("effective"))
                    .isEqualTo(new Evidence("Observation/al-1", "3", "effective"));
        }

        @Test
        void reads_as_resource_and_element() {
            assertThat(Findings.SOMEWHERE).hasToString("Observation/al-1.valueQuantity");
            assertThat(Findings.SOMEWHERE.at("")).hasToString("Observation/al-1");
        }

        @Test
        void is_ordered_by_resource_then_version_then_element() {
            Evidence first = new Evidence("Condition/9", "9", "z");
            Evidence second = new Evidence("Observation/1", "1", "z");
            Evidence third = new Evidence("Observation/1", "2", "a");
            Evidence fourth = new Evidence("Observation/1", "2", "b");
            assertThat(Stream.of(fourth, third, second, first).sorted()).containsExactly(first, second, third, fourth);
        }
    }
}
