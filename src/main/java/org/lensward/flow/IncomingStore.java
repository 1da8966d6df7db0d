package org.lensward.flow;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Bundle.BundleEntryRequestComponent;
import org.hl7.fhir.r4.model.Bundle.BundleType;
import org.hl7.fhir.r4.model.Bundle.HTTPVerb;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;
import org.lensward.record.Shelf;
import org.lensward.record.incoming.Incoming;
import org.lensward.record.incoming.Standing;

/**
 * Puts into the record what others send: one request finds the patients and what stands already, one transaction writes everything.
 * When it returns, all of it is in the record. Doing it twice changes nothing.
 */
public final class IncomingStore {

    private final RecordClient client;

    public IncomingStore(RecordClient client) {
        this.client = client;
    }

    /** Stores what one message brings. */
    public void store(Incoming incoming) {
        storeAll(List.of(incoming));
    }

    /** Stores all of it, or nothing. */
    public void storeAll(List<Incoming> all) {
        Bundle gathered = client.gather(questions(all));
        Shelf shelf = new Shelf(gathered);
        List<Patient> patients = shelf.all(Patient.class).toList();
        Bundle transaction = new Bundle().setType(BundleType.TRANSACTION);
        for (Incoming incoming : all) {
            Patient patient = incoming.whom().among(patients);
            incoming.resources().forEach(each -> add(transaction, shelf, patient, each, incoming.onlyKnown()));
        }
        if (transaction.hasEntry()) {
            client.post(transaction);
        }
    }

    private static List<String> questions(List<Incoming> all) {
        Set<String> questions = new LinkedHashSet<>();
        all.forEach(each -> questions.addAll(each.whom().questions()));
        all.stream().flatMap(each -> each.resources().stream()).map(Shelf::name).forEach(questions::add);
        return new ArrayList<>(questions);
    }

    private static void add(Bundle transaction, Shelf shelf, Patient patient, Resource coming, boolean onlyKnown) {
        Optional<Resource> standing = standing(shelf, coming);
        standing.ifPresent(each -> Standing.checkOwner(each, patient));
        boolean overtaken =
                standing.filter(each -> Standing.isNewer(each, coming)).isPresent();
        if (overtaken || onlyKnown && standing.isEmpty()) {
            return;
        }
        Standing.giveTo(coming, patient);
        Resource written = standing.map(each -> Standing.over(each, coming)).orElse(coming);
        BundleEntryRequestComponent request = transaction
                .addEntry()
                .setFullUrl(Shelf.name(coming))
                .setResource(written)
                .getRequest()
                .setMethod(HTTPVerb.PUT)
                .setUrl(Shelf.name(coming));
        standing.ifPresent(each -> request.setIfMatch("W/\"" + each.getMeta().getVersionId() + "\""));
    }

    private static Optional<Resource> standing(Shelf shelf, Resource coming) {
        Reference name = new Reference(Shelf.name(coming));
        return Stream.of(coming.getClass())
                .flatMap(type -> shelf.find(type, name).stream())
                .map(Resource.class::cast)
                .findFirst();
    }
}
