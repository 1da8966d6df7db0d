package org.lensward.record.bank;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.rest.client.api.IGenericClient;
import ca.uhn.fhir.rest.client.api.ServerValidationModeEnum;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Bundle.HTTPVerb;
import org.hl7.fhir.r4.model.DeviceDefinition;
import org.hl7.fhir.r4.model.DeviceDefinition.DeviceNameType;
import org.hl7.fhir.r4.model.Location;
import org.hl7.fhir.r4.model.Organization;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.ServiceRequest.ServiceRequestIntent;
import org.hl7.fhir.r4.model.ServiceRequest.ServiceRequestStatus;
import org.lensward.demo.EmbeddedRecord;
import org.lensward.demo.EmbeddedRecordSettings;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;
import org.lensward.finding.Outcome;
import org.lensward.flow.AdapterSettings;
import org.lensward.flow.RecordClient;
import org.lensward.lens.stock.LensUnit;
import org.lensward.lens.stock.Owner;
import org.lensward.lens.stock.UnitState;
import org.lensward.quantity.Dioptres;
import org.lensward.record.Fhir;

/** A real record with a hospital, a store, two lens models and a patient with bookings; the bank works on it through the real client. */
final class BankRecord {

    static final FhirContext FHIR = Fhir.r4();
    static final Signature CLERK = new Signature("A clerk", Instant.parse("2026-12-01T08:00:00Z"));
    static final LocalDate DAY = LocalDate.of(2026, 12, 10);
    static final LocalDate EXPIRY = LocalDate.of(2028, 3, 31);
    static final String MODEL = "DeviceDefinition/harbour-60";
    static final String SULCUS = "DeviceDefinition/harbour-60-three";

    private static final class Shared {
        static final BankRecord RECORD = new BankRecord();
    }

    private final EmbeddedRecord server = EmbeddedRecord.start(EmbeddedRecordSettings.inMemory(0));
    private final IGenericClient client;
    private final RecordClient door;

    /** One for all tests of the bank, in memory; it ends with the process. */
    static BankRecord shared() {
        return Shared.RECORD;
    }

    private BankRecord() {
        FHIR.getRestfulClientFactory().setServerValidationMode(ServerValidationModeEnum.NEVER);
        this.door = new RecordClient(
                FHIR, new AdapterSettings.RecordServer(URI.create(server.baseUrl()), Duration.ofSeconds(60)));
        this.client = FHIR.newRestfulGenericClient(server.baseUrl());
        searchParameters();
        put(model("harbour-60"), model("harbour-60-three"), store("store"), store("north"));
        put(named(new Organization().setName("Harbour Eye Unit"), "hospital"));
    }

    /** A carton just taken in. */
    LensUnit received(Delivery delivery) {
        return ready(bank().receive(delivery, CLERK));
    }

    LensUnit received(String lot, String serial) {
        return received(carton(lot, serial));
    }

    UnitState state(LensUnit unit) {
        return ready(bank().unit(name(unit))).state();
    }

    static String name(LensUnit unit) {
        return unit.evidence().resource();
    }

    static <T> T ready(Outcome<T> outcome) {
        return outcome.value().orElseThrow(() -> new AssertionError(outcome.findings()));
    }

    static List<FindingCode> codes(Outcome<?> outcome) {
        return outcome.findings().stream().map(Finding::code).toList();
    }

    RecordClient door() {
        return door;
    }

    IGenericClient client() {
        return client;
    }

    LensBank bank() {
        return new LensBank(FHIR, door);
    }

    /** Posted before the first Device: the record does not index afterwards. */
    private void searchParameters() {
        try (Stream<Path> files = Files.list(Path.of("fhir-profiles/search-parameters"))) {
            put(files.map(BankRecord::parse).toArray(Resource[]::new));
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    private static Resource parse(Path file) {
        try {
            return (Resource) FHIR.newJsonParser().parseResource(Files.readString(file));
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    void put(Resource... resources) {
        Bundle bundle = new Bundle().setType(Bundle.BundleType.TRANSACTION);
        for (Resource resource : resources) {
            bundle.addEntry()
                    .setResource(resource)
                    .getRequest()
                    .setMethod(HTTPVerb.PUT)
                    .setUrl(resource.fhirType() + "/" + resource.getIdElement().getIdPart());
        }
        client.transaction().withBundle(bundle).execute();
    }

    /** A patient with a booking of that name. */
    String book(String booking) {
        ServiceRequest request = new ServiceRequest()
                .setStatus(ServiceRequestStatus.ACTIVE)
                .setIntent(ServiceRequestIntent.ORDER)
                .setSubject(new Reference("Patient/" + booking));
        put(named(new Patient(), booking), named(request, booking));
        return "ServiceRequest/" + booking;
    }

    <T extends Resource> T read(Class<T> type, String name) {
        return client.read().resource(type).withId(name).execute();
    }

    List<Resource> search(String url) {
        return door.gather(List.of(url)).getEntry().stream()
                .map(Bundle.BundleEntryComponent::getResource)
                .toList();
    }

    static Delivery carton(String lot, String serial) {
        return carton(
                MODEL, 21.5, new LensUnit.Identity("09521234000013", Optional.of(lot), Optional.of(serial), EXPIRY));
    }

    static Delivery carton(String model, double power, LensUnit.Identity label) {
        return new Delivery(
                model,
                Dioptres.of(power),
                Optional.empty(),
                label,
                Optional.of("(01)09521234000013(17)280331(10)" + label.lot().orElse("-")),
                "Location/store",
                new Owner("Organization/hospital", false),
                LocalDate.of(2026, 12, 1));
    }

    private static DeviceDefinition model(String id) {
        DeviceDefinition model = named(new DeviceDefinition(), id);
        model.addDeviceName().setName(id).setType(DeviceNameType.MODELNAME);
        return model;
    }

    private static Location store(String id) {
        return named(new Location().setName(id), id);
    }

    static <T extends Resource> T named(T resource, String id) {
        resource.setId(resource.fhirType() + "/" + id);
        return resource;
    }
}
