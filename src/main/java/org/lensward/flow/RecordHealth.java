package org.lensward.flow;

import ca.uhn.fhir.interceptor.api.Hook;
import ca.uhn.fhir.interceptor.api.Interceptor;
import ca.uhn.fhir.interceptor.api.Pointcut;
import ca.uhn.fhir.rest.client.api.IHttpResponse;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.Optional;

/**
 * How the record does: when it last answered and how quickly, since when it fails, how its clock differs, and whether it asked to be
 * left alone for a while ({@code Retry-After}, RFC 9110 section 10.2.3: seconds or a date).
 */
@Interceptor
public final class RecordHealth {

    /** However long a record asks to be left alone, it is asked again after this. */
    static final Duration LONGEST_WAIT = Duration.ofMinutes(5);

    private final Clock clock;
    private State state =
            new State(Optional.empty(), Duration.ZERO, Optional.empty(), Optional.empty(), Duration.ZERO, Instant.MIN);

    public RecordHealth(Clock clock) {
        this.clock = clock;
    }

    /**
     * How it is now.
     *
     * @param answered when it last did what was asked
     * @param latency how long that took
     * @param failingSince when its failures began; empty while it is well
     * @param failure the last failure's code, such as {@code record-answered-503}
     * @param ahead by how much its clock runs before ours; negative if behind
     * @param leaveAloneUntil until when it asked not to be asked
     */
    public record State(
            Optional<Instant> answered,
            Duration latency,
            Optional<Instant> failingSince,
            Optional<String> failure,
            Duration ahead,
            Instant leaveAloneUntil) {

        /** Whether it does what it is asked. */
        public boolean isWell() {
            return failingSince.isEmpty();
        }
    }

    /** How it is now. */
    public synchronized State now() {
        return state;
    }

    /** What remains of the time for which it wants to be left alone; zero if it may be asked. */
    public synchronized Duration toWait() {
        Instant now = clock.instant();
        return now.isBefore(state.leaveAloneUntil()) ? Duration.between(now, state.leaveAloneUntil()) : Duration.ZERO;
    }

    /** Called by HAPI for every answer. */
    @Hook(Pointcut.CLIENT_RESPONSE)
    public void answered(IHttpResponse answer) {
        int status = answer.getStatus();
        Instant now = clock.instant();
        Duration ahead = header(answer, "Date")
                .flatMap(RecordHealth::date)
                .map(date -> Duration.between(now, date))
                .orElse(Duration.ZERO);
        if (status == 429 || status == 503) {
            header(answer, "Retry-After")
                    .flatMap(text -> wait(text, now.plus(ahead)))
                    .ifPresent(this::leaveAlone);
        }
        if (status >= 500 || status == 429 || status == 401 || status == 403 || status / 100 == 3) {
            failed(Reason.answered(status));
        } else {
            well(Duration.ofMillis(answer.getRequestStopWatch().getMillis()), ahead);
        }
    }

    private synchronized void well(Duration latency, Duration ahead) {
        state = new State(
                Optional.of(clock.instant()),
                latency,
                Optional.empty(),
                Optional.empty(),
                ahead,
                state.leaveAloneUntil());
    }

    /** It failed, or could not be reached. */
    synchronized void failed(String reason) {
        state = new State(
                state.answered(),
                state.latency(),
                state.failingSince().or(() -> Optional.of(clock.instant())),
                Optional.of(reason),
                state.ahead(),
                state.leaveAloneUntil());
    }

    private synchronized void leaveAlone(Duration wait) {
        Duration capped = wait.compareTo(LONGEST_WAIT) > 0 ? LONGEST_WAIT : wait;
        state = new State(
                state.answered(),
                state.latency(),
                state.failingSince(),
                state.failure(),
                state.ahead(),
                latest(state.leaveAloneUntil(), clock.instant().plus(capped)));
    }

    private static Optional<Duration> wait(String text, Instant serversNow) {
        return text.matches("\\d{1,9}")
                ? Optional.of(Duration.ofSeconds(Long.parseLong(text)))
                : date(text).map(until -> Duration.between(serversNow, until)).filter(left -> !left.isNegative());
    }

    private static Optional<Instant> date(String text) {
        try {
            return Optional.of(Instant.from(DateTimeFormatter.RFC_1123_DATE_TIME.parse(text)));
        } catch (DateTimeException noDate) {
            return Optional.empty(); // a header that cannot be read is as good as none
        }
    }

    private static Optional<String> header(IHttpResponse answer, String name) {
        return answer.getHeaders(name).stream().findFirst().map(String::trim);
    }

    private static Instant latest(Instant one, Instant other) {
        return one.isAfter(other) ? one : other;
    }
}
