package org.lensward.flow.auth;

import java.time.Duration;
import java.time.Instant;

/**
 * A token that the record takes for a while. Printing it prints nothing of it.
 *
 * @param value as it is shown
 * @param given when it was given
 * @param expires when it ends
 */
record AccessToken(String value, Instant given, Instant expires) {

    String header() {
        return "Bearer " + value;
    }

    boolean standsAt(Instant now) {
        return now.isBefore(expires);
    }

    /** Whether it should be renewed: near its end, but never before half of its time is over. */
    boolean isDueAt(Instant now, Duration before) {
        Instant half = given.plus(Duration.between(given, expires).dividedBy(2));
        Instant due = expires.minus(before);
        return !now.isBefore(due.isAfter(half) ? due : half);
    }

    @Override
    public String toString() {
        return "token until " + expires;
    }
}
