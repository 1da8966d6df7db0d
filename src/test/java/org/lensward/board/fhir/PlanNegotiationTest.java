package org.lensward.board.fhir;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lensward.board.ServedDay;
import org.lensward.board.ServedDayExtension;

/** In what form {@code $plan} is asked and answers (FHIR R4, "RESTful API", content types and encodings). */
@ExtendWith(ServedDayExtension.class)
class PlanNegotiationTest {

    private final ServedDay day;
    private final PlanCalls calls;

    PlanNegotiationTest(ServedDay day) {
        this.day = day;
        this.calls = new PlanCalls(day);
    }

    @Test
    void more_than_the_limit_is_too_large() {
        calls.refused(calls.plan(" ".repeat(250_000)), 413);
        calls.refused(
                day.to("/fhir/$plan")
                        .header("Content-Type", "application/fhir+json")
                        .POST(BodyPublishers.fromPublisher(BodyPublishers.ofString(" ".repeat(250_000)))),
                413);
    }

    @ParameterizedTest
    @CsvSource({
        "application/fhir+json, 200",
        "application/json, 200",
        "*/*, 200",
        "application/*;q=0.5, 200",
        "'application/fhir+xml, application/fhir+json;q=0.9', 200",
        "application/fhir+json;fhirVersion=4.0, 200",
        "application/fhir+json;fhirVersion=5.0, 406",
        "application/fhir+xml, 406",
        "application/fhir+json;q=0, 406",
        "text/html, 406",
        "nonsense, 406"
    })
    void answers_are_json_or_refused(String accept, int status) throws IOException {
        HttpRequest.Builder request =
                calls.plan(PlanCalls.text(PlanCalls.ordinary("in.json"))).header("Accept", accept);
        if (status == 200) {
            assertThat(day.send(request).statusCode()).isEqualTo(200);
        } else {
            calls.refused(request, status);
        }
    }

    @ParameterizedTest
    @CsvSource({
        "application/json;charset=UTF-8, 422",
        "application/fhir+json;fhirVersion=4.0, 422",
        "application/fhir+json;fhirVersion=3.0, 415",
        "application/fhir+xml, 415",
        "text/plain, 415",
        "nonsense, 415"
    })
    void only_json_of_r4_is_read(String type, int status) {
        calls.refused(
                day.to("/fhir/$plan")
                        .header("Content-Type", type)
                        .POST(BodyPublishers.ofString("{\"resourceType\":\"Bundle\",\"type\":\"collection\"}")),
                status);
    }

    @Test
    void a_format_asked_for_in_the_address_comes_before_accept() {
        String body = "{\"resourceType\":\"Bundle\",\"type\":\"collection\"}";
        calls.refused(
                day.to("/fhir/$plan?_format=xml")
                        .header("Content-Type", "application/json")
                        .POST(BodyPublishers.ofString(body)),
                406);
        calls.refused(
                day.to("/fhir/$plan?_format=application/fhir+json")
                        .header("Content-Type", "application/json")
                        .header("Accept", "text/html")
                        .POST(BodyPublishers.ofString(body)),
                422);
    }

    @Test
    void only_posts_are_answered() {
        calls.refused(day.to("/fhir/$plan").GET(), 405);
    }
}
