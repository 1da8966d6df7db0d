package org.lensward.board.fhir;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Bundle.BundleType;
import org.hl7.fhir.r4.model.OperationOutcome;
import org.hl7.fhir.r4.model.Parameters;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;
import org.lensward.board.ServedDay;
import org.lensward.record.ProfileValidator;

/** Calls of {@code $plan}. */
final class PlanCalls {

    private static final Path ORDINARY = Path.of("demo-data/an-ordinary-eye");

    private final ServedDay day;

    PlanCalls(ServedDay day) {
        this.day = day;
    }

    static String text(Resource resource) {
        return ServedDay.FHIR.newJsonParser().encodeResourceToString(resource);
    }

    static Bundle ordinary(String file) throws IOException {
        return ServedDay.FHIR.newJsonParser().parseResource(Bundle.class, Files.readString(ORDINARY.resolve(file)));
    }

    HttpRequest.Builder plan(String body) {
        return day.to("/fhir/$plan")
                .header("Content-Type", "application/fhir+json")
                .POST(BodyPublishers.ofString(body));
    }

    Bundle planned(String body) {
        HttpResponse<String> answer = day.send(plan(body));
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
        assertThat(answer.headers().firstValue("Content-Type").orElse("")).startsWith("application/fhir+json");
        Bundle bundle = ServedDay.FHIR.newJsonParser().parseResource(Bundle.class, answer.body());
        assertThat(bundle.getType()).isEqualTo(BundleType.TRANSACTION);
        return bundle;
    }

    void refused(HttpRequest.Builder request, int status) {
        HttpResponse<String> answer = day.send(request);
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(status);
        assertThat(answer.headers().firstValue("Content-Type").orElse("")).startsWith("application/fhir+json");
        OperationOutcome outcome = ServedDay.FHIR.newJsonParser().parseResource(OperationOutcome.class, answer.body());
        assertThat(ProfileValidator.errors(outcome)).isEmpty();
        assertThat(outcome.getIssueFirstRep().getDiagnostics()).isNotBlank().doesNotContain("Exception");
    }

    static String booking(String reference) {
        Parameters parameters = new Parameters();
        parameters.addParameter().setName("booking").setValue(new Reference(reference));
        return text(parameters);
    }
}
