package org.lensward.optics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.lensward.finding.FindingCode.OIL_POWER_ADDED;
import static org.lensward.optics.OpticsSpecimen.SOMEWHERE;

import org.apache.commons.math3.analysis.solvers.BisectionSolver;
import org.junit.jupiter.api.Test;
import org.lensward.finding.Finding;
import org.lensward.quantity.Dioptres;

class SiliconeOilTest {

    /** The extra power that puts the image back on the retina in a medium of index 1.4034, found by bisection with Commons Math. */
    @Test
    void the_added_power_puts_the_image_back_on_the_retina() {
        ThinEye eye = OpticsSpecimen.thin(5.2, 23.5, 43);
        double power = eye.power(Dioptres.of(0)).value();
        double atLens = 1336 / (1336.0 / 43 - 5.2);
        double needed =
                new BisectionSolver(1e-10).solve(200, p -> 1403.4 / (atLens + p) - (23.5 - 5.2), power, power + 10);
        var added = SiliconeOil.addedPower(eye, SOMEWHERE);
        assertThat(added.value().orElseThrow().value()).isCloseTo(needed - power, within(1e-8));
        assertThat(added.findings()).extracting(Finding::code).containsExactly(OIL_POWER_ADDED);
    }

    /** "About 3 to 3.5 D more" for an average eye is common practice, no source. */
    @Test
    void an_average_eye_needs_three_to_four_dioptres_more() {
        var added = SiliconeOil.addedPower(OpticsSpecimen.thin(5.2, 23.5, 43), SOMEWHERE);
        assertThat(added.value().orElseThrow().value()).isBetween(3.0, 4.0);
    }
}
