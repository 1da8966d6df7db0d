package org.lensward.faults;

import java.util.function.BinaryOperator;
import java.util.function.UnaryOperator;

/**
 * One way in which the record misbehaves towards one booking.
 *
 * @param name of the row, and of the booking
 * @param at whether it misbehaves when it is asked or when it is told
 * @param times how often, before it behaves; {@link #ALWAYS} without end
 * @param how what it does
 * @param fate {@code planned}, or the reason for which the booking is parked
 */
record Fault(String name, At at, int times, How how, String fate) {

    static final int ALWAYS = 1_000;

    static final String OUTCOME =
            "{\"resourceType\":\"OperationOutcome\",\"issue\":[{\"severity\":\"error\",\"code\":\"processing\"}]}";

    /** A header that is a date then. */
    static final String IN_TWO_SECONDS = "in two seconds";

    enum At {
        GATHER,
        PUBLISH
    }

    /** What it does. */
    sealed interface How {}

    /**
     * It answers of itself.
     *
     * @param status HTTP
     * @param headers name, value, name, value
     */
    record Says(int status, String... headers) implements How {}

    /** It answers something with status 200 in place of the Bundle. */
    record Babbles(String type, String body) implements How {}

    /** The connection breaks. */
    record Breaks(com.github.tomakehurst.wiremock.http.Fault fault) implements How {}

    /** It is slower than we wait. */
    record Sleeps(int millis) implements How {}

    /** It does what it is asked, but its answer is bent on the way; the second argument is its address. */
    record Bends(BinaryOperator<String> answer) implements How {}

    /** It does what it is told, but its answer does not arrive. */
    record Swallows() implements How {}

    /** It is told something else than was said. */
    record Mishears(UnaryOperator<String> request) implements How {}

    @Override
    public String toString() {
        return name + ": " + fate;
    }
}
