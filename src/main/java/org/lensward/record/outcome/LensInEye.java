package org.lensward.record.outcome;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Device;
import org.hl7.fhir.r4.model.DeviceRequest;
import org.hl7.fhir.r4.model.DeviceRequest.DeviceRequestStatus;
import org.hl7.fhir.r4.model.DeviceUseStatement;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Type;
import org.lensward.finding.Evidence;
import org.lensward.lens.KitRole;
import org.lensward.lens.LensSite;
import org.lensward.outcome.ImplantedLens;
import org.lensward.quantity.Dioptres;
import org.lensward.record.Codes;
import org.lensward.record.Shelf;
import org.lensward.record.StoredPlan;
import org.lensward.record.Systems;
import org.lensward.record.UnitKind;
import org.lensward.record.Unused;

/** Reads which lens an operation left in the eye: the carton that was used, never the one that was planned. */
final class LensInEye {

    static final String PLACEMENT = Systems.extension("lens-placement");
    private static final String MODEL = Systems.extension("lens-model");

    /** R4's own codes of what a procedure does to a device. */
    private static final String DEVICE_ACTION = "http://hl7.org/fhir/device-action";

    private final Shelf shelf;
    private final List<Unused> unused;

    LensInEye(Shelf shelf, List<Unused> unused) {
        this.shelf = shelf;
        this.unused = unused;
    }

    /** The carton by its name, as the operation or a use that followed from it says; empty where neither does. */
    Optional<String> carton(Procedure operation) {
        Stream<Reference> focal = operation.getFocalDevice().stream()
                .filter(each -> !each.hasAction() || Codes.has(each.getAction(), DEVICE_ACTION, "implanted"))
                .map(each -> each.getManipulated());
        Stream<Reference> used = uses(operation).map(DeviceUseStatement::getDevice);
        return Stream.concat(focal, used)
                .map(Shelf::name)
                .filter(name -> !name.isEmpty())
                .findFirst();
    }

    Stream<DeviceUseStatement> uses(Procedure operation) {
        return shelf.all(DeviceUseStatement.class).filter(use -> Shelf.refers(use.getDerivedFrom(), operation));
    }

    Optional<ImplantedLens> of(Procedure operation, Evidence evidence) {
        Optional<String> carton = carton(operation);
        if (carton.isEmpty()) {
            return none(Unused.Reason.LENS_NOT_RECORDED, evidence.at("focalDevice"));
        }
        Optional<Device> device = shelf.find(Device.class, new Reference(carton.get()));
        if (device.isEmpty()) {
            return none(Unused.Reason.LENS_NOT_THERE, evidence.at("focalDevice"));
        }
        String wearer = Shelf.name(device.get().getPatient());
        Evidence lens = new Evidence(carton.get(), "", "patient");
        if (!wearer.isEmpty() && !wearer.equals(Shelf.name(operation.getSubject()))) {
            return none(Unused.Reason.LENS_OF_ANOTHER_PERSON, lens);
        }
        String model = Shelf.name(device.get().getDefinition());
        Optional<Dioptres> power = property(device.get(), "lens-power");
        if (model.isEmpty() || power.isEmpty()) {
            return none(
                    Unused.Reason.LENS_WITHOUT_MODEL_OR_POWER, lens.at(model.isEmpty() ? "definition" : "property"));
        }
        Optional<ImplantedLens.Toric> toric = property(device.get(), "lens-cylinder")
                .filter(cylinder -> cylinder.value() > 0)
                .map(cylinder -> new ImplantedLens.Toric(cylinder, Optional.empty()));
        return Optional.of(new ImplantedLens(model, power.get(), toric, site(operation, model, power.get())));
    }

    private Optional<ImplantedLens> none(Unused.Reason reason, Evidence evidence) {
        unused.add(new Unused(reason, evidence));
        return Optional.empty();
    }

    private static Optional<Dioptres> property(Device device, String code) {
        return device.getProperty().stream()
                .filter(each -> Codes.has(each.getType(), Systems.LENS_PARAMETER, code))
                .flatMap(each -> each.getValueQuantity().stream())
                .flatMap(given -> dioptres(given).stream())
                .findFirst();
    }

    private static Optional<Dioptres> dioptres(Quantity given) {
        return given.hasValue() && given.hasCode()
                ? UnitKind.POWER
                        .factor(given.getCode())
                        .map(factor -> Dioptres.of(given.getValue().doubleValue() * factor))
                : Optional.empty();
    }

    /** As the operation says it, or by the role of the request that the lens fulfilled. */
    private Optional<LensSite> site(Procedure operation, String model, Dioptres power) {
        Optional<LensSite> said = Optional.ofNullable(operation.getExtensionByUrl(PLACEMENT))
                .map(each -> each.getValue())
                .map(Type::primitiveValue)
                .flatMap(code -> Stream.of(LensSite.values())
                        .filter(site -> site.toString().replace(' ', '-').equals(code))
                        .findFirst());
        return said.or(() -> requests(operation)
                .filter(request -> request.getStatus() == DeviceRequestStatus.COMPLETED)
                .filter(request -> model(request).equals(model))
                .filter(request ->
                        StoredPlan.labelled(request).filter(power::equals).isPresent())
                .map(StoredPlan::role)
                .flatMap(role -> siteOf(role).stream())
                .findFirst());
    }

    private static Optional<LensSite> siteOf(String role) {
        return Stream.of(KitRole.values())
                .filter(each -> each.code().equals(role))
                .map(each -> switch (each) {
                    case PRIMARY, SPARE -> LensSite.CAPSULAR_BAG;
                    case SULCUS -> LensSite.SULCUS;
                    case ANTERIOR_CHAMBER -> LensSite.ANTERIOR_CHAMBER;
                })
                .findFirst();
    }

    /** The lenses that were asked for by the booking of that operation. */
    Stream<DeviceRequest> requests(Procedure operation) {
        List<String> bookings = operation.getBasedOn().stream().map(Shelf::name).toList();
        return shelf.all(DeviceRequest.class)
                .filter(request ->
                        request.getBasedOn().stream().map(Shelf::name).anyMatch(bookings::contains));
    }

    static String model(DeviceRequest request) {
        return Optional.ofNullable(request.getExtensionByUrl(MODEL))
                .map(each -> each.getValue())
                .filter(Reference.class::isInstance)
                .map(each -> Shelf.name((Reference) each))
                .orElse("");
    }
}
