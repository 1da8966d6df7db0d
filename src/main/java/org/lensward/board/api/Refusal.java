package org.lensward.board.api;

import java.util.List;
import org.lensward.check.Difference;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;
import org.lensward.finding.Outcome;
import org.lensward.record.check.CheckAnswer;
import org.springframework.http.HttpStatus;

/** What was asked is refused, for named reasons. Says whether anything was written. */
public final class Refusal extends RuntimeException {

    /** The type of a check that has stopped. */
    public static final String STOPPED = "lens-check-stopped";

    private static final long serialVersionUID = 1;

    private final transient List<Finding> findings;
    private final HttpStatus status;
    private final String type;

    private final transient List<Difference> differences;

    private Refusal(HttpStatus status, String type, String title, List<Finding> findings) {
        this(status, type, title, findings, List.of());
    }

    private Refusal(
            HttpStatus status, String type, String title, List<Finding> findings, List<Difference> differences) {
        super(title);
        this.differences = List.copyOf(differences);
        this.status = status;
        this.type = type;
        this.findings = List.copyOf(findings);
    }

    /** Nothing was written. */
    static Refusal nothingWritten(List<Finding> findings) {
        return new Refusal(status(findings.get(0).code()), "refused", "Refused; nothing was written", findings);
    }

    /** The lens check has stopped, and the record says so. */
    static Refusal stopped(CheckAnswer.Write stop) {
        return new Refusal(
                HttpStatus.CONFLICT,
                STOPPED,
                "The lens check has stopped: only a surgeon's new choice opens another",
                stop.findings(),
                stop.differences());
    }

    /** What was verified counts no more, and the record says so: another lens check is open, confirmed, at its beginning. */
    static Refusal renewed(List<Finding> findings) {
        return new Refusal(
                HttpStatus.CONFLICT,
                "lens-check-renewed",
                "The operating list changed: a new lens check is open, and it begins again at the pick",
                findings);
    }

    /** The check was written, and then the bank refused to move the carton. */
    static Refusal checkWritten(String state, List<Finding> findings) {
        return new Refusal(
                HttpStatus.CONFLICT,
                "carton-not-moved",
                "The lens check was written (" + state + "), but the bank did not move the carton: mend what is named,"
                        + " then send the same step again; the check will not change, the carton will be moved",
                findings);
    }

    /** The value, or the reasons there is none. */
    static <T> T unless(Outcome<T> outcome) {
        return outcome.value().orElseThrow(() -> nothingWritten(outcome.findings()));
    }

    /** The one table from findings to HTTP. */
    private static HttpStatus status(FindingCode code) {
        return switch (code) {
            case UNIT_NOT_IN_BANK, UNIT_MODEL_UNKNOWN, CHECK_NONE_OPEN -> HttpStatus.NOT_FOUND;
            case UNIT_MOVED_MEANWHILE,
                    UNIT_ALREADY_IN_BANK,
                    UNIT_NOT_AVAILABLE,
                    UNIT_HELD_FOR_ANOTHER,
                    UNIT_STEP_MISSING,
                    UNIT_EXPIRED,
                    UNIT_GONE,
                    IMPLANT_WITHOUT_PLAN,
                    IMPLANT_NOT_AS_PLANNED,
                    CHECK_NOT_CONFIRMED,
                    CHECK_OUT_OF_ORDER,
                    CHECK_STOPPED,
                    CHECK_CLOSED,
                    CHECK_NOT_STOPPED,
                    CHECK_PLAN_CHANGED,
                    CHECK_LIST_CHANGED -> HttpStatus.CONFLICT;
            default -> HttpStatus.UNPROCESSABLE_ENTITY;
        };
    }

    public HttpStatus status() {
        return status;
    }

    /** The last part of the problem's type. */
    public String type() {
        return type;
    }

    public List<Finding> findings() {
        return findings;
    }

    /** What differed, each with both values; none but for a check that has stopped. */
    public List<Difference> differences() {
        return differences;
    }
}
