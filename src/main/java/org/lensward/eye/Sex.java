package org.lensward.eye;

/** As far as the risk model asks. */
public enum Sex {
    FEMALE,
    MALE,
    UNKNOWN
}
