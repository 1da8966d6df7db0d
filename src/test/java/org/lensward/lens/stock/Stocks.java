package org.lensward.lens.stock;

import static org.lensward.eye.Policies.limit;
import static org.lensward.lens.KitRole.ANTERIOR_CHAMBER;
import static org.lensward.lens.KitRole.SULCUS;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.lensward.finding.Evidence;
import org.lensward.lens.KitRole;
import org.lensward.quantity.Days;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Kilometres;
import org.lensward.quantity.PureNumber;

/** Invented cartons and needs, and the stock policy that tests are made with. */
public final class Stocks {

    public static final LocalDate TODAY = LocalDate.of(2026, 11, 30);
    public static final String NORTH = "Location/north";
    public static final String SOUTH = "Location/south";
    /** Two days from the north, and no way to the south. */
    public static final String EAST = "Location/east";

    private static final String COMMON = "common practice, no source";
    private static final Owner HOSPITAL = new Owner("Organization/hospital", false);

    private Stocks() {}

    /** Seven days' lead; a sulcus lens for two operations, an anterior-chamber lens for three; three sites. */
    public static StockPolicy policy() {
        return policy(Map.of(SULCUS, 2, ANTERIOR_CHAMBER, 3));
    }

    public static StockPolicy policy(Map<KitRole, Integer> shared) {
        return new StockPolicy(
                limit(Days.of(7), COMMON),
                limit(PureNumber.of(1.645), "normal deviate of 95 %"),
                limit(PureNumber.of(2), COMMON),
                limit(Days.of(90), COMMON),
                limit(Days.of(90), COMMON),
                shared.entrySet().stream()
                        .collect(Collectors.toMap(
                                Map.Entry::getKey, entry -> limit(PureNumber.of(entry.getValue()), COMMON))),
                List.of(way(NORTH, SOUTH, 1, 12), way(NORTH, EAST, 2, 30.5)));
    }

    public static Transfer way(String from, String to, int days, double kilometres) {
        return new Transfer(from, to, limit(Days.of(days), COMMON), limit(Kilometres.of(kilometres), COMMON));
    }

    /** A lens of 21.5 D of the house model needed in the north so many days from today. */
    public static LensNeed need(String booking, KitRole role, int inDays) {
        return need(booking, role, inDays, NORTH);
    }

    public static LensNeed need(String booking, KitRole role, int inDays, String location) {
        return new LensNeed(
                booking,
                role,
                "DeviceDefinition/house",
                Dioptres.of(21.5),
                Optional.empty(),
                TODAY.plusDays(inDays),
                location);
    }

    /** A free carton of the same lens in the north, good until so many days from today. */
    public static LensUnit unit(String name, int goodFor) {
        return unit(name, goodFor, NORTH, UnitState.AVAILABLE, Optional.empty());
    }

    public static LensUnit unit(String name, int goodFor, String location) {
        return unit(name, goodFor, location, UnitState.AVAILABLE, Optional.empty());
    }

    public static LensUnit held(String name, int goodFor, UnitState state, String booking) {
        return unit(name, goodFor, NORTH, state, Optional.of(booking));
    }

    public static LensUnit unit(String name, int goodFor, String location, UnitState state, Optional<String> heldFor) {
        return new LensUnit(
                new Evidence("Device/" + name, "1", ""),
                "DeviceDefinition/house",
                Dioptres.of(21.5),
                Optional.empty(),
                new LensUnit.Identity("00000000000000", Optional.empty(), Optional.of(name), TODAY.plusDays(goodFor)),
                location,
                HOSPITAL,
                state,
                heldFor);
    }

    /** The same carton with another power printed on it. */
    public static LensUnit ofPower(LensUnit unit, double power) {
        return new LensUnit(
                unit.evidence(),
                unit.model(),
                Dioptres.of(power),
                unit.cylinder(),
                unit.identity(),
                unit.location(),
                unit.owner(),
                unit.state(),
                unit.heldFor());
    }

    /** The same need of another power. */
    public static LensNeed ofPower(LensNeed need, double power) {
        return new LensNeed(
                need.booking(),
                need.role(),
                need.model(),
                Dioptres.of(power),
                need.cylinder(),
                need.day(),
                need.location());
    }
}
