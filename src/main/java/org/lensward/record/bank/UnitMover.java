package org.lensward.record.bank;

import static org.lensward.finding.FindingCode.UNIT_MOVED_MEANWHILE;
import static org.lensward.finding.FindingCode.UNIT_NOT_IN_BANK;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Bundle.BundleEntryComponent;
import org.hl7.fhir.r4.model.Device;
import org.hl7.fhir.r4.model.IdType;
import org.hl7.fhir.r4.model.Reference;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.Outcome;
import org.lensward.lens.stock.LensUnit;
import org.lensward.lens.stock.Movement;
import org.lensward.lens.stock.Movements;
import org.lensward.record.Shelf;

/** Looks at one carton, judges the movement, writes it with its trail. */
final class UnitMover {

    private static final int TRIES = 5;

    private final RecordDoor door;
    private final UnitReader reader;

    UnitMover(RecordDoor door, UnitReader reader) {
        this.door = door;
        this.reader = reader;
    }

    /** What is no carton's name, whatever it is, finds none. */
    Outcome<Device> look(String name) {
        if (!RecordName.isOf("Device", name)) {
            return unknown("Device", name);
        }
        return new Shelf(door.gather(List.of(name)))
                .find(Device.class, new Reference(name))
                .<Outcome<Device>>map(Outcome::ready)
                .orElseGet(() -> unknown(name, name));
    }

    private static <T> Outcome<T> unknown(String evidence, String name) {
        return Outcome.withheld(Finding.of(UNIT_NOT_IN_BANK, new Evidence(evidence, "", ""), name));
    }

    Outcome<LensUnit> move(Sighting seen, Movement movement, Signature signature) {
        return look(seen.unit()).then(device -> reader.read(device).then(unit -> Movements.apply(unit, movement)
                .then(moved -> moved.equals(unit)
                        ? Outcome.ready(unit)
                        : seen.isStale(unit.evidence().version())
                                ? overtaken(unit)
                                : write(device, moved, movement, signature))));
    }

    private static Outcome<LensUnit> overtaken(LensUnit unit) {
        return Outcome.withheld(Finding.of(
                UNIT_MOVED_MEANWHILE, unit.evidence(), unit.evidence().resource()));
    }

    /** Moves it even if others move it at the same time, as long as the movement stays possible. */
    Outcome<LensUnit> insist(String name, Movement movement, Signature signature) {
        Sighting any = Sighting.asItIs(name);
        Outcome<LensUnit> outcome = move(any, movement, signature);
        for (int again = 1; again < TRIES && isOvertaken(outcome); again++) {
            outcome = move(any, movement, signature);
        }
        return outcome;
    }

    private static boolean isOvertaken(Outcome<LensUnit> outcome) {
        return outcome.findings().stream().anyMatch(finding -> finding.code() == UNIT_MOVED_MEANWHILE);
    }

    Outcome<LensUnit> create(Device carton, LocalDate day, Signature signature) {
        return reader.read(carton)
                .then(unit -> post(
                        new GuardedTransaction()
                                .create(carton)
                                .trail(Trail.of(new Movement.GoodsIn(day), signature, List.of(), List.of(carton))),
                        unit));
    }

    private Outcome<LensUnit> write(Device before, LensUnit moved, Movement movement, Signature signature) {
        Device after = UnitDevice.moved(before, moved);
        return post(
                new GuardedTransaction()
                        .replace(after)
                        .trail(Trail.of(movement, signature, List.of(before), List.of(after))),
                moved);
    }

    private Outcome<LensUnit> post(GuardedTransaction transaction, LensUnit unit) {
        return door.transact(transaction.bundle())
                .<Outcome<LensUnit>>map(answer -> Outcome.ready(versioned(unit, answer)))
                .orElseGet(() -> overtaken(unit));
    }

    /** The unit under the version that the record gave it. */
    private static LensUnit versioned(LensUnit unit, Bundle answer) {
        String name = unit.evidence().resource();
        Optional<String> version = answer.getEntry().stream()
                .map(BundleEntryComponent::getResponse)
                .filter(response -> response.hasLocation())
                .map(response -> new IdType(response.getLocation()))
                .filter(id -> name.equals(id.toUnqualifiedVersionless().getValue()))
                .filter(IdType::hasVersionIdPart)
                .map(IdType::getVersionIdPart)
                .findFirst();
        return unit.version(new Evidence(name, version.orElse(unit.evidence().version()), ""));
    }
}
