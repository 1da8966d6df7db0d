package org.lensward.finding;

import java.util.List;

/** Findings for tests. */
final class Findings {

    static final Evidence SOMEWHERE = new Evidence("Observation/al-1", "3", "valueQuantity");

    /** One of each severity, none with particulars. */
    static final Finding WITHHOLDING = Finding.of(FindingCode.BOOKING_WITHOUT_EYE, SOMEWHERE);

    static final Finding CAUTIONING = Finding.of(FindingCode.CORNEAL_HEIGHT_CUSP, SOMEWHERE);
    static final Finding NOTING = Finding.of(FindingCode.FELLOW_EYE_NOT_MEASURED, SOMEWHERE);
    static final List<Finding> ALL = List.of(WITHHOLDING, CAUTIONING, NOTING);

    private Findings() {}
}
