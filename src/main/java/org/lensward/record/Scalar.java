package org.lensward.record;

import org.hl7.fhir.r4.model.Type;
import org.jspecify.annotations.Nullable;
import org.lensward.finding.Evidence;

/**
 * One value as it stands in an Observation or a component of it.
 *
 * @param value whatever the sender put there; nothing if it put nothing
 * @param evidence where it stands
 */
record Scalar(@Nullable Type value, Evidence evidence) {}
