package org.lensward;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;

/** A clock that stands until the test turns it on. */
public final class TurnedClock extends Clock {

    private Instant now;

    /** Standing at that instant, such as {@code 2026-12-10T08:00:00Z}. */
    public TurnedClock(String now) {
        this.now = Instant.parse(now);
    }

    /** On by so much. */
    public void turn(Duration on) {
        now = now.plus(on);
    }

    @Override
    public ZoneId getZone() {
        return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
        return this;
    }

    @Override
    public Instant instant() {
        return now;
    }
}
