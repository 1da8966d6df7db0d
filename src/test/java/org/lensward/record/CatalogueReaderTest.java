package org.lensward.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.lensward.finding.FindingCode.LENS_MODEL_UNREADABLE;

import java.util.function.Consumer;
import org.hl7.fhir.r4.model.DeviceDefinition;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.lensward.eye.BiometryMethod;
import org.lensward.finding.Finding;
import org.lensward.lens.Catalogue;
import org.lensward.lens.LensModel;
import org.lensward.lens.LensSite;
import org.lensward.lens.Lenses;
import org.lensward.quantity.Millimetres;

/** Lens models, read whole or not at all. */
class CatalogueReaderTest {

    private final Bundles record = Bundles.ordinary();

    private Catalogue catalogue() {
        return record.planning().catalogue();
    }

    private LensModel bag() {
        return catalogue().named("DeviceDefinition/bag").orElseThrow();
    }

    private void bag(Consumer<DeviceDefinition> change) {
        record.change(DeviceDefinition.class, "bag", change);
    }

    @Test
    void a_model_is_read_whole() {
        assertThat(bag().name()).isEqualTo("the bag lens");
        assertThat(bag().site()).isEqualTo(LensSite.CAPSULAR_BAG);
        assertThat(bag().opticDiameter()).contains(Millimetres.of(6));
        assertThat(bag().ranges()).containsExactly(Lenses.range(6, 30, 0.5));
        assertThat(bag().constantsFor(BiometryMethod.OPTICAL)).contains(Lenses.CONSTANTS);
        assertThat(bag().constantsFor(BiometryMethod.IMMERSION_ULTRASOUND)).isEmpty();
        assertThat(bag().houseLens()).isFalse();
    }

    @Test
    void every_site_has_its_code() {
        assertThat(catalogue().models())
                .extracting(LensModel::site)
                .containsExactly(LensSite.CAPSULAR_BAG, LensSite.SULCUS, LensSite.ANTERIOR_CHAMBER);
    }

    @Test
    void a_house_lens_is_marked() {
        bag(lens -> LensDefinitions.property(lens, "house-lens").addValueCode().setText("true"));
        assertThat(bag().houseLens()).isTrue();
        bag(lens ->
                LensDefinitions.find(lens, "house-lens").getValueCodeFirstRep().setText("false"));
        assertThat(bag().houseLens()).isFalse();
    }

    @Test
    void other_devices_are_no_lenses() {
        bag(lens -> lens.setType(Bundles.ours("device-type", "ring")));
        assertThat(catalogue().named("DeviceDefinition/bag")).isEmpty();
        assertThat(record.found()).isEmpty();
    }

    @Nested
    class Given_an_entry_that_cannot_be_read {

        private void assertUnreadable(String reason) {
            assertThat(catalogue().named("DeviceDefinition/bag")).isEmpty();
            assertThat(catalogue().models()).hasSize(2);
            assertThat(record.found()).hasSize(1);
            Finding finding = record.found().get(0);
            assertThat(finding.code()).isEqualTo(LENS_MODEL_UNREADABLE);
            assertThat(finding.message()).isEqualTo("The lens model cannot be used: the bag lens: " + reason + ".");
            assertThat(finding.evidence())
                    .extracting(Object::toString)
                    .containsExactly("DeviceDefinition/bag.property");
        }

        private void drop(String code) {
            bag(lens -> lens.getProperty().remove(LensDefinitions.find(lens, code)));
        }

        @Test
        void without_powers() {
            drop("power-range");
            assertUnreadable("it has no power-range");
        }

        @Test
        void without_a_placement() {
            drop("placement");
            assertUnreadable("it has not one placement");
        }

        @Test
        void with_a_placement_nobody_knows() {
            bag(lens -> LensDefinitions.find(lens, "placement")
                    .getValueCodeFirstRep()
                    .getCodingFirstRep()
                    .setCode("iris"));
            assertUnreadable("its placement 'iris' is not known");
        }

        @Test
        void without_constants() {
            bag(lens -> lens.getProperty().removeIf(each -> each.hasValueCode() && each.hasValueQuantity()));
            assertUnreadable("it has no constants");
        }

        @Test
        void with_a_range_of_two_numbers() {
            bag(lens ->
                    LensDefinitions.find(lens, "power-range").getValueQuantity().remove(2));
            assertUnreadable("a power-range is not lowest, highest and step");
        }

        @Test
        void with_a_range_that_goes_down() {
            bag(lens -> LensDefinitions.find(lens, "power-range")
                    .getValueQuantity()
                    .get(1)
                    .setValue(5));
            assertUnreadable("No powers from 6.0 D to 5.0 D by 0.5 D");
        }

        @Test
        void with_powers_in_another_unit() {
            bag(lens -> LensDefinitions.find(lens, "power-range")
                    .getValueQuantity()
                    .get(0)
                    .setCode("mm"));
            assertUnreadable("power-range has the unit 'mm', not [diop]");
        }

        @Test
        void with_half_of_haigis() {
            drop("111771");
            assertUnreadable("it has some but not all of Haigis' a0, a1 and a2 for light");
        }

        @Test
        void with_two_constants_for_one_method() {
            bag(lens -> LensDefinitions.constant(lens, Bundles.snomed("397263007"), Bundles.quantity("119.0", "1")));
            assertUnreadable("it has two constants 397263007 for light");
        }

        @Test
        void with_a_constant_of_no_method() {
            bag(lens -> LensDefinitions.find(lens, "111772").getValueCode().clear());
            assertUnreadable("111772 names no biometry method");
        }

        @Test
        void with_a_constant_in_another_unit() {
            bag(lens -> LensDefinitions.find(lens, "111772")
                    .getValueQuantityFirstRep()
                    .setCode("1"));
            assertUnreadable("111772 has the unit '1', not cm, mm, um");
        }

        @Test
        void with_a_constant_of_no_value() {
            bag(lens -> LensDefinitions.find(lens, "111772")
                    .getValueQuantityFirstRep()
                    .setValue(null));
            assertUnreadable("111772 has no value");
        }
    }
}
