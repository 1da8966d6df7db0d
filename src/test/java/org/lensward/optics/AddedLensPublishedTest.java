package org.lensward.optics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;

class AddedLensPublishedTest {

    /** The paper prints the net corneal power to 0.01 D and computes with it; so do we here. */
    @ParameterizedTest
    @CsvFileSource(resources = "/published/holladay-1993.csv", useHeadersInDisplayName = true)
    void an_added_lens_has_the_published_power(
            String eye,
            double cornea,
            double before,
            double target,
            double position,
            double power,
            @Nullable Double implanted,
            @Nullable Double leaves) {
        AddedLens lens = new AddedLens(Dioptres.of(cornea), Millimetres.of(position), Millimetres.of(14));
        Dioptres without = Dioptres.of(before);
        assertThat(lens.power(without, Dioptres.of(target)).value()).as(eye).isCloseTo(power, within(0.005));
        if (implanted != null && leaves != null) {
            assertThat(lens.refraction(without, Dioptres.of(implanted)).value()).isCloseTo(leaves, within(0.005));
        }
    }

    @Test
    void the_net_power_is_as_published() {
        assertThat(AddedLens.netPower(Dioptres.of(45)).value()).isCloseTo(44.44, within(0.005));
    }
}
