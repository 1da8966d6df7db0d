package org.lensward.board.cds;

import java.util.List;
import java.util.stream.Stream;

/** Every operation a patient waits for, with the state of its plan. */
final class PatientView implements HookService {

    private final HookData data;
    private final PlanCards cards;

    PatientView(HookData data, PlanCards cards) {
        this.data = data;
        this.cards = cards;
    }

    @Override
    public ServiceDescription description() {
        return new ServiceDescription(
                "patient-view",
                "Lens plans of the patient",
                "Shows each booked cataract operation with the state of its lens plan: ready, provisional under named"
                        + " conditions, or withheld with reasons and remedies; and any lens that is short.",
                "patient-view",
                PatientPlans.TEMPLATES);
    }

    @Override
    public List<Card> cards(HookCall call) {
        return PatientPlans.of(data.gather(call, PatientPlans.TEMPLATES), call.patientId()).stream()
                .flatMap(stored -> Stream.concat(
                        Stream.of(cards.state(call, stored, Indicator.CRITICAL, Indicator.WARNING)),
                        cards.shortage(call, stored).stream()))
                .toList();
    }
}
