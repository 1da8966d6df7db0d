package org.lensward.flow;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.rest.api.EncodingEnum;
import ca.uhn.fhir.rest.api.SummaryEnum;
import ca.uhn.fhir.rest.client.api.IGenericClient;
import ca.uhn.fhir.rest.client.api.ServerValidationModeEnum;
import ca.uhn.fhir.rest.server.exceptions.PreconditionFailedException;
import ca.uhn.fhir.rest.server.exceptions.ResourceVersionConflictException;
import java.net.URI;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Bundle.BundleEntryComponent;
import org.hl7.fhir.r4.model.Bundle.BundleType;
import org.hl7.fhir.r4.model.Bundle.HTTPVerb;
import org.hl7.fhir.r4.model.Resource;
import org.lensward.record.bank.RecordDoor;

/** Asks and tells the record: many searches in one request, one plan in one transaction. */
public final class RecordClient implements RecordDoor {

    private final IGenericClient client;

    /** A record that a person names, with the patience that the settings have by default. */
    public static RecordClient at(URI url, FhirContext fhir) {
        return new RecordClient(fhir, new AdapterSettings.RecordServer(url, Duration.ofSeconds(30)));
    }

    public RecordClient(FhirContext fhir, AdapterSettings.RecordServer server) {
        int timeout = Math.toIntExact(server.timeout().toMillis());
        fhir.getRestfulClientFactory().setServerValidationMode(ServerValidationModeEnum.NEVER);
        fhir.getRestfulClientFactory().setConnectTimeout(timeout);
        fhir.getRestfulClientFactory().setConnectionRequestTimeout(timeout);
        fhir.getRestfulClientFactory().setSocketTimeout(timeout);
        fhir.getRestfulClientFactory().setPoolMaxPerRoute(16);
        this.client = fhir.newRestfulGenericClient(server.url().toString());
        this.client.setEncoding(EncodingEnum.JSON);
    }

    /**
     * All resources that the searches and reads find, every page of them, in one collection. What is read by id and is not there is
     * simply not in it; any other refusal fails the whole.
     *
     * @param urls relative to the server, such as {@code Condition?subject=Patient/p1}
     */
    @Override
    public Bundle gather(List<String> urls) {
        Bundle batch = new Bundle().setType(BundleType.BATCH);
        urls.forEach(
                url -> batch.addEntry().getRequest().setMethod(HTTPVerb.GET).setUrl(url));
        Bundle answer = client.transaction().withBundle(batch).execute();
        if (answer.getEntry().size() != urls.size()) {
            throw new RecordRefusal(
                    "The record answered " + answer.getEntry().size() + " of " + urls.size() + " questions");
        }
        Bundle gathered = new Bundle().setType(BundleType.COLLECTION);
        for (int index = 0; index < urls.size(); index++) {
            found(urls.get(index), answer.getEntry().get(index))
                    .forEach(each -> gathered.addEntry().setResource(each));
        }
        return gathered;
    }

    private List<Resource> found(String url, BundleEntryComponent entry) {
        String status = entry.getResponse().getStatus();
        if (status != null && (status.startsWith("404") || status.startsWith("410")) && !url.contains("?")) {
            return List.of();
        }
        if (status == null || !status.startsWith("2") || !entry.hasResource()) {
            throw new RecordRefusal("The record answered " + status + " to " + url.replaceAll("\\?.*", "?..."));
        }
        return entry.getResource() instanceof Bundle page ? pages(page) : List.of(entry.getResource());
    }

    private List<Resource> pages(Bundle first) {
        List<Resource> all = new ArrayList<>();
        Optional<Bundle> page = Optional.of(first);
        while (page.isPresent()) {
            page.get().getEntry().forEach(entry -> all.add(entry.getResource()));
            page = next(page.get());
        }
        return all;
    }

    /**
     * Goes through everything that a search finds, page by page; only one page is in memory.
     *
     * @param search relative to the server, such as {@code Procedure?status=completed&_count=500}
     */
    public void each(String search, Consumer<Resource> taker) {
        Optional<Bundle> page = Optional.of(
                client.search().byUrl(search).returnBundle(Bundle.class).execute());
        while (page.isPresent()) {
            page.get().getEntry().forEach(entry -> taker.accept(entry.getResource()));
            page = next(page.get());
        }
    }

    private Optional<Bundle> next(Bundle page) {
        return Optional.ofNullable(page.getLink(Bundle.LINK_NEXT))
                .map(any -> client.loadPage().next(page).execute());
    }

    /** Posts one transaction; returns when the record has taken all of it. */
    public void post(Bundle transaction) {
        taken(transaction);
    }

    private Bundle taken(Bundle transaction) {
        Bundle answer = client.transaction().withBundle(transaction).execute();
        for (BundleEntryComponent entry : answer.getEntry()) {
            String status = entry.getResponse().getStatus();
            if (status == null || !status.startsWith("2")) {
                throw new RecordRefusal("The record answered " + status + " inside a transaction");
            }
        }
        return answer;
    }

    @Override
    public int count(String search) {
        return client.search()
                .byUrl(search)
                .summaryMode(SummaryEnum.COUNT)
                .returnBundle(Bundle.class)
                .execute()
                .getTotal();
    }

    /** A version overtaken is 409 or 412, as R4's RESTful API has it. */
    @Override
    public Optional<Bundle> transact(Bundle transaction) {
        try {
            return Optional.of(taken(transaction));
        } catch (ResourceVersionConflictException | PreconditionFailedException overtaken) {
            return Optional.empty();
        }
    }
}
