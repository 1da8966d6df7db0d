package org.lensward.board.cds;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.hl7.fhir.r4.model.DetectedIssue;
import org.hl7.fhir.r4.model.DetectedIssue.DetectedIssueSeverity;
import org.hl7.fhir.r4.model.DeviceRequest;
import org.lensward.record.Shelf;
import org.lensward.record.StoredPlan;

/** A booking's plan, as the record holds it, on a card; its lens shortage on another. */
final class PlanCards {

    private final Shortages shortages;
    private final GivenCards given;

    PlanCards(Shortages shortages, GivenCards given) {
        this.shortages = shortages;
        this.given = given;
    }

    /**
     * The state of the plan.
     *
     * @param withheld how urgent a withheld plan is here
     * @param provisional how urgent a provisional one is here
     */
    Card state(HookCall call, StoredPlan stored, Indicator withheld, Indicator provisional) {
        String where = where(stored);
        return switch (stateOf(stored)) {
            case "withheld" -> {
                List<Reason> reasons = reasons(stored, DetectedIssueSeverity.HIGH);
                yield card(
                        call, stored, withheld, where + "no lens is proposed" + first(reasons), Reason.list(reasons));
            }
            case "provisional" -> {
                List<Reason> reasons = reasons(stored, DetectedIssueSeverity.MODERATE);
                yield card(
                        call, stored, provisional, where + "plan provisional" + first(reasons), Reason.list(reasons));
            }
            case "ready" -> card(call, stored, Indicator.INFO, where + "plan ready" + lens(stored) + ".", "");
            default -> card(call, stored, Indicator.INFO, where + "booked, not planned yet.", "");
        };
    }

    /** A card where the lens bank cannot give all of the kit, or cannot be asked. */
    Optional<Card> shortage(HookCall call, StoredPlan stored) {
        Optional<List<Reason>> lacking = shortages.of(Shelf.name(stored.booking()));
        if (lacking.isEmpty()) {
            return Optional.of(shortage(
                    call,
                    stored,
                    Indicator.INFO,
                    "whether its lenses are in the building is not known: the lens bank did not answer.",
                    ""));
        }
        return lacking.filter(reasons -> !reasons.isEmpty())
                .map(reasons -> shortage(
                        call,
                        stored,
                        Indicator.WARNING,
                        "a lens of the kit is not in the lens bank.",
                        Reason.list(reasons)));
    }

    private Card shortage(HookCall call, StoredPlan stored, Indicator indicator, String words, String detail) {
        return remembered(stored, Card.of(about(call, stored) + " shortage", indicator, where(stored) + words, detail));
    }

    /** A further word about a booking. */
    Card note(HookCall call, StoredPlan stored, String words) {
        return remembered(stored, Card.of(about(call, stored) + " note", Indicator.INFO, where(stored) + words, ""));
    }

    /** ready, provisional or withheld; nothing of these where there is no plan. */
    static String stateOf(StoredPlan stored) {
        return stored.plan().map(StoredPlan::state).orElse("");
    }

    private Card card(HookCall call, StoredPlan stored, Indicator indicator, String summary, String detail) {
        return remembered(stored, Card.of(about(call, stored), indicator, summary, detail));
    }

    private Card remembered(StoredPlan stored, Card card) {
        given.remember(card.uuid(), Shelf.name(stored.booking()));
        return card;
    }

    private static String about(HookCall call, StoredPlan stored) {
        return call + " " + Shelf.name(stored.booking());
    }

    private static String where(StoredPlan stored) {
        String eye = stored.plan().isPresent() ? stored.eye() : "eye operation";
        return eye.substring(0, 1).toUpperCase(Locale.ROOT) + eye.substring(1) + ", " + BookedDay.of(stored.booking())
                + ", ";
    }

    private static String lens(StoredPlan stored) {
        return stored.primary().map(PlanCards::words).orElse("");
    }

    private static String words(DeviceRequest lens) {
        return ", " + lens.getCodeCodeableConcept().getText() + " " + StoredPlan.power(lens);
    }

    private static List<Reason> reasons(StoredPlan stored, DetectedIssueSeverity severity) {
        List<Reason> reasons = new ArrayList<>();
        for (DetectedIssue issue : stored.issues()) {
            if (issue.getSeverity() == severity) {
                reasons.add(Reason.of(issue));
            }
        }
        return reasons;
    }

    private static String first(List<Reason> reasons) {
        return reasons.stream().findFirst().map(each -> ": " + each.message()).orElse(".");
    }
}
