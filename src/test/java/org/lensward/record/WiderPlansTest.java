package org.lensward.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.CodeSystem;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.DeviceDefinition;
import org.hl7.fhir.r4.model.DeviceRequest;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Observation.ObservationComponentComponent;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Resource;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lensward.plan.EyePlan;
import org.lensward.plan.ToricPlan;

/** What is written of an eye that is not ordinary says what was planned and keeps the profiles. */
class WiderPlansTest {

    private static final CodeSystem FORMULAS = ProfileArtefacts.codeSystems().stream()
            .filter(each -> each.getUrl().equals(Systems.FORMULA))
            .findFirst()
            .orElseThrow();

    static Stream<Named<Supplier<Bundles>>> eyes() {
        return Stream.of(
                Named.of("a toric lens", WiderRecords::toric),
                Named.of("after laser for myopia, with history", WiderRecords::lasered),
                Named.of("after laser for myopia, without", WiderRecords::laseredWithoutHistory),
                Named.of("after laser for hyperopia", WiderRecords::laseredForHyperopia),
                Named.of("a long eye", WiderRecords::longEye),
                Named.of("oil that stays", WiderRecords::oil));
    }

    @ParameterizedTest
    @MethodSource("eyes")
    void everything_written_keeps_its_profile_and_has_an_id_that_a_server_takes(Supplier<Bundles> record) {
        Bundles booked = record.get();
        List<Resource> written = WiderRecords.written(booked);
        assertThat(written)
                .extracting(Resource::fhirType)
                .contains("DeviceRequest", "Observation", "Procedure", "Provenance");
        assertThat(written).allSatisfy(each -> {
            assertThat(ProfileValidator.errors(each)).as(Shelf.name(each)).isEmpty();
            assertThat(ReferenceTargets.misdirected(each)).as(Shelf.name(each)).isEmpty();
            assertThat(each.getIdElement().getIdPart()).matches("[A-Za-z0-9\\-.]{1,64}");
        });
        assertThat(written).extracting(Shelf::name).doesNotHaveDuplicates();
    }

    @ParameterizedTest
    @MethodSource("eyes")
    void the_longest_booking_id_still_gives_ids_of_64_characters(Supplier<Bundles> record) {
        Bundles booked = record.get();
        booked.booking(booking -> booking.setId("b".repeat(24)));
        assertThat(WiderRecords.written(booked))
                .extracting(each -> each.getIdElement().getIdPart())
                .anyMatch(id -> id.contains("b".repeat(24)))
                .allMatch(id -> id.length() <= 64);
    }

    @ParameterizedTest
    @MethodSource("eyes")
    void every_method_has_a_code_that_its_system_defines(Supplier<Bundles> record) {
        assertThat(predictions(record.get())).isNotEmpty().allSatisfy(each -> {
            Coding method = each.getMethod().getCodingFirstRep();
            if (method.getSystem().equals(Systems.FORMULA)) {
                assertThat(FORMULAS.getConcept())
                        .extracting(CodeSystem.ConceptDefinitionComponent::getCode)
                        .contains(method.getCode());
            } else {
                // DICOM PS3.16, CID 4236 IOL Calculation Formula
                assertThat(method.getSystem()).isEqualTo(Systems.DICOM);
                assertThat(method.getCode()).isIn("111760", "111761", "111762", "111764", "111767");
            }
            assertThat(each.getMethod().getText()).isNotBlank();
        });
    }

    private static List<Observation> predictions(Bundles record) {
        return WiderRecords.written(record).stream()
                .filter(Observation.class::isInstance)
                .map(Observation.class::cast)
                .toList();
    }

    private static List<String> methods(Bundles record) {
        return predictions(record).stream()
                .map(each -> each.getMethod().getCodingFirstRep().getCode())
                .toList();
    }

    private static Observation chosen(Bundles record) {
        return predictions(record).stream()
                .filter(each ->
                        components(each, "chosen").get(0).getValueBooleanType().booleanValue())
                .findFirst()
                .orElseThrow();
    }

    private static List<ObservationComponentComponent> components(Observation observation, String code) {
        return observation.getComponent().stream()
                .filter(each -> each.getCode().getCodingFirstRep().getCode().equals(code))
                .toList();
    }

    private static double value(Observation observation, String code) {
        return components(observation, code)
                .get(0)
                .getValueQuantity()
                .getValue()
                .doubleValue();
    }

    @Test
    void haigis_l_has_dicoms_own_code_and_shammas_ours() {
        assertThat(methods(WiderRecords.laseredWithoutHistory())).containsExactly("111761", "shammas-myopic");
        assertThat(methods(WiderRecords.laseredForHyperopia())).containsExactly("shammas-hyperopic");
    }

    @Test
    void double_k_and_the_long_eye_have_codes_of_ours() {
        assertThat(methods(WiderRecords.lasered()))
                .containsExactly(
                        "srk-t-double-k",
                        "t2-double-k",
                        "holladay-1-double-k",
                        "hoffer-q-double-k",
                        "111761",
                        "shammas-myopic");
        assertThat(methods(WiderRecords.longEye())).contains("srk-t-long-eye", "holladay-1-long-eye", "111767");
        assertThat(methods(WiderRecords.lasered())).doesNotContain("111767", "111760");
    }

    @Test
    void how_sure_it_is_and_the_table_of_powers_are_written() {
        Observation chosen = chosen(Bundles.ordinary());
        assertThat(value(chosen, "standard-deviation")).isPositive();
        assertThat(value(chosen, "within-half-dioptre")).isBetween(0.0, value(chosen, "within-one-dioptre"));
        assertThat(components(chosen, "largest-contributor")
                        .get(0)
                        .getValueStringType()
                        .getValue())
                .isNotBlank();
        assertThat(components(chosen, "refraction-with-power")).hasSize(5).allSatisfy(row -> assertThat(
                        row.getExtensionByUrl(Systems.extension("labelled-power"))
                                .getValue())
                .isInstanceOf(Quantity.class));
        assertThat(components(chosen, "thick-eye-refraction")).hasSize(1);
        assertThat(components(chosen(WiderRecords.lasered()), "thick-eye-refraction"))
                .isEmpty();
        assertThat(components(chosen(WiderRecords.oil()), "thick-eye-refraction"))
                .isEmpty();
    }

    @Nested
    class Given_a_toric_plan {

        private final Bundles record = WiderRecords.toric();
        private final EyePlan plan = WiderRecords.plan(record);
        private final ToricPlan toric = plan.lens().orElseThrow().toric().orElseThrow();

        private List<DeviceRequest> requests(Bundles record) {
            return WiderRecords.written(record).stream()
                    .filter(DeviceRequest.class::isInstance)
                    .map(DeviceRequest.class::cast)
                    .toList();
        }

        private static List<Double> parameters(DeviceRequest request, String code) {
            return request.getParameter().stream()
                    .filter(each -> each.getCode().getCodingFirstRep().getCode().equals(code))
                    .map(each -> each.getValueQuantity().getValue().doubleValue())
                    .toList();
        }

        @Test
        void the_lens_and_its_spare_are_asked_for_with_cylinder_and_axis() {
            assertThat(requests(record))
                    .filteredOn(each -> each.getId().matches(".*-(primary|spare)"))
                    .hasSize(2)
                    .allSatisfy(each -> {
                        assertThat(parameters(each, "lens-cylinder"))
                                .containsExactly(
                                        toric.choice().lens().cylinder().value());
                        assertThat(parameters(each, "lens-axis"))
                                .containsExactly(toric.markedAxis().value());
                    });
        }

        @Test
        void another_model_never_gets_this_ones_cylinder() {
            Bundles both = WiderRecords.toric()
                    .change(DeviceDefinition.class, "sulcus", lens -> LensDefinitions.property(lens, "cylinders")
                            .addValueQuantity(Bundles.dioptres("6.0")));
            assertThat(requests(both))
                    .filteredOn(each -> !each.getId().matches(".*-(primary|spare)"))
                    .hasSize(2)
                    .allSatisfy(each ->
                            assertThat(parameters(each, "lens-cylinder")).isEmpty());
        }

        @Test
        void what_it_corrects_and_leaves_stands_on_the_chosen_prediction_alone() {
            Observation chosen = chosen(record);
            assertThat(value(chosen, "net-astigmatism"))
                    .isCloseTo(toric.net().magnitude().value(), within(1e-9));
            assertThat(value(chosen, "residual-cylinder")).isNotPositive();
            assertThat(components(chosen, "residual-cylinder-rotated"))
                    .extracting(each -> ((Quantity) each.getExtensionByUrl(Systems.extension("rotation"))
                                    .getValue())
                            .getValue()
                            .intValue())
                    .containsExactly(5, 10, 30);
            assertThat(predictions(record))
                    .filteredOn(each -> !components(each, "net-astigmatism").isEmpty())
                    .hasSize(1);
        }
    }
}
