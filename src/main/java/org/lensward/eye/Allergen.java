package org.lensward.eye;

import java.util.Locale;

/** Substances of the theatre that a patient may not tolerate. */
public enum Allergen {
    PENICILLIN,
    CEPHALOSPORIN,
    FLUOROQUINOLONE,
    AMINOGLYCOSIDE,
    VANCOMYCIN,
    IODINE,
    CHLORHEXIDINE,
    LATEX,
    SULPHONAMIDE,
    NON_STEROIDAL_ANTI_INFLAMMATORY,
    CORTICOSTEROID,
    AMIDE_ANAESTHETIC,
    ESTER_ANAESTHETIC,
    HYALURONIDASE,
    PHENYLEPHRINE,
    ADRENALINE,
    TRYPAN_BLUE,
    INDOCYANINE_GREEN,
    HYALURONATE;

    /** As a sentence says it. */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
