package org.lensward.optics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.lensward.optics.OpticsSpecimen.CONSTANTS;
import static org.lensward.optics.OpticsSpecimen.SOMEWHERE;

import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;

class PostLaserPublishedTest {

    @ParameterizedTest
    @CsvFileSource(resources = "/published/haigis-l-2008.csv", useHeadersInDisplayName = true)
    void haigis_l_corrects_the_radius(double first, double second, double corrected) {
        EyeShape shape = new EyeShape(
                Millimetres.of(26), Millimetres.of((first + second) / 2), Optional.of(Millimetres.of(3.4)));
        double power = OpticsSpecimen.seen(new HaigisL(), shape).cornealPower().value();
        assertThat(331.5 / power).isCloseTo(corrected, within(0.05));
    }

    @ParameterizedTest
    @CsvFileSource(resources = "/published/shammas.csv", useHeadersInDisplayName = true)
    void shammas_corrects_the_corneal_power(String laser, double measured, double corrected) {
        Shammas shammas = laser.equals("myopic") ? Shammas.afterMyopicLaser() : Shammas.afterHyperopicLaser();
        assertThat(shammas.correctedPower(Dioptres.of(measured)).value()).isCloseTo(corrected, within(0.005));
    }

    /** The power equation as printed (Shammas 2007, from memory), written out without the thin eye; exact for plano. */
    @ParameterizedTest
    @CsvFileSource(resources = "/published/shammas.csv", useHeadersInDisplayName = true)
    void the_thin_eye_is_the_printed_equation(String laser, double measured, double corrected) {
        Shammas shammas = laser.equals("myopic") ? Shammas.afterMyopicLaser() : Shammas.afterHyperopicLaser();
        ThinEye eye = shammas.see(OpticsSpecimen.shape(26.9, measured), CONSTANTS, SOMEWHERE)
                .value()
                .orElseThrow();
        assertThat(eye.power(Dioptres.of(0)).value()).isCloseTo(printed(26.9, kc(laser, measured), 0), within(1e-9));
        double target = -2;
        double atCornea = target / (1 - 0.012 * target);
        assertThat(eye.power(Dioptres.of(target)).value())
                .isCloseTo(printed(26.9, kc(laser, measured), atCornea), within(0.02 * -target));
    }

    private static double kc(String laser, double measured) {
        return laser.equals("myopic") ? 1.14 * measured - 6.8 : 1.0457 * measured - 1.9538;
    }

    private static double printed(double al, double kc, double r) {
        double c = 0.5835 * 118.4 - 64.40 + 0.05;
        return 1336 / (al - 0.1 * (al - 23) - c) - 1 / (1.0125 / (kc + r) - c / 1336);
    }
}
