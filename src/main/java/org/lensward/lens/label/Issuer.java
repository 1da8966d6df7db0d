package org.lensward.lens.label;

/** The agency under whose rules a device identifier was given. */
public enum Issuer {
    /** GS1: a GTIN of 14 digits. */
    GS1,
    /** Health Industry Business Communications Council: labeler, product and unit of measure. */
    HIBC
}
