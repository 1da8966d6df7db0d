package org.lensward.flow;

import java.time.Instant;

/**
 * Something set aside for a person. It carries no patient data: what it is of is fetched, or read, again when it is replayed.
 *
 * @param kind a booking that could not be planned, or an HL7 message that could not be stored
 * @param name the booking, such as {@code ServiceRequest/b1}; of a message, the hash of its content
 * @param reason why, as a code
 * @param detail why, in words
 * @param since when it was set aside
 * @param tries how often it was tried before
 */
public record SetAside(Kind kind, String name, String reason, String detail, Instant since, int tries) {

    /** What is set aside. */
    public enum Kind {
        /** A booking, in the queue {@code lensward.parked}. */
        BOOKING("lensward.parked"),
        /** An HL7 message, in the queue {@code lensward.quarantine}. */
        MESSAGE("lensward.quarantine");

        private final String queue;

        Kind(String queue) {
            this.queue = queue;
        }

        String queue() {
            return queue;
        }
    }
}
