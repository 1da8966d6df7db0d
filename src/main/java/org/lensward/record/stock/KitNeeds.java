package org.lensward.record.stock;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Appointment;
import org.hl7.fhir.r4.model.DeviceRequest;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Type;
import org.lensward.lens.KitRole;
import org.lensward.lens.stock.Alternative;
import org.lensward.lens.stock.LensNeed;
import org.lensward.quantity.Dioptres;
import org.lensward.record.Codes;
import org.lensward.record.Shelf;
import org.lensward.record.StoredPlan;
import org.lensward.record.Systems;

/** What the stored plans of some days need in the building. */
final class KitNeeds {

    private final Shelf shelf;
    private final Sites sites;

    KitNeeds(Shelf shelf) {
        this.shelf = shelf;
        this.sites = new Sites(shelf);
    }

    /** Every lens of every kit from one day to another, both included. */
    List<LensNeed> between(LocalDate from, LocalDate to) {
        return StoredPlan.all(shelf)
                .flatMap(plan -> plan.kit().stream().flatMap(lens -> need(plan, lens).stream()))
                .filter(need -> !need.day().isBefore(from) && !need.day().isAfter(to))
                .toList();
    }

    private Optional<LensNeed> need(StoredPlan plan, DeviceRequest lens) {
        String model = lens.getExtensionByUrl(Systems.extension("lens-model")).getValue() instanceof Reference named
                ? Shelf.name(named)
                : "";
        Optional<KitRole> role = Stream.of(KitRole.values())
                .filter(each -> each.code().equals(StoredPlan.role(lens)))
                .findFirst();
        return role.flatMap(each -> StoredPlan.labelled(lens).flatMap(power -> day(lens)
                .map(day -> new LensNeed(
                        Shelf.name(plan.booking()),
                        each,
                        model,
                        power,
                        parameter(lens, "lens-cylinder"),
                        day,
                        site(plan)))));
    }

    private static Optional<LocalDate> day(DeviceRequest lens) {
        return lens.hasOccurrenceDateTimeType()
                ? Optional.of(LocalDate.parse(
                        lens.getOccurrenceDateTimeType().getValueAsString().substring(0, 10)))
                : Optional.empty();
    }

    private static Optional<Dioptres> parameter(DeviceRequest lens, String code) {
        return lens.getParameter().stream()
                .filter(each -> Codes.has(each.getCode(), Systems.LENS_PARAMETER, code))
                .map(DeviceRequest.DeviceRequestParameterComponent::getValue)
                .flatMap(value -> dioptres(value).stream())
                .findFirst();
    }

    /** The appointment's Location; where it names none, the booking's own. */
    private String site(StoredPlan plan) {
        return shelf.all(Appointment.class)
                .filter(each -> Shelf.refers(each.getBasedOn(), plan.booking()))
                .flatMap(each -> each.getParticipant().stream())
                .map(participant -> Shelf.name(participant.getActor()))
                .filter(name -> name.startsWith("Location/"))
                .findFirst()
                .or(() -> plan.booking().getLocationReference().stream()
                        .map(Shelf::name)
                        .findFirst())
                .map(sites::of)
                .orElse("Location not stated");
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
                .flatMap(each -> dioptres(each.getExtensionByUrl(Systems.extension("labelled-power"))
                                .getValue())
                        .flatMap(power -> dioptres(each.getValue()).map(predicted -> new Alternative(power, predicted)))
                        .stream());
    }

    private static Optional<Dioptres> dioptres(Type value) {
        return value instanceof Quantity quantity
                ? Optional.of(Dioptres.of(quantity.getValue().doubleValue()))
                : Optional.empty();
    }
}
