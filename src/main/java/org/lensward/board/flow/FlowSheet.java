package org.lensward.board.flow;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * How the flow stands, for those who run it. Holds no patient data.
 *
 * @param at when this was told
 * @param queues what waits, and since when
 * @param inHand bookings being planned by this adapter now
 * @param look the last look at the record that counted; none before the first
 * @param record how the record does
 * @param certificates days left of each server's certificate
 * @param dryRun whether nothing is written to the record
 * @param wouldWrite bookings of which a dry run says what would be written
 * @param setAside bookings and messages that wait for a person, the oldest first
 * @param reasons why, each once, with how many
 * @param versions of policy, code map and programs
 */
public record FlowSheet(
        Instant at,
        List<Waiting> queues,
        int inHand,
        Optional<Look> look,
        Health record,
        List<Certificate> certificates,
        boolean dryRun,
        int wouldWrite,
        List<Aside> setAside,
        List<Why> reasons,
        List<Version> versions) {

    /**
     * One queue.
     *
     * @param name in words
     * @param depth how many wait
     * @param oldestSeconds age of the first of them
     */
    public record Waiting(String name, long depth, Optional<Long> oldestSeconds) {}

    /**
     * A look at the record.
     *
     * @param secondsAgo how long ago
     * @param bookings how many it found to plan
     * @param tookMillis how long it took
     */
    public record Look(long secondsAgo, int bookings, long tookMillis) {}

    /**
     * The record.
     *
     * @param well whether it does what it is asked
     * @param answeredSecondsAgo when it last did
     * @param latencyMillis how long that took
     * @param failingSeconds for how long it has failed
     * @param failure the last failure's code
     * @param clockAheadMillis by how much its clock runs before ours
     */
    public record Health(
            boolean well,
            Optional<Long> answeredSecondsAgo,
            long latencyMillis,
            Optional<Long> failingSeconds,
            Optional<String> failure,
            long clockAheadMillis) {}

    /**
     * A server's certificate.
     *
     * @param server whose
     * @param days whole days left; empty without TLS or where it could not be seen
     * @param told in words
     */
    public record Certificate(String server, Optional<Long> days, String told) {}

    /**
     * Something set aside.
     *
     * @param kind "booking" or "message"
     * @param name the booking; of a message, the hash of its content
     * @param reason why, as a code
     * @param detail why, in words
     * @param ageSeconds for how long
     * @param tries how often it was tried before
     */
    public record Aside(String kind, String name, String reason, String detail, long ageSeconds, int tries) {}

    /**
     * A reason.
     *
     * @param reason as a code
     * @param count of those set aside for it
     */
    public record Why(String reason, long count) {}

    /**
     * A version.
     *
     * @param of what
     * @param version as it calls itself
     */
    public record Version(String of, String version) {}

    /** An age as a person says it, for the page. */
    public static String age(long seconds) {
        return seconds < 120
                ? seconds + " s"
                : seconds < 7_200
                        ? seconds / 60 + " min"
                        : seconds < 172_800 ? seconds / 3_600 + " h" : seconds / 86_400 + " days";
    }
}
