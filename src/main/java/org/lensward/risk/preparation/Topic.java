package org.lensward.risk.preparation;

import java.util.Locale;

/** What a precaution is about, in the order in which a team works through them. */
public enum Topic {
    ALLERGIES,
    LATEX,
    BLEEDING,
    ANAESTHETIC,
    POSITION,
    LIDS,
    ANTISEPTIC,
    PRESSURE_BEFORE,
    CHAMBER,
    PUPIL,
    OPENING,
    WHITE_LENS,
    ZONULES,
    NUCLEUS,
    ENDOTHELIUM,
    MACULA,
    RETINA,
    ANTIBIOTIC,
    PRESSURE_AFTER;

    /** As the record carries it. */
    public String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
