package org.lensward.board.cds;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.hl7.fhir.r4.model.Appointment;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Reference;
import org.lensward.record.Shelf;
import org.lensward.record.StoredPlan;

/** What stands in the way of an operation on the day it is being given. Silent where nothing does. */
final class AppointmentBook implements HookService {

    private final HookData data;
    private final PlanCards cards;

    AppointmentBook(HookData data, PlanCards cards) {
        this.data = data;
        this.cards = cards;
    }

    @Override
    public ServiceDescription description() {
        return new ServiceDescription(
                "appointment-book",
                "Lens plan and lens stock for the day",
                "Warns when the operation being given a day has its lens plan withheld, or a lens that is short, and says"
                        + " so when the plan was made for another day.",
                "appointment-book",
                PatientPlans.TEMPLATES);
    }

    @Override
    public List<Card> cards(HookCall call) {
        Map<String, String> days = days(call);
        List<Card> shown = new ArrayList<>();
        if (!days.isEmpty()) {
            for (StoredPlan stored : PatientPlans.of(data.gather(call, PatientPlans.TEMPLATES), call.patientId())) {
                Optional.ofNullable(days.get(Shelf.name(stored.booking())))
                        .ifPresent(day -> shown.addAll(about(call, stored, day)));
            }
        }
        return shown;
    }

    private List<Card> about(HookCall call, StoredPlan stored, String day) {
        List<Card> shown = new ArrayList<>();
        String state = PlanCards.stateOf(stored);
        if (!state.equals("ready")) {
            shown.add(cards.state(call, stored, Indicator.WARNING, Indicator.INFO));
        }
        if (!state.isEmpty() && !day.equals(BookedDay.of(stored.booking()))) {
            shown.add(cards.note(
                    call,
                    stored,
                    "the plan is for that day; on " + day + " the biometry may be too old. It is made anew."));
        }
        cards.shortage(call, stored).ifPresent(shown::add);
        return shown;
    }

    /** The booking of each appointment, and its day. */
    private Map<String, String> days(HookCall call) {
        JsonNode sent = call.carried("appointments");
        Map<String, String> days = new TreeMap<>();
        for (Bundle.BundleEntryComponent entry : data.read(Bundle.class, sent).getEntry()) {
            if (entry.getResource() instanceof Appointment appointment) {
                for (Reference booking : appointment.getBasedOn()) {
                    days.put(Shelf.name(booking), BookedDay.of(appointment.getStartElement()));
                }
            }
        }
        return days;
    }
}
