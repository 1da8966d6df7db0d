package org.lensward.risk.opening;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.lensward.eye.Eye;
import org.lensward.eye.Measured;
import org.lensward.finding.Evidence;
import org.lensward.lens.Focus;
import org.lensward.lens.LensModel;
import org.lensward.quantity.Millimetres;

/**
 * The opening as it was made.
 *
 * @param diameter of the opening
 * @param decentration of its centre from the lens's axis, whichever way
 * @param lens the lens planned
 * @param technique by which it was made
 */
record AchievedOpening(
        Measured<Millimetres> diameter,
        Optional<Measured<Millimetres>> decentration,
        LensModel lens,
        OpeningTechnique technique) {

    /** Nothing where the opening was not measured. */
    static Optional<AchievedOpening> of(Eye eye, LensModel lens, OpeningTechnique technique) {
        return eye.examination()
                .openingDiameter()
                .map(diameter -> new AchievedOpening(
                        diameter, eye.examination().openingDecentration().map(AchievedOpening::size), lens, technique));
    }

    private static Measured<Millimetres> size(Measured<Millimetres> signed) {
        return new Measured<>(signed.value().distanceTo(Millimetres.of(0)), signed.evidence());
    }

    Optional<Millimetres> optic() {
        return lens.opticDiameter().filter(optic -> optic.value() > 0);
    }

    Optional<Overlap> overlap() {
        return optic().flatMap(optic -> decentration.map(apart -> new Overlap(optic, diameter.value(), apart.value())));
    }

    /** Whether the catalogue says that the lens shares out the light; empty where it does not say. */
    Optional<Boolean> sharesLight() {
        return lens.design().focus().map(focus -> focus != Focus.MONOFOCAL);
    }

    List<Evidence> evidence() {
        return Stream.concat(Stream.of(diameter.evidence()), decentration.map(Measured::evidence).stream())
                .distinct()
                .toList();
    }
}
