package org.lensward.record.outcome;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import org.lensward.eye.BiometryMethod;
import org.lensward.lens.Catalogue;
import org.lensward.lens.LensModel;
import org.lensward.optics.FormulaName;
import org.lensward.optics.LensConstants;
import org.lensward.outcome.Admitted;
import org.lensward.outcome.EyeTally;
import org.lensward.outcome.OutcomePolicy;
import org.lensward.outcome.complication.ComplicationAudit;
import org.lensward.outcome.complication.ObservedExpected;
import org.lensward.outcome.constant.ConstantStudy;
import org.lensward.outcome.constant.ConstantsInUse;
import org.lensward.outcome.constant.Proposal;
import org.lensward.outcome.error.AuditReport;
import org.lensward.outcome.error.Group;
import org.lensward.outcome.error.RefractiveAudit;
import org.lensward.outcome.opening.OpeningCourse;
import org.lensward.outcome.opening.OpeningStudy;
import org.lensward.outcome.picture.AstigmatismGrid;
import org.lensward.outcome.picture.ErrorBins;
import org.lensward.outcome.picture.LengthBins;
import org.lensward.outcome.vector.AstigmatismStudy;
import org.lensward.outcome.vector.VectorSummary;
import org.lensward.quantity.Probability;

/**
 * Everything that operated eyes say: two goes through them, whatever their number.
 *
 * @param policy by which it was judged
 * @param period between which days the operations lie; empty where there is none
 * @param audit prediction errors, and the operations left out
 * @param unused what could not be read
 * @param proposals constants that the eyes suggest
 * @param ruptures of everyone; empty where no chance was foretold or no course told
 * @param surgeons ruptures of each surgeon
 * @param refittedBaseline the risk model's baseline that fits these eyes
 * @param course the cumulative sum, operation by operation
 * @param astigmatism of refractions after surgery; empty for fewer than three
 * @param openings how openings of the capsule fared, by technique and planned diameter
 * @param pictures what is drawn
 */
public record OutcomeStudy(
        OutcomePolicy policy,
        Optional<OutcomeReading.Period> period,
        AuditReport audit,
        UnusedCounts unused,
        List<Proposal> proposals,
        Optional<ObservedExpected> ruptures,
        SortedMap<String, ObservedExpected> surgeons,
        Optional<Probability> refittedBaseline,
        RuptureCourse course,
        Optional<VectorSummary> astigmatism,
        List<OpeningCourse> openings,
        Pictures pictures) {

    /** One and the same for everybody, so that the same eyes give the same figures. */
    private static final long SEED = 20261125;

    /**
     * Counts small enough to draw.
     *
     * @param formula whose errors are drawn: the one that scatters least
     * @param errors by their size
     * @param byLength by the length of the eye
     * @param astigmatism after surgery
     */
    public record Pictures(
            FormulaName formula,
            List<ErrorBins.Bin> errors,
            List<LengthBins.Bin> byLength,
            List<AstigmatismGrid.Cell> astigmatism) {}

    /**
     * Of eyes that were read.
     *
     * @param inUse the lens models that plans are made with today
     */
    public static OutcomeStudy of(OutcomeReading reading, OutcomePolicy policy, Catalogue inUse) throws IOException {
        StudyTally tally = EyeTally.over(
                reading.eyes(),
                policy,
                () -> new StudyTally(policy, (model, method) -> constants(inUse, model, method)));
        AuditReport audit = tally.audit().report();
        RandomGenerator dice = new Well19937c(SEED);
        FormulaName best = audit.of(Group.EVERYONE).stream()
                .map(each -> each.formula())
                .findFirst()
                .orElse(FormulaName.SRK_T);
        PictureTally drawn = EyeTally.over(reading.eyes(), policy, () -> new PictureTally(best));
        return new OutcomeStudy(
                policy,
                reading.period(),
                audit,
                reading.unused(),
                tally.constants().proposals(dice),
                tally.complications().everyone(),
                tally.complications().surgeons(),
                tally.complications().refittedBaseline(),
                RuptureCourse.of(reading.days(), policy.complications(), dice),
                tally.vectors().after(),
                tally.openings().courses(),
                drawn.pictures());
    }

    private static Optional<LensConstants> constants(Catalogue inUse, String model, BiometryMethod method) {
        return inUse.models().stream()
                .filter(lens -> lens.evidence().resource().equals(model))
                .findFirst()
                .flatMap((LensModel lens) -> lens.constantsFor(method));
    }

    /** One go for audit, constants and complications. */
    private record StudyTally(
            RefractiveAudit audit,
            ConstantStudy constants,
            ComplicationAudit complications,
            AstigmatismStudy vectors,
            OpeningStudy openings)
            implements EyeTally<StudyTally> {

        StudyTally(OutcomePolicy policy, ConstantsInUse inUse) {
            this(
                    new RefractiveAudit(policy.groups()),
                    new ConstantStudy(policy.learning(), inUse),
                    new ComplicationAudit(policy.complications()),
                    new AstigmatismStudy(),
                    new OpeningStudy(policy.groups()));
        }

        @Override
        public void add(Admitted admitted) {
            audit.add(admitted);
            constants.add(admitted);
            complications.add(admitted);
            vectors.add(admitted);
            openings.add(admitted);
        }

        @Override
        public void merge(StudyTally other) {
            audit.merge(other.audit);
            constants.merge(other.constants);
            complications.merge(other.complications);
            vectors.merge(other.vectors);
            openings.merge(other.openings);
        }
    }

    /** A second go, for the formula that the first found best. */
    private record PictureTally(FormulaName formula, ErrorBins errors, LengthBins byLength, AstigmatismGrid astigmatism)
            implements EyeTally<PictureTally> {

        PictureTally(FormulaName formula) {
            this(formula, new ErrorBins(formula), new LengthBins(formula), new AstigmatismGrid());
        }

        @Override
        public void add(Admitted admitted) {
            errors.add(admitted);
            byLength.add(admitted);
            astigmatism.add(admitted);
        }

        @Override
        public void merge(PictureTally other) {
            errors.merge(other.errors);
            byLength.merge(other.byLength);
            astigmatism.merge(other.astigmatism);
        }

        Pictures pictures() {
            return new Pictures(formula, errors.bins(), byLength.bins(), astigmatism.cells());
        }
    }
}
