package org.lensward.flow;

import static org.assertj.core.api.Assertions.assertThat;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.net.URI;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.lensward.demo.EmbeddedRecord;
import org.lensward.demo.EmbeddedRecordSettings;
import org.lensward.record.Fhir;
import org.lensward.record.Shelf;
import org.lensward.record.StoredPlan;

/** The theatre day on a record that keeps its data in a real PostgreSQL server. */
class PostgresDayTest {

    @Test
    void the_day_is_planned_and_is_still_there_when_the_record_starts_again() throws Exception {
        try (EmbeddedPostgres postgres = EmbeddedPostgres.start()) {
            EmbeddedRecordSettings kept =
                    EmbeddedRecordSettings.inPostgres(0, postgres.getJdbcUrl("postgres", "postgres"));
            List<String> planned;
            try (RunningDay day = new RunningDay(kept);
                    Adapter adapter = day.adapter()) {
                RunningDay.await("every booking has a plan", Duration.ofSeconds(120), day::allPlanned);
                planned = fingerprints(adapter.record());
                assertThat(planned).hasSize(day.plans().size()).doesNotHaveDuplicates();
            }
            try (EmbeddedRecord again = EmbeddedRecord.start(kept)) {
                assertThat(fingerprints(RecordClient.at(URI.create(again.baseUrl()), Fhir.r4())))
                        .isEqualTo(planned);
            }
        }
    }

    private static List<String> fingerprints(RecordClient record) {
        return StoredPlan.all(new Shelf(record.gather(StoredPlan.QUESTIONS)))
                .flatMap(each -> each.plan().stream())
                .map(plan -> plan.getExtensionString("https://lensward.org/fhir/StructureDefinition/plan-fingerprint"))
                .sorted()
                .toList();
    }
}
