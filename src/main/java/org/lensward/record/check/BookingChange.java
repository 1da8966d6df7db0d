package org.lensward.record.check;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Observation.ObservationStatus;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.lensward.quantity.Dioptres;
import org.lensward.record.Codes;
import org.lensward.record.Quantities;
import org.lensward.record.Shelf;
import org.lensward.record.Systems;

/** Another target or another lens, written where the booking states it, so that the plan is made again from it. */
final class BookingChange {

    private static final String TARGET = Systems.extension("target-refraction");

    private static final Set<ObservationStatus> STANDS =
            Set.of(ObservationStatus.FINAL, ObservationStatus.AMENDED, ObservationStatus.CORRECTED);

    private final Shelf shelf;
    private final ServiceRequest booking;

    BookingChange(Shelf shelf, ServiceRequest booking) {
        this.shelf = shelf;
        this.booking = booking;
    }

    /** What is to be put: the booking, and the Observations that state its target. */
    List<Resource> of(LensChange change) {
        List<Resource> changed = new ArrayList<>();
        ServiceRequest request = booking.copy();
        request.setId(booking.getIdElement().toUnqualifiedVersionless());
        change.model().ifPresent(model -> {
            request.getSupportingInfo().removeIf(each -> Shelf.name(each).startsWith("DeviceDefinition/"));
            request.addSupportingInfo(new Reference(model));
        });
        change.target().ifPresent(target -> {
            List<Observation> amended = amended(target);
            changed.addAll(amended);
            if (amended.isEmpty() || request.hasExtension(TARGET)) {
                request.getExtension().removeIf(each -> TARGET.equals(each.getUrl()));
                request.addExtension(TARGET, Quantities.dioptres(target));
            }
        });
        changed.add(0, request);
        return changed;
    }

    /** Two places that state two targets would withhold the plan. */
    private List<Observation> amended(Dioptres target) {
        return shelf.all(Observation.class)
                .filter(each -> Codes.has(each.getCode(), Systems.MEASUREMENT, "target-refraction"))
                .filter(each -> Shelf.refers(each.getBasedOn(), booking))
                .filter(each -> STANDS.contains(each.getStatus()))
                .map(each -> {
                    Observation copy = each.copy();
                    copy.setId(each.getIdElement().toUnqualifiedVersionless());
                    copy.setStatus(ObservationStatus.AMENDED);
                    copy.setValue(Quantities.dioptres(target));
                    return copy;
                })
                .toList();
    }
}
