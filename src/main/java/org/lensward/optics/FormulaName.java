package org.lensward.optics;

/** The published formulas, by their names in the literature. */
public enum FormulaName {
    SRK_T("SRK/T"),
    T2("T2"),
    HOLLADAY_1("Holladay 1"),
    HOFFER_Q("Hoffer Q"),
    HAIGIS("Haigis"),
    HAIGIS_L("Haigis-L"),
    SHAMMAS_MYOPIC("Shammas-PL"),
    SHAMMAS_HYPEROPIC("Shammas-PHL");

    private final String published;

    FormulaName(String published) {
        this.published = published;
    }

    /** The name its authors gave it. */
    @Override
    public String toString() {
        return published;
    }
}
