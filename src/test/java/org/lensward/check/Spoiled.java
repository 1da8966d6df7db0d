package org.lensward.check;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.lensward.lens.stock.LensUnit;
import org.lensward.lens.stock.UnitState;
import org.lensward.quantity.Degrees;

/** What was presented, with one thing after another changed. */
final class Spoiled {

    private Identity patient;
    private EyesRead eyes;
    private Optional<String> plan;
    private Carton carton;
    private Optional<Degrees> axis;
    private Optional<Set<String>> allergies;
    private List<BackUp> backUps;
    private People people;
    private OffsetDateTime at;

    Spoiled(Presented right) {
        patient = right.patient();
        eyes = right.eyes();
        plan = right.plan();
        carton = right.carton();
        axis = right.axis();
        allergies = right.allergies();
        backUps = right.backUps();
        people = right.people();
        at = right.at();
    }

    Presented all() {
        return new Presented(patient, eyes, plan, carton, axis, allergies, backUps, people, at);
    }

    Spoiled patient(Identity other) {
        patient = other;
        return this;
    }

    Spoiled eyes(EyesRead other) {
        eyes = other;
        return this;
    }

    Spoiled plan(Optional<String> other) {
        plan = other;
        return this;
    }

    Spoiled carton(Carton other) {
        carton = other;
        return this;
    }

    Spoiled axis(Optional<Degrees> other) {
        axis = other;
        return this;
    }

    Spoiled allergies(Optional<Set<String>> other) {
        allergies = other;
        return this;
    }

    Spoiled backUps(List<BackUp> other) {
        backUps = other;
        return this;
    }

    Spoiled people(String reader, String second) {
        people = new People(Optional.of(reader), Optional.of(second));
        return this;
    }

    Spoiled at(OffsetDateTime other) {
        at = other;
        return this;
    }

    /** Another lens by the bank and on the box. */
    Spoiled lens(CheckedLens other) {
        return bank(Optional.of(Checks.unit(other)))
                .box(Optional.of(new Carton.BoxRead(other, "Practitioner/nurse-2")));
    }

    Spoiled bank(Optional<LensUnit> unit) {
        return carton(new Carton(carton.raw(), carton.label(), unit, carton.read(), carton.state()));
    }

    Spoiled box(Optional<Carton.BoxRead> read) {
        return carton(new Carton(carton.raw(), carton.label(), carton.unit(), read, carton.state()));
    }

    Spoiled label(Carton.Label label) {
        return carton(new Carton(carton.raw(), label, carton.unit(), carton.read(), carton.state()));
    }

    /** A carton whose label and bank entry agree on that expiry. */
    Spoiled expiring(LocalDate day) {
        Carton.Label label = carton.label();
        LensUnit unit = carton.unit().orElseThrow();
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
        LensUnit unit = carton.unit().orElseThrow();
        return bank(Optional.of(unit.standing(state, booking)));
    }

    Spoiled found(Optional<PackageState> state) {
        return carton(new Carton(carton.raw(), carton.label(), carton.unit(), carton.read(), state));
    }
}
