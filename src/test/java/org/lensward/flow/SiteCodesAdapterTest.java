package org.lensward.flow;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.rest.client.api.IGenericClient;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.DeviceRequest;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Resource;
import org.junit.jupiter.api.Test;
import org.lensward.demo.EmbeddedRecord;
import org.lensward.demo.EmbeddedRecordSettings;
import org.lensward.record.Fhir;
import org.lensward.record.StoredPlan;

/** A running adapter finds and plans a booking that carries nothing but its hospital's own codes. */
class SiteCodesAdapterTest {

    private static final Path SOUTH = Path.of("demo-data/three-hospitals/south");
    private static final FhirContext FHIR = Fhir.r4();

    @Test
    void a_booking_in_local_codes_is_found_and_planned_and_the_record_keeps_its_codes() throws IOException {
        try (EmbeddedRecord record = EmbeddedRecord.start(EmbeddedRecordSettings.inMemory(0))) {
            IGenericClient client = FHIR.newRestfulGenericClient(record.baseUrl());
            client.transaction()
                    .withBundle(FHIR.newJsonParser()
                            .parseResource(Bundle.class, Files.readString(SOUTH.resolve("in.json"))))
                    .execute();
            try (Adapter adapter = Adapter.start(Map.of(
                    "lensward.record.url", record.baseUrl(),
                    "lensward.site-codes", SOUTH.resolve("site-codes.yaml").toString(),
                    "lensward.watch.interval", "300ms",
                    "spring.artemis.embedded.data-directory",
                            Files.createTempDirectory("lensward-queue").toString()))) {
                RunningDay.await(
                        "south's booking has a plan",
                        Duration.ofSeconds(60),
                        () -> !all(client, Procedure.class).getEntry().isEmpty());
                Procedure plan = (Procedure)
                        all(client, Procedure.class).getEntryFirstRep().getResource();
                assertThat(StoredPlan.state(plan)).isEqualTo("ready");
                assertThat(plan.getExtensionString("https://lensward.org/fhir/StructureDefinition/policy-version"))
                        .isEqualTo(PolicyFile.shipped().version() + ", site codes south-1");
                assertThat(all(client, DeviceRequest.class).getEntry()).hasSize(4);
                Observation biometry = client.read()
                        .resource(Observation.class)
                        .withId("s-bio-od")
                        .execute();
                assertThat(biometry.getMeta().getVersionId()).isEqualTo("1");
                assertThat(biometry.getCode().getCoding()).hasSize(1);
            }
        }
    }

    private static Bundle all(IGenericClient client, Class<? extends Resource> type) {
        return client.search()
                .forResource(type)
                .returnBundle(Bundle.class)
                .count(500)
                .execute();
    }
}
