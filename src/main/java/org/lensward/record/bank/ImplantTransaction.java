package org.lensward.record.bank;

import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.hl7.fhir.r4.model.Annotation;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.CanonicalType;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.Device;
import org.hl7.fhir.r4.model.DeviceRequest;
import org.hl7.fhir.r4.model.DeviceRequest.DeviceRequestStatus;
import org.hl7.fhir.r4.model.DeviceUseStatement;
import org.hl7.fhir.r4.model.DeviceUseStatement.DeviceUseStatementStatus;
import org.hl7.fhir.r4.model.Period;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Procedure.ProcedureStatus;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.StringType;
import org.lensward.lens.stock.LensUnit;
import org.lensward.lens.stock.Movement;
import org.lensward.record.Codes;
import org.lensward.record.PlanKey;
import org.lensward.record.Shelf;
import org.lensward.record.Systems;

/** Writes an implantation: the plan is completed, the lens is in the patient, its request is fulfilled, the others lapse. */
final class ImplantTransaction {

    static final String PROFILE = Systems.profile("implant-record");
    static final String DEVIATION = Systems.extension("plan-deviation");

    /** R4's own codes of what a procedure does to a device. */
    private static final String DEVICE_ACTION = "http://hl7.org/fhir/device-action";

    /** A FHIR time has its seconds even when they are none. */
    private static final DateTimeFormatter TO_THE_SECOND = DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ssXXX");

    private final Implantation implantation;
    private final Signature signature;
    private final DateTimeType at;
    private final GuardedTransaction transaction = new GuardedTransaction();

    ImplantTransaction(Implantation implantation, Signature signature) {
        this.implantation = implantation;
        this.signature = signature;
        this.at = new DateTimeType(implantation.at().format(TO_THE_SECOND));
    }

    Bundle bundle() {
        return transaction.bundle();
    }

    /**
     * The plan and the lens.
     *
     * @param standing the plan as it stands
     * @param carton the lens as it stands
     * @param unit the lens after it
     * @param hospital where
     * @return the plan as completed
     */
    Procedure implanted(Procedure standing, Device carton, LensUnit unit, Reference hospital) {
        Device device =
                UnitDevice.moved(carton, unit).setPatient(standing.getSubject().copy());
        Procedure operation = completed(standing, device, unit, hospital);
        DeviceUseStatement use = use(operation, device);
        transaction.replace(operation).replace(device).write(use);
        transaction.trail(Trail.of(
                new Movement.Implant(implantation.booking(), implantation.at().toLocalDate()),
                signature,
                List.of(standing, carton),
                List.of(device, operation, use)));
        return operation;
    }

    private Procedure completed(Procedure standing, Device device, LensUnit unit, Reference hospital) {
        Procedure operation = standing.copy();
        operation.setId(standing.getIdElement().toUnqualifiedVersionless());
        operation.getMeta().setProfile(List.of(new CanonicalType(PROFILE)));
        operation.setStatus(ProcedureStatus.COMPLETED);
        operation.setPerformed(at.copy());
        operation
                .addPerformer()
                .setActor(Signature.reference(implantation.surgeon()))
                .setOnBehalfOf(hospital);
        operation
                .addFocalDevice()
                .setAction(Codes.concept(DEVICE_ACTION, "implanted", "Implanted"))
                .setManipulated(new Reference(Shelf.name(device)));
        operation.addNote().setText(label(device, unit));
        implantation.deviation().ifPresent(deviation -> operation.addExtension(DEVIATION, annotation(deviation)));
        return operation;
    }

    /** As sign-out reads it from the carton: label, lot and serial number stand in the notes too. */
    private static String label(Device device, LensUnit unit) {
        List<String> words = new ArrayList<>();
        words.add("Implanted: " + UnitDevice.modelName(device));
        words.add(String.format(Locale.ROOT, "%+.2f D", unit.power().value()));
        unit.cylinder().ifPresent(cylinder -> words.add("cylinder " + cylinder.rounded()));
        unit.identity().lot().ifPresent(lot -> words.add("lot " + lot));
        unit.identity().serial().ifPresent(serial -> words.add("serial " + serial));
        return String.join(", ", words) + ".";
    }

    private Annotation annotation(Implantation.Deviation deviation) {
        Annotation annotation = new Annotation().setTimeElement(at.copy()).setText(deviation.reason());
        return Signature.isReference(deviation.clinician())
                ? annotation.setAuthor(new Reference(deviation.clinician()))
                : annotation.setAuthor(new StringType(deviation.clinician()));
    }

    /** R4: a use is active while the device is in use; a lens in the eye is. */
    private DeviceUseStatement use(Procedure operation, Device device) {
        DeviceUseStatement use = new DeviceUseStatement();
        use.setId("DeviceUseStatement/" + PlanKey.of(implantation.booking()).id("implanted"));
        use.getMeta().addProfile(Systems.profile("lens-use"));
        use.setStatus(DeviceUseStatementStatus.ACTIVE);
        use.setSubject(operation.getSubject().copy());
        use.addDerivedFrom(new Reference(Shelf.name(operation)));
        use.setTiming(new Period().setStartElement(at.copy()));
        use.setDevice(new Reference(Shelf.name(device)));
        use.setBodySite(operation.getBodySiteFirstRep().copy());
        return use;
    }

    /** The request the lens fulfils is completed, every other is revoked; those of another lens all lapse. */
    void settle(List<DeviceRequest> requests, LensUnit unit) {
        Optional<DeviceRequest> fulfilled = requests.stream()
                .filter(request -> PlannedLens.of(request).equals(PlannedLens.of(unit)))
                .findFirst();
        for (DeviceRequest request : requests) {
            boolean isFulfilled = fulfilled.filter(request::equals).isPresent();
            DeviceRequest settled = request.copy();
            settled.setId(request.getIdElement().toUnqualifiedVersionless());
            settled.setStatus(isFulfilled ? DeviceRequestStatus.COMPLETED : DeviceRequestStatus.REVOKED);
            transaction.replace(settled);
        }
    }

    /** Another carton of the kit goes back to the shelf it came from. */
    void returned(Device before, LensUnit unit, Movement back) {
        Resource after = UnitDevice.moved(before, unit);
        transaction.replace(after).trail(Trail.of(back, signature, List.of(before), List.of(after)));
    }
}
