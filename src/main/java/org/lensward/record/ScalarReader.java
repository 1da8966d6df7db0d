package org.lensward.record;

import static org.lensward.finding.FindingCode.UNIT_NORMALISED;
import static org.lensward.finding.FindingCode.UNIT_UNKNOWN;
import static org.lensward.finding.FindingCode.VALUE_IMPLAUSIBLE;
import static org.lensward.finding.FindingCode.VALUE_MISSING;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.hl7.fhir.r4.model.Quantity;
import org.lensward.eye.Measured;
import org.lensward.finding.Finding;

/** Turns a value as it was sent into a number in our unit, or says why it cannot. */
final class ScalarReader {

    private final List<Finding> found;

    ScalarReader(List<Finding> found) {
        this.found = found;
    }

    /** The group's value under that code, as {@link #read(MeasurementCode, Scalar)}; empty without a finding where it has none. */
    Optional<Measured<Double>> read(MeasurementGroup group, MeasurementCode code) {
        return Optional.ofNullable(group.scalars().get(code))
                .flatMap(scalar -> read(code, scalar).map(value -> new Measured<>(value, scalar.evidence())));
    }

    /** The number in the measurement's own unit; empty, with a finding, where it is missing, in an unknown unit or no eye's. */
    Optional<Double> read(MeasurementCode code, Scalar scalar) {
        // "Less than 22 mm" is no length to compute with.
        if (!(scalar.value() instanceof Quantity quantity) || !quantity.hasValue() || quantity.hasComparator()) {
            found.add(Finding.of(VALUE_MISSING, scalar.evidence(), code.words()));
            return Optional.empty();
        }
        String unit = unit(quantity);
        Optional<Double> factor = code.kind().factor(unit);
        if (factor.isEmpty()) {
            found.add(Finding.of(
                    UNIT_UNKNOWN,
                    scalar.evidence().at(scalar.evidence().field() + ".code"),
                    code.words(),
                    unit,
                    code.kind().accepted()));
            return Optional.empty();
        }
        if (!code.kind().valid(unit)) {
            found.add(Finding.of(
                    UNIT_NORMALISED,
                    scalar.evidence(),
                    code.words(),
                    unit,
                    code.kind().ours()));
        }
        return plausible(code, scalar, quantity.getValue().doubleValue() * factor.get());
    }

    private static String unit(Quantity quantity) {
        if (quantity.hasCode()) {
            return quantity.getCode();
        }
        return quantity.hasUnit() ? quantity.getUnit() : "";
    }

    private Optional<Double> plausible(MeasurementCode code, Scalar scalar, double value) {
        if (value >= code.least() && value <= code.most()) {
            return Optional.of(value);
        }
        String unit = code.kind().ours();
        found.add(Finding.of(
                VALUE_IMPLAUSIBLE,
                scalar.evidence(),
                code.words(),
                String.format(Locale.ROOT, "%s %s", value, unit),
                String.format(Locale.ROOT, "%s", code.least()),
                String.format(Locale.ROOT, "%s %s", code.most(), unit)));
        return Optional.empty();
    }
}
