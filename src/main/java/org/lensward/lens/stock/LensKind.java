package org.lensward.lens.stock;

import java.util.Comparator;
import java.util.Optional;
import org.lensward.quantity.Dioptres;

/**
 * What is printed on the carton apart from what tells single lenses apart: cartons of one kind can stand in for each other.
 *
 * @param model the catalogue entry
 * @param power as labelled, signed; minus nought is nought
 * @param cylinder as labelled, for a toric lens
 */
public record LensKind(String model, Dioptres power, Optional<Dioptres> cylinder) implements Comparable<LensKind> {

    private static final Comparator<LensKind> ORDER = Comparator.comparing(LensKind::model)
            .thenComparing(LensKind::power)
            .thenComparing(kind -> kind.cylinder().map(Dioptres::value).orElse(-1.0));

    public LensKind {
        power = unsigned(power);
        cylinder = cylinder.map(LensKind::unsigned);
    }

    public static LensKind of(LensNeed need) {
        return new LensKind(need.model(), need.power(), need.cylinder());
    }

    public static LensKind of(LensUnit unit) {
        return new LensKind(unit.model(), unit.power(), unit.cylinder());
    }

    /** The same model and cylinder in another power. */
    public LensKind withPower(Dioptres other) {
        return new LensKind(model, other, cylinder);
    }

    private static Dioptres unsigned(Dioptres power) {
        return power.value() == 0 ? Dioptres.of(0) : power;
    }

    @Override
    public int compareTo(LensKind other) {
        return ORDER.compare(this, other);
    }

    /** As a message says it: model, power and cylinder. */
    @Override
    public String toString() {
        return model + " " + power.signed()
                + cylinder.map(c -> " cylinder " + c.rounded()).orElse("");
    }
}
