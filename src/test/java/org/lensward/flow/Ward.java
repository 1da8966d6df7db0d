package org.lensward.flow;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.rest.client.api.IGenericClient;
import ca.uhn.fhir.rest.client.api.ServerValidationModeEnum;
import java.io.IOException;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.DateType;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Resource;
import org.lensward.demo.EmbeddedRecord;
import org.lensward.demo.EmbeddedRecordSettings;
import org.lensward.record.Fhir;

/** A real record of two invented patients and a real adapter beside it that takes messages and files. */
final class Ward implements AutoCloseable {

    static final String HOSPITAL = "https://lensward.org/fhir/sid/demo-hospital-number";

    private final EmbeddedRecord record;
    private final IGenericClient client;
    private final Path queue;
    private final Map<String, Object> settings = new HashMap<>();
    private final int port;

    Ward() throws IOException {
        record = EmbeddedRecord.start(EmbeddedRecordSettings.inMemory(0));
        FhirContext fhir = Fhir.r4();
        fhir.getRestfulClientFactory().setServerValidationMode(ServerValidationModeEnum.NEVER);
        client = fhir.newRestfulGenericClient(record.baseUrl());
        patient("patient-01", "QX1077", "1952-11-04");
        patient("patient-02", "QX1090", "1948-02-29");
        queue = Files.createTempDirectory("lensward-queue");
        try (ServerSocket free = new ServerSocket(0)) {
            port = free.getLocalPort();
        }
        settings.put("lensward.record.url", record.baseUrl());
        settings.put("lensward.watch.interval", "1h");
        settings.put("spring.artemis.embedded.data-directory", queue.toString());
        settings.put("lensward.hl7.port", port);
        settings.put("lensward.hl7.systems[HOSP]", HOSPITAL);
        settings.put("lensward.hl7.operations[CATIOL]", "415089008");
    }

    Ward with(String name, Object value) {
        settings.put(name, value);
        return this;
    }

    Adapter adapter() {
        return Adapter.start(settings);
    }

    int port() {
        return port;
    }

    IGenericClient client() {
        return client;
    }

    void patient(String id, String number, String born) {
        Patient patient = new Patient();
        patient.setId(id);
        patient.addIdentifier().setSystem(HOSPITAL).setValue(number);
        patient.setBirthDateElement(new DateType(born));
        client.update().resource(patient).execute();
    }

    /** Everything of that type, every page. */
    <T extends Resource> List<T> all(Class<T> type) {
        List<T> all = new ArrayList<>();
        Bundle page = client.search()
                .forResource(type)
                .count(500)
                .returnBundle(Bundle.class)
                .execute();
        while (true) {
            page.getEntry().forEach(each -> all.add(type.cast(each.getResource())));
            if (page.getLink(Bundle.LINK_NEXT) == null) {
                return all;
            }
            page = client.loadPage().next(page).execute();
        }
    }

    @Override
    public void close() {
        record.close();
    }
}
