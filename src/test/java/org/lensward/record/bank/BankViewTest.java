package org.lensward.record.bank;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.record.bank.BankRecord.CLERK;
import static org.lensward.record.bank.BankRecord.name;
import static org.lensward.record.bank.BankRecord.ready;

import java.time.Clock;
import java.util.Optional;
import org.hl7.fhir.r4.model.Device;
import org.junit.jupiter.api.Test;
import org.lensward.lens.stock.LensUnit;
import org.lensward.lens.stock.Movement;
import org.lensward.lens.stock.UnitState;

/** The bank in memory against the bank in the record. */
class BankViewTest {

    private static final BankRecord RECORD = BankRecord.shared();
    private static final LensBank BANK = RECORD.bank();

    private final BankView view = new BankView(BankRecord.FHIR, RECORD.door(), Clock.systemUTC());

    private Optional<LensUnit> seen(LensUnit unit) {
        return view.standing().orElseThrow().units().stream()
                .filter(each -> name(each).equals(name(unit)))
                .findFirst();
    }

    @Test
    void it_holds_what_the_record_holds_and_follows_what_others_do() {
        LensUnit unit = RECORD.received("VIEW", "view-1");
        assertThat(view.standing()).isEmpty();
        view.refresh();
        assertThat(seen(unit)).contains(unit);

        LensUnit wasted = ready(BANK.move(name(unit), new Movement.Waste("dropped"), CLERK));
        LensUnit later = RECORD.received("VIEW", "view-2");
        view.refresh();

        assertThat(seen(unit)).contains(wasted);
        assertThat(seen(later)).contains(later);
        assertThat(view.standing().orElseThrow().units()).containsExactlyInAnyOrderElementsOf(ready(BANK.units()));
    }

    @Test
    void what_was_just_moved_here_stands_so_at_once() {
        LensUnit unit = RECORD.received("VIEW", "view-3");
        view.refresh();

        view.moved(ready(BANK.move(name(unit), new Movement.Quarantine("dented"), CLERK)));

        assertThat(seen(unit).map(LensUnit::state)).contains(UnitState.QUARANTINED);
    }

    @Test
    void a_carton_taken_out_of_the_record_is_missed_by_the_count() {
        Device lone = RECORD.read(Device.class, name(RECORD.received("VIEW", "view-4")))
                .copy();
        RECORD.put(BankRecord.named(lone, "unit-without-a-trail"));
        LensUnit unit = ready(BANK.unit("Device/unit-without-a-trail"));
        view.refresh();
        assertThat(seen(unit)).isPresent();

        RECORD.client().delete().resourceById("Device", "unit-without-a-trail").execute();
        view.refresh();

        assertThat(seen(unit)).isEmpty();
    }
}
