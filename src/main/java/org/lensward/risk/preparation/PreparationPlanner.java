package org.lensward.risk.preparation;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.lensward.eye.Eye;
import org.lensward.eye.Person;
import org.lensward.finding.Finding;
import org.lensward.lens.LensModel;
import org.lensward.risk.Bring;

/** How an eye is prepared by the hospital's policy. What the record does not say is a question, never a no. */
public final class PreparationPlanner {

    private final PreparationPolicy policy;
    private final AnaestheticPlanner anaesthetics;
    private final LensTypePlanner lensTypes;

    public PreparationPlanner(PreparationPolicy policy) {
        this.policy = policy;
        this.anaesthetics = new AnaestheticPlanner(policy.anaesthetic());
        this.lensTypes = new LensTypePlanner(policy.lensTypes());
    }

    /**
     * The preparation of one operation.
     *
     * @param person whose eye it is
     * @param eye to be operated on
     * @param operation the day, by which age and the age of the INR are counted
     * @param planned the lens model to implant, where one is planned
     */
    public Preparation plan(Person person, Eye eye, LocalDate operation, Optional<LensModel> planned) {
        return plan(person, eye, operation, planned, List.of());
    }

    /** Likewise, with what the opening of its capsule asks for. */
    public Preparation plan(
            Person person, Eye eye, LocalDate operation, Optional<LensModel> planned, Collection<Bring> opening) {
        Facts facts = new Facts(person, eye, operation);
        Sheet sheet = new Sheet(facts, new Formulary(policy.agents()));
        AnaestheticChoice anaesthetic = anaesthetics.choose(sheet);
        steps(anaesthetic, opening).forEach(step -> step.write(sheet));
        List<Suitability> suitabilities = lensTypes.judge(facts);
        List<Finding> findings = new ArrayList<>(sheet.findings());
        planned.ifPresent(model -> findings.addAll(LensTypePlanner.check(model, suitabilities)));
        return new Preparation(
                sheet.precautions().stream()
                        .sorted(Comparator.comparing(Precaution::topic))
                        .toList(),
                anaesthetic,
                sheet.choices(),
                nucleus().options(facts),
                suitabilities,
                findings);
    }

    /** What of the opening's things this planner leaves as they are; the rest it chooses by allergy. */
    public static List<Bring> untouched(Collection<Bring> opening) {
        return opening.stream().filter(each -> !OpeningCare.isAgent(each)).toList();
    }

    private List<Step> steps(AnaestheticChoice anaesthetic, Collection<Bring> opening) {
        return List.of(
                new AllergyCare(),
                new BleedingCare(policy.anaesthetic()),
                new AnaestheticCare(anaesthetics, anaesthetic),
                new InfectionCare(),
                new PressureCare(policy.front()),
                new PupilCare(policy.front()),
                new OpeningCare(opening),
                new WhiteLensCare(),
                new ZonuleCare(policy.support()),
                nucleus(),
                new EndotheliumCare(policy.front()),
                new BackCare(policy.retina()));
    }

    private NucleusCare nucleus() {
        return new NucleusCare(policy.support(), policy.front());
    }
}
