package org.lensward.flow;

import org.lensward.record.Publication;

/** Tells the record. */
public final class Publisher {

    private final RecordClient client;

    public Publisher(RecordClient client) {
        this.client = client;
    }

    /** Posts what there is to write. */
    public void publish(Publication publication) {
        if (publication instanceof Publication.Write write) {
            client.post(write.bundle());
        }
    }
}
