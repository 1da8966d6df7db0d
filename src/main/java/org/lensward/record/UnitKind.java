package org.lensward.record;

import java.util.Map;
import java.util.Optional;

/**
 * The units a kind of measurement may come in, as UCUM codes, with the factor to our unit; and spellings seen in the wild that are not
 * valid UCUM but leave no doubt.
 */
public enum UnitKind {
    NONE("", Map.of(), Map.of()),
    LENGTH("mm", Map.of("mm", 1.0, "um", 0.001, "cm", 10.0), Map.of("millimeter", 1.0, "millimetre", 1.0)),
    POWER("[diop]", Map.of("[diop]", 1.0), Map.of("D", 1.0, "dpt", 1.0, "diop", 1.0, "diopter", 1.0, "dioptre", 1.0)),
    ANGLE("deg", Map.of("deg", 1.0), Map.of("[deg]", 1.0, "°", 1.0, "degree", 1.0, "degrees", 1.0)),
    VELOCITY("m/s", Map.of("m/s", 1.0), Map.of()),
    DURATION("d", Map.of("d", 1.0, "wk", 7.0), Map.of("day", 1.0, "days", 1.0)),
    PRESSURE("mm[Hg]", Map.of("mm[Hg]", 1.0), Map.of("mmHg", 1.0)),
    DENSITY("/mm2", Map.of("/mm2", 1.0, "{cells}/mm2", 1.0), Map.of("cells/mm2", 1.0)),
    ACUITY("{logMAR}", Map.of("{logMAR}", 1.0), Map.of("logMAR", 1.0)),
    NUMBER("1", Map.of("1", 1.0, "{ratio}", 1.0, "{index}", 1.0, "{INR}", 1.0), Map.of());

    private final String ours;
    private final Map<String, Double> valid;
    private final Map<String, Double> seen;

    UnitKind(String ours, Map<String, Double> valid, Map<String, Double> seen) {
        this.ours = ours;
        this.valid = valid;
        this.seen = seen;
    }

    /** The unit we compute in. */
    public String ours() {
        return ours;
    }

    /** Whether the unit is a valid UCUM code for this kind. */
    public boolean valid(String unit) {
        return valid.containsKey(unit);
    }

    /** The factor to our unit; empty for a unit nobody should guess. */
    public Optional<Double> factor(String unit) {
        return Optional.ofNullable(valid.getOrDefault(unit, seen.get(unit)));
    }

    /** What may be sent, for a message. */
    public String accepted() {
        return String.join(", ", valid.keySet().stream().sorted().toList());
    }
}
