package org.lensward.flow;

import java.time.Clock;
import org.apache.camel.ExchangeProperty;
import org.apache.camel.Header;
import org.hl7.fhir.r4.model.Bundle;
import org.lensward.record.Publication;

/** Tells the record; in a dry run, keeps what it would have told it. */
public final class Publisher {

    private final RecordClient client;
    private final DryRun dryRun;
    private final Clock clock;

    /**
     * To one record.
     *
     * @param client the record
     * @param dryRun whether nothing is written
     * @param clock by which a report is dated
     */
    public Publisher(RecordClient client, DryRun dryRun, Clock clock) {
        this.client = client;
        this.dryRun = dryRun;
        this.clock = clock;
    }

    /**
     * Posts what there is to write.
     *
     * @param publication what is to be done
     * @param gathered what the record holds, for a report of the differences
     * @param name booking and patient, as the queue carries them
     */
    public void publish(
            Publication publication, @ExchangeProperty("gathered") Bundle gathered, @Header("booking") String name) {
        if (publication instanceof Publication.Write write) {
            if (dryRun.isOn()) {
                dryRun.keep(WouldWrite.of(name, clock.instant(), write.bundle(), gathered));
            } else {
                client.post(write.bundle());
            }
        }
    }
}
