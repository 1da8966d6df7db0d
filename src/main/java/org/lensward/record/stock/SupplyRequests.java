package org.lensward.record.stock;

import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Bundle.BundleEntryRequestComponent;
import org.hl7.fhir.r4.model.Bundle.BundleType;
import org.hl7.fhir.r4.model.Bundle.HTTPVerb;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.DateType;
import org.hl7.fhir.r4.model.DeviceDefinition;
import org.hl7.fhir.r4.model.Extension;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.SupplyRequest;
import org.hl7.fhir.r4.model.SupplyRequest.RequestPriority;
import org.hl7.fhir.r4.model.SupplyRequest.SupplyRequestStatus;
import org.lensward.lens.stock.LensKind;
import org.lensward.lens.stock.Order;
import org.lensward.quantity.Dioptres;
import org.lensward.record.Codes;
import org.lensward.record.Evidences;
import org.lensward.record.Quantities;
import org.lensward.record.Shelf;
import org.lensward.record.Systems;

/** What is to be ordered, as SupplyRequests with lasting ids: ordering twice orders once. */
public final class SupplyRequests {

    private static final String MODEL = Systems.extension("lens-model");
    private static final String ORDER_BY = Systems.extension("order-by");
    private static final String FOR_BOOKING = Systems.extension("for-booking");
    private static final String POWER = "lens-power";
    private static final String CYLINDER = "lens-cylinder";

    private SupplyRequests() {}

    /**
     * One transaction for all of them, each guarded by the version that was read; what the record says so already is not in it.
     *
     * @param shelf the lens models and the requests that stand
     */
    public static Bundle transaction(List<Order> orders, Shelf shelf) {
        Bundle bundle = new Bundle().setType(BundleType.TRANSACTION);
        for (Order order : orders) {
            SupplyRequest request = request(order, shelf);
            Optional<SupplyRequest> standing = shelf.find(SupplyRequest.class, new Reference(Shelf.name(request)));
            if (standing.filter(old -> saysTheSame(old, request)).isEmpty()) {
                BundleEntryRequestComponent put = bundle.addEntry()
                        .setResource(request)
                        .getRequest()
                        .setMethod(HTTPVerb.PUT)
                        .setUrl(Shelf.name(request));
                standing.map(old -> old.getMeta().getVersionId())
                        .ifPresent(version -> put.setIfMatch("W/\"" + version + "\""));
            }
        }
        return bundle;
    }

    private static boolean saysTheSame(SupplyRequest standing, SupplyRequest wanted) {
        SupplyRequest old = standing.copy();
        old.setId(wanted.getIdElement());
        old.setMeta(wanted.getMeta());
        return old.equalsDeep(wanted);
    }

    private static SupplyRequest request(Order order, Shelf shelf) {
        SupplyRequest request = new SupplyRequest();
        request.setId("supply-" + Evidences.digest(order.kind() + "|" + order.location() + "|" + order.neededBy()));
        request.getMeta().addProfile(Systems.profile("lens-supply"));
        request.addExtension(MODEL, new Reference(order.kind().model()));
        request.addExtension(ORDER_BY, new DateType(order.orderBy().toString()));
        order.bookings().forEach(booking -> request.addExtension(FOR_BOOKING, new Reference(booking)));
        request.setStatus(SupplyRequestStatus.ACTIVE);
        request.setPriority(order.late() ? RequestPriority.URGENT : RequestPriority.ROUTINE);
        request.setItem(new CodeableConcept().setText(name(order.kind(), shelf)));
        request.setQuantity(new Quantity(order.count()));
        parameter(request, POWER, "Lens power", order.kind().power());
        order.kind().cylinder().ifPresent(cylinder -> parameter(request, CYLINDER, "Lens cylinder", cylinder));
        request.setOccurrence(new DateTimeType(order.neededBy().toString()));
        if (order.location().startsWith("Location/")) {
            request.setDeliverTo(new Reference(order.location()));
        }
        return request;
    }

    private static void parameter(SupplyRequest request, String code, String words, Dioptres value) {
        request.addParameter()
                .setCode(Codes.concept(Systems.LENS_PARAMETER, code, words))
                .setValue(Quantities.dioptres(value));
    }

    /** The model as the hospital calls it. */
    public static String name(LensKind kind, Shelf shelf) {
        return shelf.find(DeviceDefinition.class, new Reference(kind.model()))
                .filter(DeviceDefinition::hasDeviceName)
                .map(model -> model.getDeviceNameFirstRep().getName())
                .orElse(kind.model());
    }

    /** What a stored request asks for, where it is one of ours. */
    static Optional<LensKind> kind(SupplyRequest request) {
        return request.getExtensionsByUrl(MODEL).stream()
                .map(Extension::getValue)
                .filter(Reference.class::isInstance)
                .map(model -> Shelf.name((Reference) model))
                .findFirst()
                .flatMap(model ->
                        value(request, POWER).map(power -> new LensKind(model, power, value(request, CYLINDER))));
    }

    private static Optional<Dioptres> value(SupplyRequest request, String code) {
        return request.getParameter().stream()
                .filter(each -> Codes.has(each.getCode(), Systems.LENS_PARAMETER, code))
                .filter(each -> each.getValue() instanceof Quantity given && given.hasValue())
                .map(each -> Dioptres.of(each.getValueQuantity().getValue().doubleValue()))
                .findFirst();
    }
}
