package org.lensward.outcome;

import java.util.List;
import java.util.Set;
import org.lensward.eye.Limit;
import org.lensward.quantity.Days;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.Probability;
import org.lensward.quantity.PureNumber;

/**
 * Which eyes count, and what is learnt from how many. Every value is a default that a hospital can replace.
 *
 * @param version changes whenever anything in the policy does
 * @param refraction which refraction counts
 * @param eyes which eyes count
 * @param groups how eyes are grouped
 * @param learning what constants may be learnt from
 * @param complications how complications are watched
 */
public record OutcomePolicy(
        String version,
        RefractionPolicy refraction,
        EyePolicy eyes,
        GroupPolicy groups,
        LearningPolicy learning,
        ComplicationPolicy complications) {

    public OutcomePolicy {
        if (version.isBlank()) {
            throw new IllegalArgumentException("An outcome policy has a version");
        }
    }

    /**
     * Which refraction counts.
     *
     * @param earliest days after surgery from which a refraction counts
     * @param latest days after surgery up to which it counts
     * @param preferred of several in the window, the nearest to this day is taken
     * @param poorestAcuity decimal acuity below which a refraction is not to be relied on
     * @param acuityNeeded whether a refraction without an acuity is left out
     * @param objectiveCounts whether an objective refraction counts where there is no subjective one
     * @param usualVertex the vertex distance taken where none was recorded and it does not matter
     * @param vertexMattersFrom spheres of this size and more need their vertex distance
     */
    public record RefractionPolicy(
            Limit<Days> earliest,
            Limit<Days> latest,
            Limit<Days> preferred,
            Limit<PureNumber> poorestAcuity,
            boolean acuityNeeded,
            boolean objectiveCounts,
            Limit<Millimetres> usualVertex,
            Limit<Dioptres> vertexMattersFrom) {}

    /**
     * Which eyes count.
     *
     * @param onePerPatient whether only the first countable eye of each patient counts
     * @param disturbing complications that exclude an eye from the refractive audit
     */
    public record EyePolicy(boolean onePerPatient, Set<Complication> disturbing) {
        public EyePolicy {
            disturbing = Set.copyOf(disturbing);
        }
    }

    /**
     * How eyes are grouped.
     *
     * @param lengths axial lengths at which a band ends and the next begins, ascending
     * @param within distances from the prediction that are counted, ascending
     * @param followUps days after surgery at which a follow-up period of the capsule's opening ends and the next begins, ascending
     * @param fewest groups of fewer eyes are shown without figures, so that no one is recognised and none is misled
     */
    public record GroupPolicy(
            List<Limit<Millimetres>> lengths,
            List<Limit<Dioptres>> within,
            List<Limit<Days>> followUps,
            Limit<PureNumber> fewest) {
        public GroupPolicy {
            lengths = List.copyOf(lengths);
            within = List.copyOf(within);
            followUps = List.copyOf(followUps);
        }
    }

    /**
     * What constants may be learnt from.
     *
     * @param fewestForOne eyes for one constant
     * @param fewestForThree eyes for Haigis' three
     * @param betweenSurgeons standard deviation of true constants, in mm of lens position, from one surgeon or model to the next; the
     *     prior of the shrinkage
     * @param replicates of a bootstrap
     * @param confidence of intervals
     */
    public record LearningPolicy(
            Limit<PureNumber> fewestForOne,
            Limit<PureNumber> fewestForThree,
            Limit<Millimetres> betweenSurgeons,
            Limit<PureNumber> replicates,
            Limit<Probability> confidence) {}

    /**
     * How complications are watched.
     *
     * @param standard the rate to compare with
     * @param odds the odds ratio that the cumulative sum is tuned to find, above 1; its inverse for the lower arm
     * @param falseAlarms chance that a unit of average performance crosses the limit within the horizon
     * @param horizon operations over which that chance is held
     * @param simulations series simulated to find the limit
     */
    public record ComplicationPolicy(
            Limit<Probability> standard,
            Limit<PureNumber> odds,
            Limit<Probability> falseAlarms,
            Limit<PureNumber> horizon,
            Limit<PureNumber> simulations) {}
}
