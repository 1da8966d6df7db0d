package org.lensward.plan;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lensward.eye.Sign;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;

/** When two plans are the same plan. */
class FingerprintTest {

    private static final List<Evidence> BASIS =
            List.of(new Evidence("Observation/length", "1", ""), new Evidence("Patient/p1", "7", ""));

    private static final List<Finding> FOUND = List.of(Finding.of(FindingCode.BOOKING_WITHOUT_EYE, Cases.BOOKING));

    private static Fingerprint of(Cases given) {
        return Cases.plan(given).fingerprint();
    }

    @Test
    void it_is_a_sha_256_in_lower_case_and_brief_in_twelve() {
        Fingerprint print = Fingerprint.of(BASIS, FOUND, "policy-1");
        assertThat(print.hex()).matches("[0-9a-f]{64}");
        assertThat(print.brief()).hasSize(12);
        assertThat(print.hex()).startsWith(print.brief());
        assertThat(print).hasToString(print.hex());
    }

    @Test
    void the_order_of_the_basis_does_not_matter() {
        assertThat(Fingerprint.of(List.of(BASIS.get(1), BASIS.get(0)), FOUND, "policy-1"))
                .isEqualTo(Fingerprint.of(BASIS, FOUND, "policy-1"));
    }

    @Test
    void the_version_of_any_basis_matters() {
        Fingerprint print = Fingerprint.of(BASIS, FOUND, "policy-1");
        List<Evidence> newer = List.of(BASIS.get(0), new Evidence("Patient/p1", "8", ""));
        assertThat(Fingerprint.of(newer, FOUND, "policy-1")).isNotEqualTo(print);
        assertThat(Fingerprint.of(BASIS.subList(0, 1), FOUND, "policy-1")).isNotEqualTo(print);
    }

    @Test
    void policy_and_findings_matter() {
        Fingerprint print = Fingerprint.of(BASIS, FOUND, "policy-1");
        assertThat(Fingerprint.of(BASIS, FOUND, "policy-2")).isNotEqualTo(print);
        assertThat(Fingerprint.of(BASIS, List.of(), "policy-1")).isNotEqualTo(print);
    }

    @Test
    void a_plan_under_another_policy_version_is_another_plan() {
        PlanningCase booked = Cases.ordinary().booked();
        assertThat(new Planner(WholePolicy.version("test-2")).plan(booked).fingerprint())
                .isNotEqualTo(
                        new Planner(WholePolicy.version("test-1")).plan(booked).fingerprint());
    }

    @Test
    void what_only_lent_a_date_or_a_side_matters_too() {
        Evidence panel = new Evidence("Observation/panel", "1", "");
        Evidence newer = new Evidence("Observation/panel", "2", "");
        assertThat(of(Cases.ordinary().also(panel)))
                .isNotEqualTo(of(Cases.ordinary()))
                .isNotEqualTo(of(Cases.ordinary().also(newer)));
    }

    @Test
    void a_sign_of_the_eye_matters_even_if_nothing_is_made_of_it() {
        assertThat(of(Cases.ordinary().signs(Sign.CANNOT_LIE_FLAT))).isNotEqualTo(of(Cases.ordinary()));
    }
}
