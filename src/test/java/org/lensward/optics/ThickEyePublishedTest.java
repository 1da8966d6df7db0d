package org.lensward.optics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.RefractiveIndex;

class ThickEyePublishedTest {

    @ParameterizedTest
    @CsvFileSource(resources = "/published/gullstrand-1909.csv", useHeadersInDisplayName = true)
    void gullstrands_cornea_has_its_published_power_and_planes(double power, double first, double second) {
        PrincipalPlanes planes = ThickCornea.gullstrand().planes();
        assertThat(planes.power().value()).isCloseTo(power, within(0.005));
        assertThat(planes.front().value()).isCloseTo(first, within(0.00005));
        assertThat(0.5 + planes.back().value()).isCloseTo(second, within(0.00005));
    }

    /** The corneal index of Haigis' formula, 1.3315, is the one of Gullstrand's cornea: 331.5 / 7.7 = 43.05 D (Haigis 2000). */
    @Test
    void haigis_sees_gullstrands_cornea() {
        EyeShape shape = OpticsSpecimen.shape(23.5, 337.5 / 7.7);
        assertThat(OpticsSpecimen.seen(new Haigis(), shape).cornealPower().value())
                .isCloseTo(ThickCornea.gullstrand().planes().power().value(), within(0.005));
    }

    /** F = F1 + F2 - t F1 F2 (Gullstrand's equation) and symmetric planes; textbook optics. */
    @Test
    void an_equiconvex_implant_has_its_power() {
        ThickImplant implant = ThickImplant.equiconvex(Dioptres.of(22), Millimetres.of(0.8), RefractiveIndex.of(1.47));
        double surface = implant.frontPower().value();
        assertThat(2 * surface - 0.0008 / 1.47 * surface * surface).isCloseTo(22, within(1e-9));
        PrincipalPlanes planes = implant.planes();
        assertThat(planes.power().value()).isCloseTo(22, within(1e-9));
        assertThat(planes.front().value()).isCloseTo(-planes.back().value(), within(1e-9));
    }

    /** The limit of a weak lens with equal surfaces: half the reduced thickness, 1.336 * 0.8 / 1.47 / 2, by hand. */
    @Test
    void an_implant_without_power_has_its_planes_in_its_middle() {
        PrincipalPlanes planes = ThickImplant.equiconvex(Dioptres.of(0), Millimetres.of(0.8), RefractiveIndex.of(1.47))
                .planes();
        PrincipalPlanes weak = ThickImplant.equiconvex(Dioptres.of(0.01), Millimetres.of(0.8), RefractiveIndex.of(1.47))
                .planes();
        assertThat(planes.front().value()).isCloseTo(0.36354, within(1e-5));
        assertThat(planes.front().value()).isCloseTo(weak.front().value(), within(1e-5));
        assertThat(planes.back().value()).isCloseTo(weak.back().value(), within(1e-5));
    }
}
