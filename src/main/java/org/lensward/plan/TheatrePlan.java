package org.lensward.plan;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.risk.opening.OpeningJudgement;
import org.lensward.risk.opening.OpeningPlan;
import org.lensward.risk.preparation.BringList;
import org.lensward.risk.preparation.Precaution;
import org.lensward.risk.preparation.Preparation;
import org.lensward.risk.preparation.Suitability;

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
        BringList bring) {

    /** Everything found on the way. An opening as it should be says nothing. */
    List<Finding> findings() {
        return Stream.of(
                        opening.stream().flatMap(each -> each.findings().stream()),
                        asMade.stream().flatMap(each -> each.findings().stream()),
                        preparation.stream().flatMap(each -> each.findings().stream()))
                .flatMap(each -> each)
                .toList();
    }

    /** Every fact that a precaution or a lens type rests on. */
    Stream<Evidence> evidence() {
        return preparation.stream()
                .flatMap(each -> Stream.concat(
                        each.precautions().stream().map(Precaution::evidence),
                        each.lensTypes().stream().map(Suitability::judgement).map(judged -> judged.evidence())))
                .flatMap(List::stream);
    }
}
