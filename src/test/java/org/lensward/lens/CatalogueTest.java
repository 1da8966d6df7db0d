package org.lensward.lens;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.lens.LensSite.CAPSULAR_BAG;
import static org.lensward.lens.LensSite.SULCUS;

import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** Which models a hospital offers where the surgeon named none. */
class CatalogueTest {

    private static final LensModel ONE = Lenses.model("one", CAPSULAR_BAG, Lenses.CONSTANTS);
    private static final LensModel OTHER = Lenses.model("other", CAPSULAR_BAG, Lenses.CONSTANTS);

    @Nested
    class Given_two_models_for_one_site {

        @Test
        void neither_marked_both_are_offered() {
            assertThat(new Catalogue(List.of(ONE, OTHER, Lenses.sulcus())).houseLenses(CAPSULAR_BAG))
                    .containsExactly(ONE, OTHER);
        }

        @Test
        void the_marked_one_is_offered() {
            LensModel marked = Lenses.houseLens(OTHER);
            assertThat(new Catalogue(List.of(ONE, marked)).houseLenses(CAPSULAR_BAG))
                    .containsExactly(marked);
        }

        @Test
        void both_marked_both_are_offered() {
            Catalogue catalogue = new Catalogue(List.of(Lenses.houseLens(ONE), Lenses.houseLens(OTHER)));
            assertThat(catalogue.houseLenses(CAPSULAR_BAG)).hasSize(2);
        }
    }

    @Test
    void a_house_lens_of_one_site_says_nothing_of_another() {
        Catalogue catalogue = new Catalogue(List.of(Lenses.houseLens(ONE), Lenses.sulcus()));
        assertThat(catalogue.houseLenses(SULCUS)).containsExactly(Lenses.sulcus());
    }

    @Test
    void a_site_without_a_model_offers_none() {
        assertThat(new Catalogue(List.of(ONE)).houseLenses(SULCUS)).isEmpty();
    }

    @Test
    void a_model_is_found_by_its_resource() {
        Catalogue catalogue = new Catalogue(List.of(ONE, OTHER));
        assertThat(catalogue.named("DeviceDefinition/other")).contains(OTHER);
        assertThat(catalogue.named("DeviceDefinition/third")).isEmpty();
    }
}
