package org.lensward.risk.opening;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** What a policy file is refused for, and the codes that the record carries. */
class OpeningPolicyTest {

    private static final OpeningPolicy POLICY = Openings.policy();

    @Test
    void a_policy_that_is_silent_about_a_technique_is_refused() {
        assertThatThrownBy(() -> OpeningPolicies.of(POLICY, Map.of(), List.of(), POLICY.dye()))
                .hasMessage("The policy says nothing of the technique torn-by-hand");
    }

    @Test
    void a_policy_that_gives_no_range_for_a_dye_is_refused() {
        assertThatThrownBy(() -> new DyePolicy(Map.of(), List.of(), POLICY.dye().forLaser(), List.of()))
                .hasMessage("The policy gives no range for trypan blue");
    }

    @Test
    void an_opening_that_loses_all_its_area_is_refused() {
        assertThatThrownBy(() -> new TechniquePolicy(
                        true,
                        Openings.millimetres(5),
                        Openings.millimetres(0),
                        Openings.millimetres(0),
                        Openings.percent(100)))
                .hasMessage("An opening that loses 100.0 % of its area closes");
    }

    @Test
    void nothing_is_compared_with_no_dye_at_all() {
        assertThatThrownBy(() -> new DyeRange(Openings.percent(0), Openings.percent(0), Openings.percent(1)))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void a_protocol_has_a_name() {
        assertThatThrownBy(() -> new DyeProtocol(" ", DyeAgent.TRYPAN_BLUE, Openings.percent(0), Openings.percent(1)))
                .hasMessage("A local protocol has a name");
    }

    @Test
    void codes_are_the_names_in_kebab_case() {
        assertThat(OpeningTechnique.DYE_LASER_COAGULATION.code()).isEqualTo("dye-laser-coagulation");
        assertThat(Verdict.SUITS_WITH_CONDITIONS.code()).isEqualTo("suits-with-conditions");
        assertThat(Bearing.NOT_AT_HAND.code()).isEqualTo("not-at-hand");
        assertThat(DyeAgent.TRYPAN_BLUE.code()).isEqualTo("trypan-blue");
    }
}
