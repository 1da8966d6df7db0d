package org.lensward.plan;

import java.util.Optional;
import org.lensward.risk.opening.OpeningJudgement;
import org.lensward.risk.opening.OpeningPlan;
import org.lensward.risk.preparation.BringList;
import org.lensward.risk.preparation.Preparation;

/**
 * What the theatre does and has at hand for one eye, besides the lens.
 *
 * @param opening how the capsule is to be opened; empty where no lens is proposed
 * @param asMade what the opening, once it was made and measured, means for the lens
 * @param preparation precautions, anaesthetic and agents; empty where the eye or the day is not known
 * @param bring all that has to lie ready
 */
public record TheatrePlan(
        Optional<OpeningPlan> opening,
        Optional<OpeningJudgement> asMade,
        Optional<Preparation> preparation,
        BringList bring) {}
