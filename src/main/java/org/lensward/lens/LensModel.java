package org.lensward.lens;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.lensward.eye.BiometryMethod;
import org.lensward.finding.Evidence;
import org.lensward.optics.LensConstants;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;

/**
 * A lens model of the hospital's catalogue.
 *
 * @param evidence the model's definition in the record
 * @param name as the hospital calls it
 * @param site where it sits
 * @param houseLens whether the hospital uses it where the booking names none
 * @param opticDiameter of its optic
 * @param ranges the powers it is made in
 * @param cylinders labelled cylinders at the lens plane, for a toric model; none otherwise
 * @param constants its constants for each biometry method; never shared across methods
 * @param design how it is built, as far as the catalogue says
 */
public record LensModel(
        Evidence evidence,
        String name,
        LensSite site,
        boolean houseLens,
        Optional<Millimetres> opticDiameter,
        List<PowerRange> ranges,
        List<Dioptres> cylinders,
        Map<BiometryMethod, LensConstants> constants,
        LensDesign design) {

    public LensModel {
        ranges = List.copyOf(ranges);
        cylinders = List.copyOf(cylinders);
        constants = Map.copyOf(constants);
        if (cylinders.stream().anyMatch(cylinder -> cylinder.value() < 0)) {
            throw new IllegalArgumentException("its cylinders " + cylinders + " are not plus cylinders");
        }
    }

    /** A model without cylinders. */
    public LensModel(
            Evidence evidence,
            String name,
            LensSite site,
            boolean houseLens,
            Optional<Millimetres> opticDiameter,
            List<PowerRange> ranges,
            Map<BiometryMethod, LensConstants> constants) {
        this(evidence, name, site, houseLens, opticDiameter, ranges, List.of(), constants, LensDesign.unknown());
    }

    /** The same model, built like that. */
    public LensModel of(LensDesign other) {
        return new LensModel(evidence, name, site, houseLens, opticDiameter, ranges, cylinders, constants, other);
    }

    public boolean isToric() {
        return !cylinders.isEmpty();
    }

    /** Every labelled power, ascending, each once. */
    public List<Dioptres> powers() {
        return ranges.stream()
                .flatMap(range -> range.powers().stream())
                .distinct()
                .sorted()
                .toList();
    }

    public Optional<LensConstants> constantsFor(BiometryMethod method) {
        return Optional.ofNullable(constants.get(method));
    }
}
