package org.lensward.optics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.lensward.optics.OpticsSpecimen.between;

import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;

/** Vergence algebra, no source. */
class AddedLensLaws {

    @Property
    void refraction_undoes_power(
            @ForAll("lenses") AddedLens lens,
            @ForAll("refractions") Dioptres before,
            @ForAll("refractions") Dioptres after) {
        assertThat(lens.refraction(before, lens.power(before, after)).value()).isCloseTo(after.value(), within(1e-9));
    }

    @Property
    void an_eye_that_stays_as_it_is_needs_no_lens(
            @ForAll("lenses") AddedLens lens, @ForAll("refractions") Dioptres refraction) {
        assertThat(lens.power(refraction, refraction).value()).isZero();
    }

    /** An aphakic eye's refraction follows from the thin eye with no lens in it; its secondary lens is the thin eye's lens. */
    @Property
    void in_aphakia_an_added_lens_is_the_only_lens(
            @ForAll("eyes") ThinEye eye, @ForAll("refractions") Dioptres target) {
        AddedLens lens = new AddedLens(eye.cornealPower(), eye.lensPosition(), ThinEye.VERTEX_DISTANCE);
        Dioptres aphakic = eye.refraction(Dioptres.of(0));
        assertThat(lens.power(aphakic, target).value())
                .isCloseTo(eye.power(target).value(), within(1e-9));
    }

    @Provide
    Arbitrary<AddedLens> lenses() {
        return Combinators.combine(between(36, 50), between(2.5, 6), between(10, 15))
                .as((k, d, v) -> new AddedLens(Dioptres.of(k), Millimetres.of(d), Millimetres.of(v)));
    }

    @Provide
    Arbitrary<ThinEye> eyes() {
        return OpticsSpecimen.thinEyes();
    }

    @Provide
    Arbitrary<Dioptres> refractions() {
        return OpticsSpecimen.refractions();
    }
}
