package org.lensward.risk.preparation;

import org.lensward.finding.Coded;

/** What a precaution is about, in the order in which a team works through them. */
public enum Topic implements Coded {
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
}
