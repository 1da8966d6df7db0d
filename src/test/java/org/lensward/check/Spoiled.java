package org.lensward.check;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.lensward.lens.stock.LensUnit;
import org.lensward.lens.stock.UnitState;
import org.lensward.quantity.Degrees;

/** What was presented, with one thing changed. */
record Spoiled(Presented all) {

    Spoiled patient(Identity other) {
        return new Spoiled(new Presented(
                other,
                all.eyes(),
                all.plan(),
                all.carton(),
                all.axis(),
                all.allergies(),
                all.backUps(),
                all.people(),
                all.at()));
    }

    Spoiled eyes(EyesRead other) {
        return new Spoiled(new Presented(
                all.patient(),
                other,
                all.plan(),
                all.carton(),
                all.axis(),
                all.allergies(),
                all.backUps(),
                all.people(),
                all.at()));
    }

    Spoiled plan(Optional<String> other) {
        return new Spoiled(new Presented(
                all.patient(),
                all.eyes(),
                other,
                all.carton(),
                all.axis(),
                all.allergies(),
                all.backUps(),
                all.people(),
                all.at()));
    }

    Spoiled carton(Carton other) {
        return new Spoiled(new Presented(
                all.patient(),
                all.eyes(),
                all.plan(),
                other,
                all.axis(),
                all.allergies(),
                all.backUps(),
                all.people(),
                all.at()));
    }

    Spoiled axis(Optional<Degrees> other) {
        return new Spoiled(new Presented(
                all.patient(),
                all.eyes(),
                all.plan(),
                all.carton(),
                other,
                all.allergies(),
                all.backUps(),
                all.people(),
                all.at()));
    }

    Spoiled allergies(Optional<Set<String>> other) {
        return new Spoiled(new Presented(
                all.patient(),
                all.eyes(),
                all.plan(),
                all.carton(),
                all.axis(),
                other,
                all.backUps(),
                all.people(),
                all.at()));
    }

    Spoiled backUps(List<BackUp> other) {
        return new Spoiled(new Presented(
                all.patient(),
                all.eyes(),
                all.plan(),
                all.carton(),
                all.axis(),
                all.allergies(),
                other,
                all.people(),
                all.at()));
    }

    Spoiled people(String reader, String second) {
        return new Spoiled(new Presented(
                all.patient(),
                all.eyes(),
                all.plan(),
                all.carton(),
                all.axis(),
                all.allergies(),
                all.backUps(),
                new People(Optional.of(reader), Optional.of(second)),
                all.at()));
    }

    Spoiled at(OffsetDateTime other) {
        return new Spoiled(new Presented(
                all.patient(),
                all.eyes(),
                all.plan(),
                all.carton(),
                all.axis(),
                all.allergies(),
                all.backUps(),
                all.people(),
                other));
    }

    /** Another lens by the bank and on the box. */
    Spoiled lens(CheckedLens other) {
        return bank(Optional.of(Checks.unit(other)))
                .box(Optional.of(new Carton.BoxRead(other, "Practitioner/nurse-2")));
    }

    Spoiled bank(Optional<LensUnit> unit) {
        Carton old = all.carton();
        return carton(new Carton(old.raw(), old.label(), unit, old.read(), old.state()));
    }

    Spoiled box(Optional<Carton.BoxRead> read) {
        Carton old = all.carton();
        return carton(new Carton(old.raw(), old.label(), old.unit(), read, old.state()));
    }

    Spoiled label(Carton.Label label) {
        Carton old = all.carton();
        return carton(new Carton(old.raw(), label, old.unit(), old.read(), old.state()));
    }

    /** A carton whose label and bank entry agree on that expiry. */
    Spoiled expiring(LocalDate day) {
        Carton.Label label = all.carton().label();
        LensUnit unit = all.carton().unit().orElseThrow();
        LensUnit.Identity old = unit.identity();
        LensUnit aged = new LensUnit(
                unit.evidence(),
                unit.model(),
                unit.power(),
                unit.cylinder(),
                new LensUnit.Identity(old.device(), old.lot(), old.serial(), day),
                unit.location(),
                unit.owner(),
                unit.state(),
                unit.heldFor());
        return label(new Carton.Label(label.device(), label.lot(), label.serial(), Optional.of(day)))
                .bank(Optional.of(aged));
    }

    Spoiled held(UnitState state, Optional<String> booking) {
        LensUnit unit = all.carton().unit().orElseThrow();
        return bank(Optional.of(new LensUnit(
                unit.evidence(),
                unit.model(),
                unit.power(),
                unit.cylinder(),
                unit.identity(),
                unit.location(),
                unit.owner(),
                state,
                booking)));
    }

    Spoiled found(Optional<PackageState> state) {
        Carton old = all.carton();
        return carton(new Carton(old.raw(), old.label(), old.unit(), old.read(), state));
    }
}
