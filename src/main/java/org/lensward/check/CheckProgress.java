package org.lensward.check;

import static org.lensward.check.CheckState.AWAITING_CONFIRMATION;
import static org.lensward.check.CheckState.COMPLETED;
import static org.lensward.check.CheckState.CONFIRMED;
import static org.lensward.check.CheckState.FAILED;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;

/**
 * How far a lens check has come: confirmed, then one checkpoint after the other; failed is the end.
 *
 * @param state where it stands
 * @param verified the checkpoints passed, in order
 */
public record CheckProgress(CheckState state, List<Verified> verified) {

    public CheckProgress {
        verified = List.copyOf(verified);
    }

    /** A check of a plan that nobody has confirmed. */
    public static CheckProgress opened() {
        return new CheckProgress(AWAITING_CONFIRMATION, List.of());
    }

    /** The surgeon's confirmation, before which nothing is picked. */
    public Step confirm(Expected expected, Standing now) {
        if (state == CONFIRMED) {
            return new Step.Repeated();
        }
        if (state != AWAITING_CONFIRMATION) {
            return refused(closed(), expected, state);
        }
        if (!expected.patient().isComplete()) {
            return new Step.Refused(List.of(PatientComparison.INCOMPLETE.finding(expected.evidence())));
        }
        return planChanged(expected, now)
                .<Step>map(Step.Voided::new)
                .orElseGet(() -> new Step.Advanced(new CheckProgress(CONFIRMED, List.of()), List.of()));
    }

    /** One attempt at a checkpoint, in the world as it stands now. */
    public Step present(Attempt attempt, Expected expected, Standing now, CheckPolicy policy) {
        if (state == AWAITING_CONFIRMATION) {
            return refused(FindingCode.CHECK_NOT_CONFIRMED, expected);
        }
        boolean again = verified.stream().anyMatch(each -> each.at() == attempt.at());
        if (state.next().isEmpty() && !(again && state == COMPLETED)) {
            return refused(closed(), expected, state);
        }
        if (!again && state.next().filter(attempt.at()::equals).isEmpty()) {
            return refused(
                    FindingCode.CHECK_OUT_OF_ORDER, expected, attempt.at().code(), state);
        }
        Optional<String> fault = attempt.presented().carton().label().fault();
        if (fault.isPresent()) {
            return refused(FindingCode.CHECK_SCAN_UNREADABLE, expected, fault.get());
        }
        Optional<Finding> shifted = state == COMPLETED
                ? Optional.empty()
                : planChanged(expected, now).or(() -> listChanged(expected, now));
        return shifted.<Step>map(Step.Voided::new).orElseGet(() -> compared(attempt, expected, now, policy));
    }

    private Step compared(Attempt attempt, Expected expected, Standing now, CheckPolicy policy) {
        List<Difference> differences = Stream.concat(
                        LensCheck.compare(attempt.at(), expected, attempt.presented(), policy).all().stream(),
                        otherCarton(attempt.presented()))
                .toList();
        boolean answeredFor = attempt.exemption() instanceof Exemption.Signed && policy.allows(differences);
        if (!differences.isEmpty() && !answeredFor) {
            return stopped(differences, expected);
        }
        boolean again = verified.stream().anyMatch(each -> each.at() == attempt.at());
        return again ? new Step.Repeated() : new Step.Advanced(after(attempt, now), differences);
    }

    /** A lens that is in the eye is not un-checked; that something differs is said all the same. */
    private Step stopped(List<Difference> differences, Expected expected) {
        if (state == COMPLETED) {
            return new Step.Refused(differences.stream()
                    .map(each -> each.finding(expected.evidence()))
                    .toList());
        }
        return new Step.Stopped(new CheckProgress(FAILED, verified), differences);
    }

    private CheckProgress after(Attempt attempt, Standing now) {
        Verified passed =
                new Verified(attempt.at(), attempt.presented().carton().label().toString(), now.place());
        return new CheckProgress(
                attempt.at().reached(),
                Stream.concat(verified.stream(), Stream.of(passed)).toList());
    }

    private Stream<Difference> otherCarton(Presented presented) {
        String now = presented.carton().label().toString();
        return verified.stream()
                .map(Verified::carton)
                .filter(each -> !each.equals(now))
                .map(each -> new Difference(FindingCode.CHECK_CARTON_DIFFERS, "carton picked", each, now))
                .limit(1);
    }

    private static Optional<Finding> planChanged(Expected expected, Standing now) {
        return now.fingerprint().equals(expected.fingerprint())
                ? Optional.empty()
                : Optional.of(Finding.of(FindingCode.CHECK_PLAN_CHANGED, expected.evidence()));
    }

    private Optional<Finding> listChanged(Expected expected, Standing now) {
        return verified.stream()
                .map(Verified::place)
                .filter(each -> !each.equals(now.place()))
                .map(each -> Finding.of(
                        FindingCode.CHECK_LIST_CHANGED, expected.evidence(), listed(each), listed(now.place())))
                .findFirst();
    }

    private static String listed(String place) {
        return place.isEmpty() ? "not listed" : place;
    }

    private FindingCode closed() {
        return state == FAILED || state == CheckState.REFUSED ? FindingCode.CHECK_STOPPED : FindingCode.CHECK_CLOSED;
    }

    private static Step refused(FindingCode code, Expected expected, Object... particulars) {
        return new Step.Refused(List.of(Finding.of(code, expected.evidence(), particulars)));
    }
}
