package org.lensward.optics.length;

import static org.lensward.finding.FindingCode.LENGTH_CORRECTED_FOR_CONTACT;

import java.util.List;
import org.lensward.eye.Measured;
import org.lensward.finding.Finding;
import org.lensward.finding.Outcome;
import org.lensward.optics.Spread;
import org.lensward.quantity.Millimetres;

/** A probe that touches the cornea presses the eye short. */
public final class ContactUltrasound {

    private static final double SHORTER = 0.20;

    private ContactUltrasound() {}

    /** How single contact readings differ from immersion about the mean of 0.20 mm: 0.26 mm (secondary source). */
    public static Spread<Millimetres> spread() {
        return new Spread<>(
                Millimetres.of(0.26), "contact reads 0.20 +- 0.26 mm shorter than immersion; secondary source");
    }

    /** The length by immersion to expect on average, with the finding that asks for a better one. */
    public static Outcome<Millimetres> corrected(Measured<Millimetres> reading) {
        Millimetres longer = reading.value().plus(Millimetres.of(SHORTER));
        Finding finding = Finding.of(
                LENGTH_CORRECTED_FOR_CONTACT,
                reading.evidence(),
                reading.value().rounded(),
                longer.rounded(),
                spread().deviation().rounded());
        return Outcome.ready(longer, List.of(finding));
    }
}
