package org.lensward.finding;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class FindingCodeTest {

    /** A conversion of java.util.Formatter as our templates use it: %s, %d, %.1f. */
    private static final Pattern CONVERSION = Pattern.compile("%(?:\\.\\d)?([sdf])");

    @Test
    void codes_are_unique() {
        assertThat(Arrays.stream(FindingCode.values()).map(FindingCode::code)).doesNotHaveDuplicates();
    }

    /** FHIR R4 datatype code: no leading, trailing or doubled white space; ours are narrower still. */
    @ParameterizedTest
    @EnumSource
    void a_code_is_kebab_case(FindingCode code) {
        assertThat(code.code()).matches("[a-z]+(-[a-z]+)*");
    }

    @ParameterizedTest
    @EnumSource
    void a_code_says_what_to_do_and_where_the_rule_comes_from(FindingCode code) {
        assertThat(code.remedy()).isNotBlank().endsWith(".").doesNotContain("%");
        assertThat(code.source()).isNotBlank();
    }

    @ParameterizedTest
    @EnumSource
    void a_message_is_a_sentence_with_every_place_filled(FindingCode code) {
        List<Object> particulars = particulars(code);
        Finding finding = Finding.of(code, Findings.SOMEWHERE, particulars.toArray());
        assertThat(finding.message())
                .endsWith(".")
                .doesNotContainPattern("%[^ ]|null")
                .matches(Pattern.compile("\\p{Lu}.*|thing0.*"));
        for (Object particular : particulars) {
            assertThat(finding.message()).contains(particular.toString());
        }
    }

    /** One distinguishable particular for every conversion of the template. */
    private static List<Object> particulars(FindingCode code) {
        Matcher places = CONVERSION.matcher(code.template());
        List<Object> particulars = new java.util.ArrayList<>();
        while (places.find()) {
            int index = particulars.size();
            particulars.add(
                    switch (places.group(1)) {
                        case "d" -> (Object) (4711L + index);
                        case "f" -> 47.5 + index;
                        default -> "thing" + index;
                    });
        }
        return particulars;
    }
}
