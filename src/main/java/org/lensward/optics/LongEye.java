package org.lensward.optics;

import static org.lensward.finding.FindingCode.AXIAL_LENGTH_ADJUSTED;

import java.util.List;
import java.util.Optional;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.Outcome;
import org.lensward.quantity.Millimetres;

/**
 * A formula that is told a long eye's adjusted length; the papers of {@link LongEyeAdjustment} enter it into the whole formula, lens
 * position and vergence alike.
 *
 * @param formula the formula as published
 * @param adjustment which paper
 */
public record LongEye(Formula formula, LongEyeAdjustment adjustment) implements Formula {

    @Override
    public FormulaName name() {
        return formula.name();
    }

    @Override
    public Outcome<ThinEye> see(EyeShape shape, LensConstants constants, Evidence evidence) {
        Optional<Millimetres> adjusted = adjustment.adjust(name(), shape.axialLength());
        if (adjusted.isEmpty()) {
            return formula.see(shape, constants, evidence);
        }
        Finding finding = Finding.of(
                AXIAL_LENGTH_ADJUSTED,
                evidence,
                name(),
                adjusted.get().rounded(),
                shape.axialLength().rounded(),
                adjustment);
        return Outcome.ready(shape.withAxialLength(adjusted.get()), List.of(finding))
                .then(shorter -> formula.see(shorter, constants, evidence));
    }
}
