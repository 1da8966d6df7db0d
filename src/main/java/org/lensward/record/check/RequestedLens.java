package org.lensward.record.check;

import java.util.Optional;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.DeviceRequest;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Type;
import org.lensward.check.BackUp;
import org.lensward.check.CheckedLens;
import org.lensward.lens.KitRole;
import org.lensward.quantity.Dioptres;
import org.lensward.record.Codes;
import org.lensward.record.Shelf;
import org.lensward.record.Systems;

/** A lens of the kit as its request names it. */
final class RequestedLens {

    private static final String LENS_MODEL = Systems.extension("lens-model");

    private RequestedLens() {}

    /** The lens that stands by under that request; empty if the request is not there or lacks role, model or power. */
    static Optional<BackUp> backUp(Shelf shelf, Reference named) {
        return shelf.find(DeviceRequest.class, named)
                .flatMap(request -> role(request).flatMap(role -> lens(request).map(lens -> new BackUp(role, lens))));
    }

    private static Optional<KitRole> role(DeviceRequest request) {
        return parameter(request, "kit-role")
                .filter(CodeableConcept.class::isInstance)
                .flatMap(each -> Codes.in((CodeableConcept) each, Systems.KIT_ROLE))
                .flatMap(code -> Stream.of(KitRole.values())
                        .filter(role -> role.code().equals(code))
                        .findFirst());
    }

    private static Optional<CheckedLens> lens(DeviceRequest request) {
        Optional<String> model = Optional.ofNullable(request.getExtensionByUrl(LENS_MODEL))
                .map(each -> each.getValue())
                .filter(Reference.class::isInstance)
                .map(each -> Shelf.name((Reference) each));
        return model.flatMap(name -> dioptres(request, "lens-power")
                .map(power -> new CheckedLens(name, power, dioptres(request, "lens-cylinder"))));
    }

    private static Optional<Dioptres> dioptres(DeviceRequest request, String code) {
        return parameter(request, code)
                .filter(Quantity.class::isInstance)
                .map(Quantity.class::cast)
                .filter(each -> each.hasValue() && "[diop]".equals(each.getCode()))
                .map(each -> Dioptres.of(each.getValue().doubleValue()));
    }

    private static Optional<Type> parameter(DeviceRequest request, String code) {
        return request.getParameter().stream()
                .filter(each -> Codes.has(each.getCode(), Systems.LENS_PARAMETER, code))
                .map(each -> each.getValue())
                .findFirst();
    }
}
