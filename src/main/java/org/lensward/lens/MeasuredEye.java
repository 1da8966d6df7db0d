package org.lensward.lens;

import java.util.List;
import java.util.Optional;
import org.lensward.eye.Biometry;
import org.lensward.eye.Measured;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.Outcome;
import org.lensward.optics.EyeShape;
import org.lensward.optics.SiliconeOil;
import org.lensward.optics.ThinEye;
import org.lensward.quantity.Dioptres;

/**
 * An eye ready to be computed.
 *
 * @param biometry as it was measured, corrected where sound was misled
 * @param oilStays where the record says that silicone oil stays in the eye
 */
public record MeasuredEye(Biometry biometry, Optional<Evidence> oilStays) {

    /** What a formula is told. */
    public EyeShape shape() {
        return new EyeShape(
                biometry.axialLength().value(),
                biometry.keratometry().value().meanRadius(),
                biometry.details().anteriorChamberDepth().map(Measured::value));
    }

    /** How much power oil asks for in this thin eye; what it has to say goes into the list, once. */
    Dioptres oil(ThinEye eye, List<Finding> found) {
        if (oilStays.isEmpty()) {
            return Dioptres.of(0);
        }
        Outcome<Dioptres> added = SiliconeOil.addedPower(eye, oilStays.get());
        added.findings().stream()
                .filter(finding -> found.stream().noneMatch(other -> other.code() == finding.code()))
                .forEach(found::add);
        return added.value().orElseThrow();
    }
}
