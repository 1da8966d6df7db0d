package org.lensward.plan;

import java.util.List;
import java.util.Optional;
import org.lensward.eye.Eye;
import org.lensward.lens.LensModel;
import org.lensward.risk.Bring;
import org.lensward.risk.opening.OpeningJudgement;
import org.lensward.risk.opening.OpeningPlan;
import org.lensward.risk.opening.OpeningPlanner;
import org.lensward.risk.opening.OpeningReview;
import org.lensward.risk.opening.OpeningTechnique;
import org.lensward.risk.preparation.BringList;
import org.lensward.risk.preparation.Preparation;
import org.lensward.risk.preparation.PreparationPlanner;

/** Plans what the theatre does and has at hand for one eye: opening, precautions, anaesthetic, things to bring. */
final class TheatrePlanner {

    private final OpeningPlanner openings;
    private final OpeningReview reviews;
    private final PreparationPlanner preparations;

    TheatrePlanner(Policy policy) {
        this.openings = new OpeningPlanner(policy.opening());
        this.reviews = new OpeningReview(policy.opening());
        this.preparations = new PreparationPlanner(policy.preparation());
    }

    TheatrePlan plan(PlanningCase booked, Optional<LensPlan> lens) {
        Optional<LensModel> model = lens.map(plan -> plan.kit().primary().model());
        Optional<OpeningPlan> opening =
                booked.eye().flatMap(eye -> model.map(each -> openings.plan(booked.person(), eye, each)));
        List<Bring> things = opening.map(OpeningPlan::things).orElse(List.of());
        Optional<Preparation> preparation = booked.eye().flatMap(eye -> booked.booking()
                .operation()
                .map(day -> preparations.plan(booked.person(), eye, day, model, things)));
        BringList bring = preparation
                .map(Preparation::bring)
                .orElseGet(() -> BringList.ofEye(List.of()))
                .and(PreparationPlanner.untouched(things));
        return new TheatrePlan(
                opening,
                opening.flatMap(OpeningPlan::technique)
                        .flatMap(technique -> booked.eye().flatMap(eye -> asMade(eye, model, technique))),
                preparation,
                lens.map(plan -> bring.and(plan.kit())).orElse(bring));
    }

    private Optional<OpeningJudgement> asMade(Eye eye, Optional<LensModel> model, OpeningTechnique technique) {
        return model.flatMap(each -> reviews.judge(eye, each, technique));
    }
}
