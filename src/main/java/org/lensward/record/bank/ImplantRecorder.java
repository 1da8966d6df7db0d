package org.lensward.record.bank;

import static org.lensward.finding.FindingCode.IMPLANT_NOT_AS_PLANNED;
import static org.lensward.finding.FindingCode.IMPLANT_WITHOUT_PLAN;
import static org.lensward.finding.FindingCode.UNIT_MOVED_MEANWHILE;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Device;
import org.hl7.fhir.r4.model.DeviceRequest;
import org.hl7.fhir.r4.model.DeviceRequest.DeviceRequestStatus;
import org.hl7.fhir.r4.model.DeviceRequest.RequestIntent;
import org.hl7.fhir.r4.model.Organization;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Procedure.ProcedureStatus;
import org.hl7.fhir.r4.model.Reference;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.Outcome;
import org.lensward.lens.stock.LensUnit;
import org.lensward.lens.stock.Movement;
import org.lensward.lens.stock.Movements;
import org.lensward.record.Codes;
import org.lensward.record.PlanKey;
import org.lensward.record.Shelf;
import org.lensward.record.Systems;

/** Judges an implantation against the booking's plan and the carton, then has it written. */
final class ImplantRecorder {

    private static final String ANY_EYE = "81745001";

    private final RecordDoor door;
    private final UnitReader reader;

    ImplantRecorder(RecordDoor door, UnitReader reader) {
        this.door = door;
        this.reader = reader;
    }

    Outcome<ImplantCard> record(Implantation implantation, Signature signature) {
        Shelf shelf = new Shelf(door.gather(questions(implantation)));
        return plan(shelf, implantation)
                .then(plan -> carton(shelf, implantation).then(device -> reader.read(device)
                        .then(unit -> Movements.apply(unit, movement(implantation)))
                        .then(unit -> asPlanned(shelf, unit, implantation))
                        .then(unit -> write(shelf, new Parts(implantation, signature, plan, device, unit)))));
    }

    /** What an implantation brings together; {@code unit} is the lens after it. */
    private record Parts(
            Implantation implantation, Signature signature, Procedure plan, Device carton, LensUnit unit) {}

    private static List<String> questions(Implantation implantation) {
        String token = PlanKey.of(implantation.booking()).token();
        Stream<String> hospital = Stream.of(implantation.hospital()).filter(Signature::isReference);
        return Stream.concat(
                        Stream.of(
                                implantation.unit(),
                                "Procedure?identifier=" + token,
                                "DeviceRequest?identifier=" + token,
                                HeldUnits.question(implantation.booking())),
                        hospital)
                .toList();
    }

    private static Movement movement(Implantation implantation) {
        return new Movement.Implant(implantation.booking(), implantation.at().toLocalDate());
    }

    private static Outcome<Procedure> plan(Shelf shelf, Implantation implantation) {
        String name = "Procedure/" + PlanKey.of(implantation.booking()).planId();
        Optional<Procedure> plan = shelf.find(Procedure.class, new Reference(name));
        String trouble = plan.map(ImplantRecorder::trouble).orElse("the booking has none");
        return trouble.isEmpty()
                ? Outcome.ready(plan.orElseThrow())
                : Outcome.withheld(Finding.of(IMPLANT_WITHOUT_PLAN, new Evidence(name, "", ""), trouble));
    }

    private static String trouble(Procedure plan) {
        if (plan.getStatus() != ProcedureStatus.PREPARATION && plan.getStatus() != ProcedureStatus.INPROGRESS) {
            return "it is " + plan.getStatus().toCode();
        }
        return Codes.has(plan.getBodySiteFirstRep(), Systems.SNOMED, ANY_EYE) ? "it does not say which eye" : "";
    }

    private Outcome<Device> carton(Shelf shelf, Implantation implantation) {
        return shelf.find(Device.class, new Reference(implantation.unit()))
                .<Outcome<Device>>map(Outcome::ready)
                .orElseGet(() -> new UnitMover(door, reader).look(implantation.unit()));
    }

    private static Outcome<LensUnit> asPlanned(Shelf shelf, LensUnit unit, Implantation implantation) {
        PlannedLens inHand = PlannedLens.of(unit);
        Optional<PlannedLens> planned = requests(shelf)
                .filter(request -> request.getIntent() == RequestIntent.PLAN)
                .map(PlannedLens::of)
                .findFirst();
        if (planned.filter(inHand::equals).isPresent()
                || implantation.deviation().isPresent()) {
            return Outcome.ready(unit);
        }
        return Outcome.withheld(Finding.of(
                IMPLANT_NOT_AS_PLANNED,
                unit.evidence(),
                inHand.words(),
                planned.map(PlannedLens::words).orElse("none")));
    }

    /** The lenses asked for that still stand, the primary one first. */
    private static Stream<DeviceRequest> requests(Shelf shelf) {
        return shelf.all(DeviceRequest.class)
                .filter(request -> request.getStatus() == DeviceRequestStatus.ACTIVE)
                .sorted(Comparator.comparing(request -> request.getIntent() != RequestIntent.PLAN));
    }

    private Outcome<ImplantCard> write(Shelf shelf, Parts parts) {
        ImplantTransaction transaction = new ImplantTransaction(parts.implantation(), parts.signature());
        Procedure operation = transaction.implanted(
                parts.plan(), parts.carton(), parts.unit(), hospital(shelf, parts.implantation()));
        transaction.settle(requests(shelf).toList(), parts.unit());
        List<Finding> found = returnRest(shelf, parts, transaction);
        return door.transact(transaction.bundle())
                .<Outcome<ImplantCard>>map(
                        answer -> Outcome.ready(ImplantCard.of(operation, parts.carton(), parts.unit()), found))
                .orElseGet(() -> Outcome.withheld(Finding.of(
                        UNIT_MOVED_MEANWHILE,
                        parts.unit().evidence(),
                        "the plan or a lens of " + parts.implantation().booking())));
    }

    private static Reference hospital(Shelf shelf, Implantation implantation) {
        Reference hospital = Signature.reference(implantation.hospital());
        shelf.find(Organization.class, hospital).ifPresent(organization -> hospital.setDisplay(organization.getName()));
        return hospital;
    }

    /** Every other carton held for the booking goes back; one that cannot is said. */
    private List<Finding> returnRest(Shelf shelf, Parts parts, ImplantTransaction transaction) {
        String booking = parts.implantation().booking();
        Movement back = new Movement.Return(booking);
        List<Finding> found = new ArrayList<>();
        shelf.all(Device.class)
                .filter(device -> HeldUnits.isHeld(device, booking))
                .filter(device -> !Shelf.name(device).equals(Shelf.name(parts.carton())))
                .forEach(device -> {
                    Outcome<LensUnit> unit = reader.read(device).then(held -> Movements.apply(held, back));
                    unit.value().ifPresent(free -> transaction.returned(device, free, back));
                    found.addAll(unit.findings());
                });
        return found;
    }
}
