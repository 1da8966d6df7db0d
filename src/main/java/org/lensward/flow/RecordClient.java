package org.lensward.flow;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.rest.api.EncodingEnum;
import ca.uhn.fhir.rest.api.SummaryEnum;
import ca.uhn.fhir.rest.client.api.IGenericClient;
import ca.uhn.fhir.rest.client.exceptions.FhirClientConnectionException;
import ca.uhn.fhir.rest.server.exceptions.PreconditionFailedException;
import ca.uhn.fhir.rest.server.exceptions.ResourceVersionConflictException;
import java.net.URI;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Bundle.BundleEntryComponent;
import org.hl7.fhir.r4.model.Bundle.BundleType;
import org.hl7.fhir.r4.model.Bundle.HTTPVerb;
import org.hl7.fhir.r4.model.CapabilityStatement;
import org.hl7.fhir.r4.model.Resource;
import org.lensward.flow.auth.RecordConnection;
import org.lensward.flow.auth.RecordDoorway;
import org.lensward.record.bank.RecordDoor;

/** Asks and tells the record: many searches in one request, one plan in one transaction. */
public final class RecordClient implements RecordDoor {

    private final IGenericClient client;
    private final Pages pages;
    private final RecordHealth health;
    private final DryRun dryRun;

    /** A record that a person names, with the patience that the settings have by default. */
    public static RecordClient at(URI url, FhirContext fhir) {
        return new RecordClient(fhir, new AdapterSettings.RecordServer(url, Duration.ofSeconds(30)));
    }

    /**
     * How the record is dealt with.
     *
     * @param health learns how it does
     * @param dryRun while it is on, nothing is written
     */
    public record Terms(RecordHealth health, DryRun dryRun) {

        static Terms usual() {
            return new Terms(new RecordHealth(Clock.systemUTC()), DryRun.never());
        }
    }

    /** A record that is open to everyone and always written. */
    public RecordClient(FhirContext fhir, AdapterSettings.RecordServer server) {
        this(fhir, server, RecordDoorway.open());
    }

    /** A record that is always written. */
    public RecordClient(FhirContext fhir, AdapterSettings.RecordServer server, RecordDoorway door) {
        this(fhir, server, door, Terms.usual());
    }

    /**
     * A record.
     *
     * @param fhir FHIR R4
     * @param server where it is
     * @param door what is shown there
     * @param terms how it is dealt with
     */
    public RecordClient(FhirContext fhir, AdapterSettings.RecordServer server, RecordDoorway door, Terms terms) {
        this.client = RecordConnection.to(fhir, server.url(), server.timeout(), door);
        this.client.setEncoding(EncodingEnum.JSON);
        this.client.registerInterceptor(terms.health());
        this.pages = new Pages(this::page);
        this.health = terms.health();
        this.dryRun = terms.dryRun();
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
        Bundle answer = asked(() -> client.transaction().withBundle(batch).execute());
        if (answer.getEntry().size() != urls.size()) {
            throw new RecordRefusal(
                    "answer-incomplete",
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
            throw new RecordRefusal(
                    "question-refused", "The record answered " + status + " to " + url.replaceAll("\\?.*", "?..."));
        }
        return entry.getResource() instanceof Bundle page ? pages.all(page) : List.of(entry.getResource());
    }

    private Bundle page(String address) {
        return asked(() ->
                client.loadPage().byUrl(address).andReturnBundle(Bundle.class).execute());
    }

    /**
     * Goes through everything that a search finds, page by page; only one page is in memory.
     *
     * @param search relative to the server, such as {@code Procedure?status=completed&_count=500}
     */
    public void each(String search, Consumer<Resource> taker) {
        Bundle first = asked(
                () -> client.search().byUrl(search).returnBundle(Bundle.class).execute());
        pages.each(first, taker);
    }

    /** Posts one transaction; returns when the record has taken all of it. */
    public void post(Bundle transaction) {
        taken(transaction);
    }

    private Bundle taken(Bundle transaction) {
        if (dryRun.isOn()) {
            throw RecordRefusal.dryRun();
        }
        Bundle answer = asked(() -> client.transaction().withBundle(transaction).execute());
        if (answer.getEntry().size() != transaction.getEntry().size()) {
            throw new RecordRefusal("answer-incomplete", "The record did not answer for every part of a transaction");
        }
        for (BundleEntryComponent entry : answer.getEntry()) {
            String status = entry.getResponse().getStatus();
            if (status == null || !status.startsWith("2")) {
                throw new RecordRefusal("part-refused", "The record answered " + status + " inside a transaction");
            }
        }
        return answer;
    }

    @Override
    public int count(String search) {
        return asked(() -> client.search()
                .byUrl(search)
                .summaryMode(SummaryEnum.COUNT)
                .returnBundle(Bundle.class)
                .execute()
                .getTotal());
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

    /** What the record says of itself. */
    public CapabilityStatement capabilities() {
        return asked(
                () -> client.capabilities().ofType(CapabilityStatement.class).execute());
    }

    /** How the record does. */
    RecordHealth health() {
        return health;
    }

    /** What the record asks to be spared for a while is not asked by what can wait. */
    public void checkMayAsk() {
        Duration wait = health.toWait();
        if (!wait.isZero()) {
            throw new RecordRefusal(RecordRefusal.TO_WAIT, "The record asked to be left alone for " + wait);
        }
    }

    private <T> T asked(Supplier<T> question) {
        try {
            return question.get();
        } catch (FhirClientConnectionException away) {
            health.failed(Reason.AWAY);
            throw away;
        }
    }
}
