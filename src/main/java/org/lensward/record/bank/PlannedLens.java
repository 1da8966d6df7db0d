package org.lensward.record.bank;

import java.util.Optional;
import org.hl7.fhir.r4.model.DeviceRequest;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Reference;
import org.lensward.lens.stock.LensUnit;
import org.lensward.quantity.Dioptres;
import org.lensward.record.Codes;
import org.lensward.record.Shelf;
import org.lensward.record.Systems;

/**
 * A lens by what makes it the right or the wrong one.
 *
 * @param model such as {@code DeviceDefinition/lens-1}
 * @param power as labelled; empty where a request does not say it
 * @param cylinder as labelled, for a toric lens
 */
record PlannedLens(String model, Optional<Dioptres> power, Optional<Dioptres> cylinder) {

    private static final String LENS_MODEL = Systems.extension("lens-model");

    static PlannedLens of(LensUnit unit) {
        return new PlannedLens(unit.model(), Optional.of(unit.power()), unit.cylinder());
    }

    static PlannedLens of(DeviceRequest request) {
        String model = Optional.ofNullable(request.getExtensionByUrl(LENS_MODEL))
                .filter(extension -> extension.getValue() instanceof Reference)
                .map(extension -> Shelf.name((Reference) extension.getValue()))
                .orElse("");
        return new PlannedLens(model, parameter(request, UnitDevice.POWER), parameter(request, UnitDevice.CYLINDER));
    }

    private static Optional<Dioptres> parameter(DeviceRequest request, String code) {
        return request.getParameter().stream()
                .filter(parameter -> Codes.has(parameter.getCode(), Systems.LENS_PARAMETER, code))
                .filter(parameter -> parameter.getValue() instanceof Quantity quantity && quantity.hasValue())
                .map(parameter ->
                        Dioptres.of(parameter.getValueQuantity().getValue().doubleValue()))
                .findFirst();
    }

    /** For a message: {@code DeviceDefinition/lens-1 +21.50 D}. */
    String words() {
        return model
                + power.map(value -> " " + value.signed()).orElse(" of no stated power")
                + cylinder.map(value -> " cylinder " + value.rounded()).orElse("");
    }
}
