package org.lensward.board.cds;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.parser.DataFormatException;
import ca.uhn.fhir.parser.LenientErrorHandler;
import ca.uhn.fhir.rest.server.exceptions.BaseServerResponseException;
import com.fasterxml.jackson.databind.JsonNode;
import java.net.URI;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Bundle.BundleType;
import org.hl7.fhir.r4.model.Resource;
import org.lensward.flow.RecordClient;
import org.lensward.flow.RecordRefusal;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** What a service needs to know: sent with the call, or else read from the record, where the client's server is the record. */
final class HookData {

    private static final Logger LOG = LoggerFactory.getLogger(HookData.class);

    private final FhirContext fhir;
    private final RecordClient record;
    private final URI recordUrl;

    HookData(FhirContext fhir, RecordClient record, URI recordUrl) {
        this.fhir = fhir;
        this.record = record;
        this.recordUrl = recordUrl;
    }

    /**
     * Everything that the templates ask for.
     *
     * @param templates key to FHIR query, with the token {@code {{context.patientId}}}
     */
    Bundle gather(HookCall call, Map<String, String> templates) {
        Bundle gathered = new Bundle().setType(BundleType.COLLECTION);
        List<String> questions = new ArrayList<>();
        templates.forEach((key, template) -> {
            Optional<JsonNode> sent = call.prefetch().getOrDefault(key, Optional.empty());
            if (!call.prefetch().containsKey(key)) {
                questions.add(template.replace("{{context.patientId}}", call.patientId()));
            } else if (sent.isPresent()) {
                add(gathered, whole(sent.get(), key));
            }
        });
        if (!questions.isEmpty()) {
            add(gathered, ask(call, questions));
        }
        return gathered;
    }

    /** A resource that the call carries. */
    <T extends Resource> T read(Class<T> type, JsonNode sent) {
        try {
            Resource resource = (Resource) fhir.newJsonParser()
                    .setParserErrorHandler(new LenientErrorHandler(false))
                    .parseResource(sent.toString());
            return type.cast(resource);
        } catch (DataFormatException | ClassCastException unreadable) {
            LOG.debug("Unreadable resource in a call: {}", unreadable.getClass().getSimpleName());
            throw Refusal.malformed("A resource of the call is not a FHIR R4 " + type.getSimpleName() + ".");
        }
    }

    private Resource whole(JsonNode sent, String key) {
        Resource resource = read(Resource.class, sent);
        if (resource instanceof Bundle page && page.getLink(Bundle.LINK_NEXT) != null) {
            throw Refusal.withoutData("prefetch." + key + " is only the first page of several; send all of it.");
        }
        return resource;
    }

    private static void add(Bundle gathered, Resource resource) {
        gathered.addEntry().setResource(resource);
    }

    private Bundle ask(HookCall call, List<String> questions) {
        if (call.server().filter(this::isTheRecord).isEmpty()) {
            throw Refusal.withoutData(
                    "Not all that this service needs was prefetched, and fhirServer is not the record it reads.");
        }
        try {
            return record.gather(questions);
        } catch (BaseServerResponseException | RecordRefusal away) {
            LOG.warn("The record gave no answer for a hook: {}", away.getClass().getSimpleName());
            throw Refusal.withoutData(
                    "Not all that this service needs was prefetched, and the record does not answer.");
        }
    }

    private boolean isTheRecord(URI server) {
        return bare(server).equals(bare(recordUrl));
    }

    private static String bare(URI url) {
        return url.normalize().toString().replaceAll("/+$", "");
    }
}
