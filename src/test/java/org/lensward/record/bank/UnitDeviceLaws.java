package org.lensward.record.bank;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import org.hl7.fhir.r4.model.Device;
import org.lensward.lens.stock.LensUnit;
import org.lensward.lens.stock.Movement;
import org.lensward.lens.stock.Movements;
import org.lensward.lens.stock.Owner;
import org.lensward.quantity.Dioptres;
import org.lensward.record.Evidences;

/** What holds of any carton written to the record and read again. */
class UnitDeviceLaws {

    private final UnitReader reader = new UnitReader(new Evidences(BankRecord.FHIR));

    @Property
    void what_is_written_is_read_again(@ForAll("deliveries") Delivery delivery) {
        LensUnit unit = read(sent(UnitDevice.of("Device/unit-1", delivery, "Harbour 60")));

        assertThat(unit.model()).isEqualTo(delivery.model());
        assertThat(unit.power()).isEqualTo(delivery.power());
        assertThat(unit.cylinder()).isEqualTo(delivery.cylinder());
        assertThat(unit.identity()).isEqualTo(delivery.identity());
        assertThat(unit.owner()).isEqualTo(delivery.owner());
    }

    @Property
    void a_carton_moved_is_read_as_moved(
            @ForAll("deliveries") Delivery delivery, @ForAll("movements") Movement movement) {
        Device before = sent(UnitDevice.of("Device/unit-1", delivery, "Harbour 60"));
        before.getMeta().setVersionId("1");
        LensUnit moved = Movements.apply(read(before), movement).value().orElseThrow();
        Device after = sent(UnitDevice.moved(before, moved));
        after.getMeta().setVersionId("1");

        assertThat(read(after)).isEqualTo(moved);
    }

    @Property
    void labels_that_differ_have_names_that_differ(
            @ForAll("deliveries") Delivery one,
            @ForAll("deliveries") Delivery other,
            @ForAll @IntRange(min = 1, max = 99) int running) {
        LensUnit.Identity first = one.identity();
        LensUnit.Identity second = other.identity();
        boolean same = first.device().equals(second.device()) && first.serial().equals(second.serial());

        if (first.serial().isPresent() && second.serial().isPresent()) {
            assertThat(UnitName.bySerial(first).equals(UnitName.bySerial(second)))
                    .isEqualTo(same);
        }
        UnitName.byLot(first, running).ifPresent(name -> {
            assertThat(name).matches("Device/[A-Za-z0-9.-]{1,64}");
            assertThat(UnitName.byLot(first, running + 1)).isNotEqualTo(Optional.of(name));
        });
    }

    private LensUnit read(Device device) {
        return reader.read(device).value().orElseThrow();
    }

    private static Device sent(Device device) {
        var parser = BankRecord.FHIR.newJsonParser();
        return parser.parseResource(Device.class, parser.encodeResourceToString(device));
    }

    @Provide
    Arbitrary<Delivery> deliveries() {
        Arbitrary<Dioptres> powers =
                Arbitraries.integers().between(-40, 160).map(quarters -> Dioptres.of(quarters / 4.0));
        Arbitrary<String> label = Arbitraries.strings()
                .withCharRange('A', 'Z')
                .numeric()
                .ofMinLength(1)
                .ofMaxLength(20);
        Arbitrary<LensUnit.Identity> identities = Combinators.combine(
                        Arbitraries.of("09521234000013", "+A123BJC5D6E71"), label, label.optional(), expiries())
                .as((device, lot, serial, expiry) -> new LensUnit.Identity(device, Optional.of(lot), serial, expiry));
        return Combinators.combine(powers, powers.optional(), identities, Arbitraries.of(true, false))
                .as((power, cylinder, identity, consigned) -> new Delivery(
                        "DeviceDefinition/harbour-60",
                        power,
                        cylinder,
                        identity,
                        Optional.empty(),
                        "Location/store",
                        new Owner("Organization/supplier", consigned),
                        LocalDate.of(2026, 12, 1)));
    }

    private static Arbitrary<LocalDate> expiries() {
        return Arbitraries.integers().between(0, 2_000).map(LocalDate.of(2026, 12, 31)::plusDays);
    }

    @Provide
    Arbitrary<Movement> movements() {
        return Arbitraries.of(
                new Movement.Reserve("ServiceRequest/b1", LocalDate.of(2026, 12, 10)),
                new Movement.Return("ServiceRequest/b1"),
                new Movement.Waste("dropped"),
                new Movement.Quarantine("recalled"));
    }
}
