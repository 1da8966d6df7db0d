package org.lensward.risk.preparation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.risk.preparation.Patient.ordinary;

import org.junit.jupiter.api.Test;
import org.lensward.eye.Sign;

/** Macula and retina. Risks: secondary source, as the product names them. */
class BackOfTheEyeTest {

    @Test
    void the_macula_is_looked_at_where_it_is_likely_to_swell() {
        Precaution macula = ordinary().with(Sign.EPIRETINAL_MEMBRANE).precaution(Topic.MACULA);
        assertThat(macula.reasons()).containsExactly("epiretinal membrane, 5.60 times the risk of macular oedema");
        assertThat(macula.action()).startsWith("OCT of the macula");
        assertThat(ordinary().on(Topic.MACULA)).isEmpty();
        assertThat(ordinary().silentAbout(Sign.UVEITIS).precaution(Topic.MACULA).action())
                .isEqualTo("Find out: uveitis.");
    }

    @Test
    void the_retina_is_looked_at_in_long_and_in_young_eyes() {
        assertThat(ordinary().length(25.1).precaution(Topic.RETINA).reasons())
                .containsExactly("axial length 25.1 mm above 25 mm");
        assertThat(ordinary().age(59).precaution(Topic.RETINA).reasons()).containsExactly("age 59 below 60");
        assertThat(ordinary().age(60).length(25).on(Topic.RETINA)).isEmpty();
    }

    @Test
    void a_fundus_that_is_not_seen_asks_for_a_scan() {
        assertThat(ordinary()
                        .with(Sign.FUNDUS_NOT_SEEN)
                        .precaution(Topic.RETINA)
                        .unknown())
                .containsExactly("whether the retina is attached (B-scan)");
    }
}
