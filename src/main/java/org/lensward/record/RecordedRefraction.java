package org.lensward.record;

import org.lensward.finding.Evidence;
import org.lensward.outcome.Refraction;

/**
 * A refraction and where it is recorded.
 *
 * @param evidence the Observation
 * @param refraction what it says
 */
public record RecordedRefraction(Evidence evidence, Refraction refraction) {}
