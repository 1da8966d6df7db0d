package org.lensward.record.stock;

import java.time.LocalDate;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Appointment;
import org.hl7.fhir.r4.model.Appointment.AppointmentStatus;
import org.hl7.fhir.r4.model.DeviceRequest;
import org.hl7.fhir.r4.model.Extension;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.ServiceRequest.ServiceRequestStatus;
import org.hl7.fhir.r4.model.Type;
import org.jspecify.annotations.Nullable;
import org.lensward.lens.KitRole;
import org.lensward.lens.stock.Alternative;
import org.lensward.lens.stock.LensNeed;
import org.lensward.quantity.Dioptres;
import org.lensward.record.Codes;
import org.lensward.record.Dates;
import org.lensward.record.Shelf;
import org.lensward.record.StoredPlan;
import org.lensward.record.Systems;

/** What the stored plans of some days need in the building. */
final class KitNeeds {

    /** What a booking without a Location has for a site: no carton lies there and none can be sent there. */
    static final String NO_SITE = "a place that is not stated";

    private static final Set<AppointmentStatus> CALLED_OFF =
            EnumSet.of(AppointmentStatus.CANCELLED, AppointmentStatus.NOSHOW, AppointmentStatus.ENTEREDINERROR);

    private final Shelf shelf;
    private final Sites sites;

    KitNeeds(Shelf shelf) {
        this.shelf = shelf;
        this.sites = new Sites(shelf);
    }

    /** Every lens of every kit from one day to another, both included. */
    List<LensNeed> between(LocalDate from, LocalDate to) {
        return StoredPlan.all(shelf)
                .filter(plan -> plan.booking().getStatus() == ServiceRequestStatus.ACTIVE)
                .flatMap(plan -> plan.kit().stream().flatMap(lens -> need(plan, lens).stream()))
                .filter(need -> !need.day().isBefore(from) && !need.day().isAfter(to))
                .toList();
    }

    private Optional<LensNeed> need(StoredPlan plan, DeviceRequest lens) {
        Optional<KitRole> role = Stream.of(KitRole.values())
                .filter(each -> each.code().equals(StoredPlan.role(lens)))
                .findFirst();
        return role.flatMap(each -> model(lens)
                .flatMap(model -> parameter(lens, "lens-power").flatMap(power -> Dates.day(lens.getOccurrence())
                        .map(day -> new LensNeed(
                                Shelf.name(plan.booking()),
                                each,
                                model,
                                power,
                                parameter(lens, "lens-cylinder"),
                                day,
                                site(plan))))));
    }

    private static Optional<String> model(DeviceRequest lens) {
        return lens.getExtensionsByUrl(Systems.extension("lens-model")).stream()
                .map(Extension::getValue)
                .filter(Reference.class::isInstance)
                .map(named -> Shelf.name((Reference) named))
                .findFirst();
    }

    private static Optional<Dioptres> parameter(DeviceRequest lens, String code) {
        return lens.getParameter().stream()
                .filter(each -> Codes.has(each.getCode(), Systems.LENS_PARAMETER, code))
                .map(DeviceRequest.DeviceRequestParameterComponent::getValue)
                .flatMap(value -> dioptres(value).stream())
                .findFirst();
    }

    /** The Location of the appointment that stands; where it names none, the booking's own; where nothing does, none is guessed. */
    private String site(StoredPlan plan) {
        return shelf.all(Appointment.class)
                .filter(each -> Shelf.refers(each.getBasedOn(), plan.booking()))
                .filter(each -> !CALLED_OFF.contains(each.getStatus()))
                .flatMap(each -> each.getParticipant().stream())
                .map(participant -> Shelf.name(participant.getActor()))
                .filter(name -> name.startsWith("Location/"))
                .findFirst()
                .or(() -> plan.booking().getLocationReference().stream()
                        .map(Shelf::name)
                        .findFirst())
                .map(sites::of)
                .orElse(NO_SITE);
    }

    /** Other powers of the primary lens's model, as the plan predicts them. */
    List<Alternative> alternatives(LensNeed need) {
        if (need.role() != KitRole.PRIMARY && need.role() != KitRole.SPARE) {
            return List.of();
        }
        return StoredPlan.all(shelf)
                .filter(plan -> Shelf.name(plan.booking()).equals(need.booking()))
                .flatMap(plan -> plan.chosen().stream())
                .flatMap(KitNeeds::rows)
                .toList();
    }

    private static Stream<Alternative> rows(Observation chosen) {
        return chosen.getComponent().stream()
                .filter(each -> Codes.has(each.getCode(), Systems.MEASUREMENT, "refraction-with-power"))
                .flatMap(each -> each.getExtensionsByUrl(Systems.extension("labelled-power")).stream()
                        .flatMap(power -> dioptres(power.getValue()).stream())
                        .flatMap(
                                power -> dioptres(each.getValue()).map(left -> new Alternative(power, left)).stream()));
    }

    private static Optional<Dioptres> dioptres(@Nullable Type value) {
        return value instanceof Quantity quantity && quantity.hasValue()
                ? Optional.of(Dioptres.of(quantity.getValue().doubleValue()))
                : Optional.empty();
    }
}
