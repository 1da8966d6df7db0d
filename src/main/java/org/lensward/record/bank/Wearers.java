package org.lensward.record.bank;

import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Device;
import org.hl7.fhir.r4.model.DeviceUseStatement;
import org.hl7.fhir.r4.model.DeviceUseStatement.DeviceUseStatementStatus;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Procedure.ProcedureStatus;
import org.lensward.record.Shelf;

/** In whom a lens is, by all that the record says of it: the Device itself, the statements of its use, the operations. */
final class Wearers {

    private static final int PER_QUESTION = 40;

    private final Shelf uses;
    private final Shelf procedures;

    private Wearers(Shelf uses, Shelf procedures) {
        this.uses = uses;
        this.procedures = procedures;
    }

    static Wearers of(RecordDoor door, List<Device> devices) {
        Shelf uses = ask(
                door, questions("DeviceUseStatement?device=", devices.stream().map(Shelf::name)));
        Stream<String> bookings = devices.stream().flatMap(device -> HeldUnits.holder(device).stream());
        Stream<String> patients = Stream.concat(
                        devices.stream().map(Device::getPatient),
                        uses.all(DeviceUseStatement.class).map(DeviceUseStatement::getSubject))
                .map(Shelf::name);
        List<String> operations = Stream.concat(
                        questions("Procedure?based-on=", bookings).stream(),
                        questions("Procedure?subject=", patients).stream())
                .toList();
        return new Wearers(uses, ask(door, operations));
    }

    private static List<String> questions(String search, Stream<String> names) {
        List<String> known = names.filter(name -> !name.isEmpty()).distinct().toList();
        return IntStream.iterate(0, from -> from < known.size(), from -> from + PER_QUESTION)
                .mapToObj(from -> known.subList(from, Math.min(known.size(), from + PER_QUESTION)))
                .map(some -> search + String.join(",", some) + "&_count=500")
                .toList();
    }

    private static Shelf ask(RecordDoor door, List<String> questions) {
        return new Shelf(questions.isEmpty() ? new Bundle() : door.gather(questions));
    }

    List<String> patients(Device device) {
        return Stream.of(
                        Stream.of(device.getPatient()),
                        uses.all(DeviceUseStatement.class)
                                .filter(use -> use.getStatus() != DeviceUseStatementStatus.ENTEREDINERROR)
                                .filter(use -> Shelf.refers(List.of(use.getDevice()), device))
                                .map(DeviceUseStatement::getSubject),
                        implantations(device).map(Procedure::getSubject))
                .flatMap(statements -> statements)
                .map(Shelf::name)
                .filter(name -> !name.isEmpty())
                .distinct()
                .toList();
    }

    List<String> operations(Device device) {
        return implantations(device).map(Shelf::name).toList();
    }

    private Stream<Procedure> implantations(Device device) {
        return procedures
                .all(Procedure.class)
                .filter(each -> each.getStatus() != ProcedureStatus.ENTEREDINERROR)
                .filter(each -> each.getFocalDevice().stream()
                        .anyMatch(focal -> Shelf.refers(List.of(focal.getManipulated()), device)));
    }
}
