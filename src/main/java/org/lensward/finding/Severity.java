package org.lensward.finding;

/** How far a finding reaches into the plan, strongest first. */
public enum Severity {
    /** No lens may be proposed until the remedy is done. */
    WITHHOLDS,
    /** The plan holds only when a named person has settled this. */
    CONDITION,
    /** The plan stands; the team prepares for this. */
    CAUTION,
    /** Worth knowing; nothing to do. */
    NOTE
}
