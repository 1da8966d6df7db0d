package org.lensward.lens;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.lensward.eye.Biometry;
import org.lensward.eye.Laterality;
import org.lensward.eye.Specimen;
import org.lensward.optics.LensConstants;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;

/** The sulcus lens of a kit against the published shift of half a millimetre, each file headed by its citation. */
class SulcusPublishedTest {

    private static final LocalDate DAY = LocalDate.of(2026, 2, 16);

    /** Made in thousandths, so that the label says what was computed. */
    private static LensModel fine(LensSite site, double personalisedAcd) {
        LensConstants hofferAlone = LensConstants.published(
                Optional.empty(), Optional.empty(), Optional.of(Millimetres.of(personalisedAcd)), Optional.empty());
        return Lenses.madeIn(Lenses.model(site.name(), site, hofferAlone), Lenses.range(6, 40, 0.001));
    }

    private static List<KitLens> kit(Biometry biometry, double personalisedAcd) {
        LensModel bag = fine(LensSite.CAPSULAR_BAG, personalisedAcd);
        Catalogue catalogue = new Catalogue(List.of(bag, fine(LensSite.SULCUS, personalisedAcd)));
        return Lenses.views(bag, biometry)
                .then(views -> new KitPlanner(Lenses.policy(TargetSide.NEAREST))
                        .plan(views, new MeasuredEye(biometry, Optional.empty()), catalogue, Dioptres.of(0)))
                .value()
                .orElseThrow()
                .all();
    }

    /** The constant by which Hoffer Q, to whose lens position it is only added, sits the lens at 5.20 mm in this eye. */
    private static double constantFor520(Biometry biometry) {
        FormulaViews views = Lenses.views(fine(LensSite.CAPSULAR_BAG, 5.20), biometry)
                .value()
                .orElseThrow();
        return 2 * 5.20 - views.all().get(0).eye().lensPosition().value();
    }

    private static double power(List<KitLens> kit, KitRole role) {
        return kit.stream()
                .filter(lens -> lens.role() == role)
                .findFirst()
                .orElseThrow()
                .power()
                .value();
    }

    @ParameterizedTest
    @CsvFileSource(resources = "/published/sulcus-elp-shift.csv", useHeadersInDisplayName = true)
    void the_kits_lenses_are_those_of_the_table_within_its_last_digit(double bag, double sulcus) {
        double length = 5.20 + 1336 / (bag + 1336 / (1336.0 / 43 - 5.20));
        Biometry biometry = eye(length, 43);
        List<KitLens> kit = kit(biometry, constantFor520(biometry));
        assertThat(power(kit, KitRole.PRIMARY)).isCloseTo(bag, within(0.0006));
        assertThat(power(kit, KitRole.SULCUS)).isCloseTo(sulcus, within(0.01 + 0.0006));
    }

    @Property(tries = 100)
    void a_plus_lens_for_the_sulcus_is_weaker_than_the_same_model_in_the_bag(
            @ForAll @DoubleRange(min = 21, max = 26) double length,
            @ForAll @DoubleRange(min = 40, max = 46) double cornea) {
        List<KitLens> kit = kit(eye(length, cornea), 5.20);
        assertThat(power(kit, KitRole.SULCUS)).isLessThan(power(kit, KitRole.PRIMARY));
    }

    private static Biometry eye(double length, double cornea) {
        return Specimen.ordinary(Laterality.RIGHT, DAY)
                .length(length)
                .powers(cornea, cornea)
                .biometry();
    }
}
