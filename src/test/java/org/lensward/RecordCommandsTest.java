package org.lensward;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.rest.client.api.IGenericClient;
import java.net.URI;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.SupplyRequest;
import org.hl7.fhir.r4.model.Task;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lensward.demo.EmbeddedRecord;
import org.lensward.demo.EmbeddedRecordSettings;
import org.lensward.demo.TheatreDay;
import org.lensward.flow.AdapterSettings.RecordServer;
import org.lensward.flow.BundlePlanning;
import org.lensward.flow.Gatherer;
import org.lensward.flow.PolicyFile;
import org.lensward.flow.RecordClient;
import org.lensward.record.Fhir;
import org.lensward.record.Publication;
import org.lensward.record.Shelf;

/** The commands on a running record, with the demo's theatre day in it and two of its eyes planned. */
class RecordCommandsTest {

    private static final FhirContext FHIR = Fhir.r4();
    private static final String SCAN = "(01)09521234000013(17)270228(10)HB62702(21)70107";

    private static EmbeddedRecord record;
    private static IGenericClient client;

    @BeforeAll
    static void start() {
        record = EmbeddedRecord.start(EmbeddedRecordSettings.inMemory(0));
        new TheatreDay(FHIR).load(record.baseUrl());
        client = FHIR.newRestfulGenericClient(record.baseUrl());
        RecordServer server = new RecordServer(URI.create(record.baseUrl()), Duration.ofSeconds(30));
        RecordClient door = new RecordClient(FHIR, server);
        for (String number : List.of("01", "02")) {
            String name = "ServiceRequest/booking-" + number + " Patient/patient-" + number;
            new BundlePlanning(FHIR, PolicyFile.shipped(), Clock.systemUTC())
                    .plan(new Gatherer(door).gather(name))
                    .forEach(each -> door.post(((Publication.Write) each.publication()).bundle()));
        }
    }

    @AfterAll
    static void stop() {
        record.close();
    }

    private static Terminal run(String[] first, String... more) {
        return Terminal.run(Stream.of(first, more).flatMap(Arrays::stream).toArray(String[]::new));
    }

    private static Terminal stock(String... more) {
        return run(new String[] {"stock", "--record", record.baseUrl(), "--today", "2026-12-08"}, more);
    }

    private static Terminal check(String... more) {
        return run(new String[] {"check", "--record", record.baseUrl(), "--booking", "booking-01"}, more);
    }

    private static <T extends Resource> List<T> all(Class<T> type) {
        Bundle found =
                client.search().forResource(type).returnBundle(Bundle.class).execute();
        return new Shelf(found).all(type).toList();
    }

    private static Task task() {
        return all(Task.class).stream()
                .filter(each -> each.getIdElement().getIdPart().startsWith("plan-booking-01-"))
                .findFirst()
                .orElseThrow();
    }

    private static Terminal replan(String... more) {
        return run(new String[] {"replan", "--record", record.baseUrl()}, more);
    }

    /** Its eye had a laser: it is withheld, so that nothing else here comes to need another lens. */
    @Test
    void one_booking_is_planned_again_by_hand() {
        Terminal dry = replan("booking-06", "--dry-run");
        assertThat(dry.exit()).isZero();
        assertThat(dry.out())
                .contains("ServiceRequest/booking-06 withheld", "Procedure/plan-booking-06 new", "nothing written")
                .doesNotContain("Patient");
        assertThat(replan("booking-06").out())
                .contains("Procedure/plan-booking-06 new")
                .endsWith("written\n");
        assertThat(replan("booking-06").out()).isEqualTo("nothing to write\n");
        assertThat(replan("nobody").exit()).isEqualTo(2);
    }

    @Test
    void the_record_says_what_it_offers() {
        Terminal ready = run(new String[] {"ready", "--record", record.baseUrl()});
        assertThat(ready.exit()).isZero();
        assertThat(ready.out()).contains("should: ").doesNotContain("must: ").endsWith("ready\n");
    }

    @Test
    void ordered_twice_it_is_ordered_once() {
        Terminal first = stock("--order");
        assertThat(first.exit()).isEqualTo(3);
        assertThat(first.out()).contains("Harbour 60 +29.50 D, SHORT", "(LATE)", "Ordered: 2,");
        Terminal second = stock("--order");
        assertThat(second.out()).contains("Ordered: nothing new.");
        assertThat(all(SupplyRequest.class))
                .extracting(each -> each.getMeta().getVersionId())
                .containsExactly("1", "1");
        assertThat(stock("--from", "2026-12-01", "--to", "2026-12-02").out()).contains("No lens is planned");
    }

    @Test
    void confirmed_and_picked_the_check_stands_in_the_record(@TempDir Path folder) {
        String id = task().getIdElement().getIdPart();
        String presented = new Presentation("an-ordinary-eye", "right", id.substring(id.lastIndexOf('-') + 1))
                .backUp("spare", "harbour-60", "22 D")
                .backUp("sulcus", "harbour-60-three", "21 D")
                .backUp("anterior-chamber", "breakwater-ac", "18 D")
                .in(folder);
        assertThat(check("--checkpoint", "pick", "--presented", presented, "--scan", SCAN.substring(0, 15))
                        .exit())
                .isEqualTo(4);
        assertThat(task().getMeta().getVersionId()).isEqualTo("1");
        Terminal seen =
                check("--confirm", "The surgeon", "--checkpoint", "pick", "--presented", presented, "--scan", SCAN);
        assertThat(seen.exit()).as(seen.err()).isZero();
        assertThat(seen.out()).isEmpty();
        assertThat(task().getBusinessStatus().getCodingFirstRep().getCode()).isEqualTo("picked");
        assertThat(task().getMeta().getVersionId()).isEqualTo("3");
        Terminal again = check("--checkpoint", "pick", "--presented", presented, "--scan", SCAN);
        assertThat(again.exit()).isZero();
        assertThat(again.err()).contains("picked before");
        assertThat(task().getMeta().getVersionId()).isEqualTo("3");
    }

    @Test
    void a_booking_that_is_not_there_is_named() {
        Terminal seen = Terminal.run("check", "--record", record.baseUrl(), "--booking", "nobody", "--confirm", "x");
        assertThat(seen.exit()).isEqualTo(2);
        assertThat(seen.out()).contains("ServiceRequest/nobody");
    }
}
