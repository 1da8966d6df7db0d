package org.lensward.lens.stock;

import java.time.LocalDate;
import java.util.Optional;
import org.lensward.finding.Evidence;
import org.lensward.quantity.Dioptres;

/** Cartons in every state, for tests. */
final class Cartons {

    static final String BOOKING = "ServiceRequest/b1";
    static final String OTHER = "ServiceRequest/b2";
    static final LocalDate EXPIRY = LocalDate.of(2027, 3, 31);
    static final LocalDate IN_DATE = EXPIRY;
    static final LocalDate TOO_LATE = EXPIRY.plusDays(1);

    private Cartons() {}

    /** A carton in that state, held for {@link #BOOKING} where it must be held. */
    static LensUnit carton(UnitState state) {
        boolean held = state == UnitState.RESERVED || state == UnitState.PICKED || state == UnitState.IMPLANTED;
        return new LensUnit(
                new Evidence("Device/unit-1", "3", ""),
                "DeviceDefinition/harbour-60",
                Dioptres.of(21.5),
                Optional.empty(),
                new LensUnit.Identity("09521234000013", Optional.of("L7"), Optional.of("S1"), EXPIRY),
                "Location/store",
                new Owner("Organization/hospital", false),
                state,
                held ? Optional.of(BOOKING) : Optional.empty());
    }
}
