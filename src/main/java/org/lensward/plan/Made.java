package org.lensward.plan;

import java.util.Optional;
import org.lensward.risk.RuptureRisk;

/**
 * What was made of one case, before it is a plan.
 *
 * @param lens the lenses, where they may be proposed
 * @param rupture the capsule-rupture risk
 * @param theatre what the theatre does and has at hand
 */
record Made(Optional<LensPlan> lens, Optional<RuptureRisk> rupture, TheatrePlan theatre) {}
