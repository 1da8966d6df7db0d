package org.lensward.bench;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.rest.client.api.IGenericClient;
import ca.uhn.fhir.rest.client.api.ServerValidationModeEnum;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.hl7.fhir.r4.model.Bundle;
import org.lensward.record.Fhir;

/** A record in a process of its own, as a hospital's is. */
final class RecordApart implements AutoCloseable {

    static final FhirContext FHIR = Fhir.r4();

    private final Process process;
    private final URI url;

    RecordApart() throws IOException, InterruptedException {
        Path folder = Files.createTempDirectory("lensward-bench");
        Path address = folder.resolve("address");
        process = new ProcessBuilder(List.of(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        "org.lensward.demo.RecordProcess",
                        folder.resolve("record").toString(),
                        address.toString()))
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("record.log").toFile())
                .start();
        while (!Files.exists(address)) {
            Thread.sleep(100);
        }
        url = URI.create(Files.readString(address));
    }

    URI url() {
        return url;
    }

    IGenericClient client() {
        FHIR.getRestfulClientFactory().setServerValidationMode(ServerValidationModeEnum.NEVER);
        FHIR.getRestfulClientFactory().setSocketTimeout(120_000);
        return FHIR.newRestfulGenericClient(url.toString());
    }

    /** How many plans stand. */
    int plans() {
        return client().search()
                .byUrl("Procedure?status=preparation&_summary=count")
                .returnBundle(Bundle.class)
                .execute()
                .getTotal();
    }

    void awaitPlans(int expected) throws InterruptedException {
        while (plans() < expected) {
            Thread.sleep(50);
        }
    }

    @Override
    public void close() {
        process.destroyForcibly();
    }
}
