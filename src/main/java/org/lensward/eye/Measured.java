package org.lensward.eye;

import org.lensward.finding.Evidence;

/**
 * A value and where in the record it was read.
 *
 * @param value what was measured
 * @param evidence the resource and element that says so
 */
public record Measured<T>(T value, Evidence evidence) {}
