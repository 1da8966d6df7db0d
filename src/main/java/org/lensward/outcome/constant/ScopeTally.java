package org.lensward.outcome.constant;

import java.util.List;
import org.apache.commons.math3.linear.RealVector;
import org.lensward.optics.FormulaName;
import org.lensward.optics.Formulas;
import org.lensward.optics.LensConstants;
import org.lensward.outcome.Admitted.Counted;
import org.lensward.outcome.PatientBlocks;

/** What the eyes of one scope say of its constants, as they pass. */
final class ScopeTally {

    static final List<FormulaName> FORMULAS =
            Formulas.all().stream().map(formula -> formula.name()).toList();

    /** Where Haigis' sums begin. */
    static final int HAIGIS = FORMULAS.size() * PositionErrors.WIDTH;

    private final LensConstants inUse;
    private final PatientBlocks blocks = new PatientBlocks(HAIGIS + HaigisSums.WIDTH);

    ScopeTally(LensConstants inUse) {
        this.inUse = inUse;
    }

    LensConstants inUse() {
        return inUse;
    }

    PatientBlocks blocks() {
        return blocks;
    }

    /** Where a formula's sums begin. */
    static int place(FormulaName formula) {
        return FORMULAS.indexOf(formula) * PositionErrors.WIDTH;
    }

    void add(Counted eye, Lesson lesson) {
        RealVector sums = blocks.of(eye.eye().keys());
        for (int each = 0; each < FORMULAS.size(); each++) {
            if (lesson.errors()[each].length > 0) {
                PositionErrors.add(sums, each * PositionErrors.WIDTH, lesson.errors()[each]);
            }
        }
        if (lesson.haigis().length > 0) {
            HaigisSums.add(sums, HAIGIS, lesson.haigis(), lesson.slope());
        }
    }

    void merge(ScopeTally other) {
        blocks.merge(other.blocks);
    }
}
