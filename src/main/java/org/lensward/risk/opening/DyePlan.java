package org.lensward.risk.opening;

import java.util.Optional;
import org.lensward.quantity.PureNumber;

/**
 * The dye for this eye.
 *
 * @param preparation agent, concentration, contact time, wash-out and coat
 * @param timesUsual its concentration against the usual one, however it is spoken of
 * @param protocol the named local protocol that permits it; empty where it lies within the usual range
 */
public record DyePlan(DyePreparation preparation, PureNumber timesUsual, Optional<String> protocol) {}
