package org.lensward.board.cds;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.hl7.fhir.instance.model.api.IBaseResource;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Resource;
import org.lensward.board.ServedDay;

/** Calls of hooks as a clinical system makes them. */
final class Hooks {

    static final ObjectMapper JSON = new ObjectMapper();

    private Hooks() {}

    /** A call for a patient, with the record as the client's server and nothing prefetched. */
    static ObjectNode call(ServedDay day, String hook, String patient) {
        ObjectNode call = JSON.createObjectNode();
        call.put("hook", hook).put("hookInstance", UUID.randomUUID().toString());
        call.put("fhirServer", day.recordUrl() + "/");
        call.putObject("context").put("userId", "Practitioner/someone").put("patientId", patient);
        return call;
    }

    static JsonNode json(IBaseResource resource) {
        return tree(ServedDay.FHIR.newJsonParser().encodeResourceToString(resource));
    }

    static JsonNode tree(String text) {
        try {
            return JSON.readTree(text);
        } catch (JsonProcessingException notJson) {
            throw new AssertionError(text, notJson);
        }
    }

    /** Posts with a good token. */
    static HttpResponse<String> post(ServedDay day, String service, String body) {
        return post(day, service, body, CallingClients.token(service.replace("/feedback", "")));
    }

    static HttpResponse<String> post(ServedDay day, String service, String body, String token) {
        return day.send(day.to("/cds-services/" + service)
                .header("Content-Type", "application/json")
                .header("Authorization", "Bearer " + token)
                .POST(BodyPublishers.ofString(body)));
    }

    /** The cards of an answer, each looked over by the rules of CDS Hooks. */
    static JsonNode cards(HttpResponse<String> answer) {
        CdsRules.isAnswer(answer);
        return tree(answer.body()).path("cards");
    }

    static JsonNode cards(ServedDay day, String hook, String patient, Consumer<ObjectNode> further) {
        ObjectNode call = call(day, hook, patient);
        further.accept(call);
        return cards(post(day, hook, call.toString()));
    }

    static Bundle bundle(Resource... resources) {
        Bundle bundle = new Bundle().setType(Bundle.BundleType.COLLECTION);
        Stream.of(resources).forEach(each -> bundle.addEntry().setResource(each));
        return bundle;
    }

    static ObjectNode context(ObjectNode call) {
        return (ObjectNode) call.get("context");
    }
}
