package org.lensward.record.bank;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.finding.FindingCode.UNIT_MOVED_MEANWHILE;
import static org.lensward.finding.FindingCode.UNIT_STORE_UNKNOWN;
import static org.lensward.record.bank.BankRecord.CLERK;
import static org.lensward.record.bank.BankRecord.DAY;
import static org.lensward.record.bank.BankRecord.codes;
import static org.lensward.record.bank.BankRecord.name;
import static org.lensward.record.bank.BankRecord.ready;

import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.Device;
import org.hl7.fhir.r4.model.Provenance;
import org.junit.jupiter.api.Test;
import org.lensward.finding.Outcome;
import org.lensward.lens.stock.LensUnit;
import org.lensward.lens.stock.Movement;
import org.lensward.lens.stock.UnitState;
import org.lensward.record.ProfileValidator;

/** Cartons carried between stores, on a real FHIR server. That a promise goes with the carton is common practice, no source. */
class CarryTest {

    private static final BankRecord RECORD = BankRecord.shared();
    private static final LensBank BANK = RECORD.bank();
    private static final Movement NORTH = new Movement.Carry("Location/north");

    @Test
    void a_promised_carton_is_carried_with_its_promise_and_leaves_a_valid_trail() {
        LensUnit unit = RECORD.received("CARRY", "carry-1");
        String booking = RECORD.book("carry-for");
        ready(BANK.move(name(unit), new Movement.Reserve(booking, DAY), CLERK));

        LensUnit carried = ready(BANK.move(name(unit), NORTH, CLERK));

        assertThat(carried.location()).isEqualTo("Location/north");
        assertThat(carried.state()).isEqualTo(UnitState.RESERVED);
        assertThat(BANK.unit(name(unit)).value()).contains(carried);
        assertThat(carried.heldFor()).contains(booking);
        assertThat(ProfileValidator.errors(RECORD.read(Device.class, name(unit))))
                .isEmpty();
        List<Provenance> trail = RECORD.search("Provenance?target=" + name(unit)).stream()
                .map(Provenance.class::cast)
                .filter(Provenance::hasLocation)
                .toList();
        assertThat(trail).hasSize(1).allSatisfy(each -> {
            assertThat(each.getLocation().getReference()).isEqualTo("Location/north");
            assertThat(ProfileValidator.errors(each)).isEmpty();
        });
    }

    @Test
    void the_history_tells_every_movement_the_latest_first() {
        LensUnit unit = RECORD.received("CARRY", "carry-2");
        ready(BANK.move(name(unit), NORTH, signedLater(1)));
        ready(BANK.move(name(unit), new Movement.Quarantine("dented"), signedLater(2)));

        assertThat(BANK.history(name(unit)))
                .extracting(UnitEvent::done)
                .containsExactly("Put in quarantine", "Carried to another store", "Taken in");
        assertThat(BANK.history(name(unit)).get(1).store()).contains("Location/north");
        assertThat(BANK.history(name(unit)).get(0).reason()).contains("dented");
    }

    private static Signature signedLater(int minutes) {
        return new Signature(CLERK.who(), CLERK.at().plusSeconds(60L * minutes));
    }

    @Test
    void what_is_carried_to_a_place_nobody_knows_stays_where_it_is() {
        LensUnit unit = RECORD.received("CARRY", "carry-3");

        Outcome<LensUnit> refused = BANK.move(name(unit), new Movement.Carry("Location/nowhere"), CLERK);

        assertThat(codes(refused)).containsExactly(UNIT_STORE_UNKNOWN);
        assertThat(BANK.unit(name(unit)).value()).contains(unit);
    }

    @Test
    void who_decided_on_an_older_look_is_told_and_nothing_is_written() {
        LensUnit unit = RECORD.received("CARRY", "carry-4");
        Sighting old = new Sighting(name(unit), Optional.of(unit.evidence().version()));
        LensUnit carried = ready(BANK.move(old, NORTH, CLERK));

        Outcome<LensUnit> late = BANK.move(old, new Movement.Waste("dropped"), CLERK);

        assertThat(codes(late)).containsExactly(UNIT_MOVED_MEANWHILE);
        assertThat(BANK.unit(name(unit)).value()).contains(carried);
        assertThat(BANK.move(old, NORTH, CLERK).value()).as("the same again").contains(carried);
    }
}
