package org.lensward;

import static org.assertj.core.api.Assertions.assertThat;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.rest.client.api.IGenericClient;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.DeviceDefinition;
import org.hl7.fhir.r4.model.MeasureReport;
import org.hl7.fhir.r4.model.Provenance;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.Task;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lensward.demo.EmbeddedRecord;
import org.lensward.demo.EmbeddedRecordSettings;
import org.lensward.demo.TheatreDay;
import org.lensward.flow.BundlePlanning;
import org.lensward.flow.Gatherer;
import org.lensward.flow.PolicyFile;
import org.lensward.flow.RecordClient;
import org.lensward.record.Fhir;
import org.lensward.record.ProfileValidator;
import org.lensward.record.Publication;
import org.lensward.record.Shelf;
import org.lensward.record.outcome.InventedYear;

/** Outcomes out of a running record and back into it; a constant adopted plans again what it touches. */
class OutcomesRecordTest {

    private static final FhirContext FHIR = Fhir.r4();
    private static final String YEAR = "demo-data/outcomes-of-a-year/export.ndjson";
    private static final String MODEL = "DeviceDefinition/harbour-60";

    private static EmbeddedRecord record;
    private static IGenericClient client;
    private static RecordClient door;

    @BeforeAll
    static void start() {
        record = EmbeddedRecord.start(EmbeddedRecordSettings.inMemory(0));
        new TheatreDay(FHIR).load(record.baseUrl());
        client = FHIR.newRestfulGenericClient(record.baseUrl());
        door = RecordClient.at(URI.create(record.baseUrl()), FHIR);
        client.transaction().withBundle(InventedYear.fewAsTransaction(FHIR)).execute();
    }

    @AfterAll
    static void stop() {
        record.close();
    }

    private static <T extends Resource> List<T> all(Class<T> type) {
        Bundle found = client.search()
                .forResource(type)
                .count(500)
                .returnBundle(Bundle.class)
                .execute();
        return new Shelf(found).all(type).toList();
    }

    private static Terminal outcomes(String... more) {
        String[] all = new String[3 + more.length];
        System.arraycopy(new String[] {"outcomes", "--record", record.baseUrl()}, 0, all, 0, 3);
        System.arraycopy(more, 0, all, 3, more.length);
        return Terminal.run(all);
    }

    @Test
    void the_record_tells_what_its_export_tells(@TempDir Path folder) throws IOException {
        Path export = Files.write(folder.resolve("few.ndjson"), InventedYear.few());
        Terminal seen = outcomes();
        assertThat(seen.exit()).as(seen.err()).isZero();
        assertThat(seen.out()
                        .lines()
                        .filter(line -> !line.contains("Constants"))
                        // the theatre day has an operation of its own
                        .filter(line -> !line.contains("-12"))
                        .toList())
                .isEqualTo(Terminal.run("outcomes", export.toString())
                        .out()
                        .lines()
                        .filter(line -> !line.contains("Constants"))
                        .toList());
    }

    @Test
    void written_twice_the_reports_stand_once() {
        String[] write = {"--write", "--reporter", "Harbour Eye Unit"};
        assertThat(outcomes(write).out()).contains("Written: 2 MeasureReports.");
        assertThat(outcomes(write).out()).contains("Written: nothing new.");
        assertThat(all(MeasureReport.class))
                .hasSize(2)
                .allSatisfy(each -> assertThat(each.getMeta().getVersionId()).isEqualTo("1"))
                .allSatisfy(each -> assertThat(ProfileValidator.errors(each)).isEmpty());
        assertThat(all(Provenance.class))
                .filteredOn(trail -> trail.getTarget().stream()
                        .anyMatch(each -> each.getReference().startsWith("MeasureReport/")))
                .hasSize(1);
    }

    @Test
    void an_adopted_constant_plans_the_booking_again_and_voids_its_check() {
        Task before = planned();
        Terminal adopted = adopt(proposal(), "--clinician", "Practitioner/surgeon-1");
        assertThat(adopted.exit()).as(adopted.err()).isZero();
        assertThat(adopted.out()).contains("Adopted: A 119.1", MODEL, "house-2");

        DeviceDefinition model = client.read()
                .resource(DeviceDefinition.class)
                .withId("harbour-60")
                .execute();
        assertThat(model.getExtensionString("https://lensward.org/fhir/StructureDefinition/constants-version"))
                .isEqualTo("house-2");
        assertThat(ProfileValidator.errors(model)).isEmpty();
        assertThat(constants(model)).containsExactlyInAnyOrder("118.5", "119.1");

        Task after = planned();
        assertThat(after.getIdElement().getIdPart())
                .isNotEqualTo(before.getIdElement().getIdPart());
        Task voided = client.read()
                .resource(Task.class)
                .withId(before.getIdElement().getIdPart())
                .execute();
        assertThat(voided.getStatus()).isEqualTo(Task.TaskStatus.CANCELLED);
        assertThat(all(Provenance.class))
                .filteredOn(trail -> trail.getTargetFirstRep().getReference().startsWith(MODEL))
                .singleElement()
                .satisfies(trail -> assertThat(trail.getAgentFirstRep().getWho().getReference())
                        .isEqualTo("Practitioner/surgeon-1"));
    }

    @Test
    void a_constant_nobody_proposed_or_one_surgeon_alone_is_not_adopted() {
        assertThat(adopt("c-00000000", "--clinician", "The surgeon").exit()).isEqualTo(3);
        Terminal seen = adopt(named(".*(c-[0-9a-f]{8})  .*surgeon-1, SRK/T.*"), "--clinician", "The surgeon");
        assertThat(seen.exit()).isEqualTo(3);
        assertThat(seen.err()).contains("one surgeon's");
    }

    private static Terminal adopt(String constant, String... who) {
        String[] all = new String[8 + who.length];
        System.arraycopy(
                new String[] {
                    "outcomes", "adopt", constant, YEAR, "--record", record.baseUrl(), "--constants-version", "house-2"
                },
                0,
                all,
                0,
                8);
        System.arraycopy(who, 0, all, 8, who.length);
        return Terminal.run(all);
    }

    private static String proposal() {
        return named(".*(c-[0-9a-f]{8})  .*all surgeons, SRK/T.*");
    }

    private static String named(String line) {
        Matcher found = Pattern.compile("(?m)^" + line + "$")
                .matcher(Terminal.run("outcomes", YEAR).out());
        assertThat(found.find()).isTrue();
        return found.group(1);
    }

    /** A constant to the tenth. */
    private static List<String> constants(DeviceDefinition model) {
        return model.getProperty().stream()
                .filter(each -> each.getType().getCodingFirstRep().getCode().equals("397263007"))
                .map(each ->
                        String.format("%.1f", each.getValueQuantityFirstRep().getValue()))
                .toList();
    }

    private static Task planned() {
        new BundlePlanning(FHIR, PolicyFile.shipped(), Clock.systemUTC())
                .plan(new Gatherer(door).gather("ServiceRequest/booking-01 Patient/patient-01"))
                .forEach(each -> {
                    if (each.publication() instanceof Publication.Write write) {
                        door.post(write.bundle());
                    }
                });
        return all(Task.class).stream()
                .filter(each -> each.getIdElement().getIdPart().startsWith("plan-booking-01-"))
                .filter(each -> each.getStatus() != Task.TaskStatus.CANCELLED)
                .findFirst()
                .orElseThrow();
    }
}
