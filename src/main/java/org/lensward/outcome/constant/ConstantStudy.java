package org.lensward.outcome.constant;

import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.math3.random.RandomGenerator;
import org.lensward.optics.FormulaName;
import org.lensward.optics.LensConstants;
import org.lensward.optics.ThinEye;
import org.lensward.outcome.Admitted;
import org.lensward.outcome.EyeTally;
import org.lensward.outcome.OutcomePolicy.LearningPolicy;

/**
 * Constants learnt from eyes as they pass, for each lens model and biometry method, of all surgeons and of each. One pass is enough: see
 * {@link PositionNodes}. Eyes of a model or method without constants in use teach nothing.
 */
public final class ConstantStudy implements EyeTally<ConstantStudy> {

    private final LearningPolicy policy;
    private final ConstantsInUse inUse;
    private final Map<Scope, ScopeTally> scopes = new HashMap<>();

    /** Of no eye yet. */
    public ConstantStudy(LearningPolicy policy, ConstantsInUse inUse) {
        this.policy = policy;
        this.inUse = inUse;
    }

    @Override
    public void add(Admitted admitted) {
        if (admitted instanceof Admitted.Counted eye) {
            Scope all = new Scope(
                    Optional.empty(), eye.eye().lens().model(), eye.biometry().method());
            inUse.of(all.model(), all.method()).ifPresent(constants -> learn(eye, all, constants));
        }
    }

    private void learn(Admitted.Counted eye, Scope all, LensConstants constants) {
        boolean asThen =
                eye.eye().before().constants().filter(constants::equals).isPresent();
        Map<FormulaName, ThinEye> seen = asThen ? eye.seen() : eye.seenWith(constants);
        Lesson lesson = Lesson.of(eye, seen);
        Scope own = new Scope(Optional.of(eye.eye().surgeon()), all.model(), all.method());
        tally(all, constants).add(eye, lesson);
        tally(own, constants).add(eye, lesson);
    }

    private ScopeTally tally(Scope scope, LensConstants constants) {
        return scopes.computeIfAbsent(scope, any -> new ScopeTally(constants));
    }

    @Override
    public void merge(ConstantStudy other) {
        other.scopes.forEach((scope, tally) -> tally(scope, tally.inUse()).merge(tally));
    }

    /**
     * What the eyes suggest. A constant that would lie more than 1 mm of lens position from the one in use is not proposed: something
     * else is wrong there.
     *
     * @param random for the bootstrap; the same state gives the same proposals
     * @return by model, method, surgeon (all surgeons first), formula and aim
     */
    public List<Proposal> proposals(RandomGenerator random) {
        Comparator<Scope> order = Comparator.comparing(Scope::model)
                .thenComparing(Scope::method)
                .thenComparing(scope -> scope.surgeon().orElse(""));
        return scopes.entrySet().stream()
                .sorted(Map.Entry.comparingByKey(order))
                .flatMap(each -> new ScopeProposals(each.getKey(), each.getValue(), policy).all(random).stream())
                .toList();
    }
}
