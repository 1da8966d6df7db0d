package org.lensward.risk.opening;

import static org.lensward.risk.opening.OpeningTechnique.DYE_LASER_COAGULATION;

import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.lensward.eye.Eye;
import org.lensward.eye.Person;
import org.lensward.lens.LensModel;

/** Plans how the capsule of one eye is opened: every technique weighed, the first of the policy's order that suits, its size and dye. */
public final class OpeningPlanner {

    private final OpeningPolicy policy;
    private final TechniqueWeighing weighing;
    private final OpeningSizes sizes;
    private final DyeChoice dyes;

    public OpeningPlanner(OpeningPolicy policy) {
        this.policy = policy;
        this.weighing = new TechniqueWeighing(policy);
        this.sizes = new OpeningSizes(policy);
        this.dyes = new DyeChoice(policy.dye());
    }

    /**
     * The opening of this eye's capsule.
     *
     * @param person whose eye it is
     * @param eye the eye to be operated on
     * @param lens the model to go in
     */
    public OpeningPlan plan(Person person, Eye eye, LensModel lens) {
        OpeningCase which = new OpeningCase(person, eye, lens);
        List<TechniqueView> views = Stream.of(OpeningTechnique.values())
                .map(technique -> weighing.weigh(technique, which))
                .toList();
        Optional<TechniqueView> chosen = choose(views, which.facts());
        Optional<OpeningTechnique> technique = chosen.map(TechniqueView::technique);
        Optional<OpeningSize> size = technique.flatMap(each -> sizes.plan(each, which));
        Optional<DyePlan> dye = technique.flatMap(each -> dye(each, which));
        return new OpeningPlan(
                technique,
                size,
                views,
                dye,
                technique.map(each -> OpeningSteps.of(each, size, which, dye)).orElse(List.of()),
                technique
                        .map(each -> OpeningThings.of(each, which, dye.or(() -> atHand(which))))
                        .orElse(List.of()),
                new OpeningFindings(policy).of(which, chosen, size, dye));
    }

    /** What suits comes before what is open; within each, the hospital's order for such an eye. */
    private Optional<TechniqueView> choose(List<TechniqueView> views, CapsuleFacts facts) {
        List<OpeningTechnique> order = facts.mayBeUnderPressure()
                ? policy.pressureOrder()
                : facts.weaklyHeld().yes() ? policy.weakZonulesOrder() : policy.usualOrder();
        return first(order, views, view -> view.verdict().suits())
                .or(() -> first(order, views, view -> view.verdict() == Verdict.UNKNOWN));
    }

    private static Optional<TechniqueView> first(
            List<OpeningTechnique> order, List<TechniqueView> views, Predicate<TechniqueView> wanted) {
        return order.stream()
                .flatMap(technique -> views.stream().filter(view -> view.technique() == technique))
                .filter(wanted)
                .findFirst();
    }

    private Optional<DyePlan> dye(OpeningTechnique technique, OpeningCase which) {
        if (technique == DYE_LASER_COAGULATION) {
            return Optional.of(dyes.forLaser());
        }
        return which.facts().redReflexLost().yes() ? dyes.forSight(which) : Optional.empty();
    }

    /** A dye for the case that the red reflex, of which the record is silent, turns out to be lost. */
    private Optional<DyePlan> atHand(OpeningCase which) {
        return which.facts().redReflexLost().open() ? dyes.forSight(which) : Optional.empty();
    }
}
