package org.lensward.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.List;
import org.hl7.fhir.r4.model.BooleanType;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.DetectedIssue;
import org.hl7.fhir.r4.model.DeviceRequest;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.RiskAssessment;
import org.hl7.fhir.r4.model.Task;
import org.hl7.fhir.r4.model.Type;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.lensward.eye.Laterality;
import org.lensward.lens.KitLens;
import org.lensward.plan.EyePlan;
import org.lensward.plan.LensPlan;

/** What is written says what was planned. */
class PlanResourcesTest {

    private static final String BASE = "https://lensward.org/fhir/StructureDefinition/";

    private final Bundles record = Bundles.ordinary();

    private Bundle written() {
        return Publishing.written(Publishing.publish(record));
    }

    private LensPlan lens() {
        return record.plan().lens().orElseThrow();
    }

    private static BigDecimal power(DeviceRequest request) {
        return request.getParameter().stream()
                .filter(each -> each.getCode().getCodingFirstRep().getCode().equals("lens-power"))
                .map(each -> ((Quantity) each.getValue()).getValue())
                .findFirst()
                .orElseThrow();
    }

    private static String side(CodeableConcept site) {
        return site.getCodingFirstRep().getCode();
    }

    @Nested
    class Given_a_ready_plan {

        private final Bundle written = written();

        @Test
        void the_procedure_says_state_eye_target_and_what_made_it() {
            Procedure procedure =
                    Publishing.all(written, Procedure.class).findFirst().orElseThrow();
            EyePlan plan = record.plan();
            assertThat(procedure.getExtensionString(BASE + "plan-state")).isEqualTo("ready");
            assertThat(procedure.getExtensionString(BASE + "plan-fingerprint"))
                    .isEqualTo(plan.fingerprint().hex());
            assertThat(procedure.getExtensionString(BASE + "policy-version")).isEqualTo("test-1");
            assertThat(((Quantity) procedure
                                    .getExtensionByUrl(BASE + "target-refraction")
                                    .getValue())
                            .getValue())
                    .isEqualByComparingTo("-0.25");
            assertThat(side(procedure.getBodySiteFirstRep())).isEqualTo("1290032005");
            assertThat(procedure.getBasedOnFirstRep().getReference()).isEqualTo("ServiceRequest/b1");
        }

        @Test
        void each_lens_of_the_kit_is_a_request_for_its_power_and_its_eye() {
            List<DeviceRequest> requests =
                    Publishing.all(written, DeviceRequest.class).toList();
            List<KitLens> kit = lens().kit().all();
            for (int index = 0; index < kit.size(); index++) {
                DeviceRequest request = requests.get(index);
                assertThat(power(request).doubleValue())
                        .isEqualTo(kit.get(index).power().value());
                assertThat(request.getIntent().toCode()).isEqualTo(index == 0 ? "plan" : "option");
                assertThat(side((CodeableConcept)
                                request.getExtensionByUrl(BASE + "eye").getValue()))
                        .isEqualTo("1290032005");
                assertThat(((Reference) request.getExtensionByUrl(BASE + "lens-model")
                                        .getValue())
                                .getReference())
                        .isEqualTo(kit.get(index).model().evidence().resource());
                assertThat(request.getOccurrenceDateTimeType().getValueAsString())
                        .isEqualTo(Bundles.OPERATION);
            }
        }

        @Test
        void each_formula_is_a_prediction_and_one_is_chosen() {
            List<Observation> predictions =
                    Publishing.all(written, Observation.class).toList();
            assertThat(predictions)
                    .extracting(each -> each.getMethod().getCodingFirstRep().getCode())
                    .containsExactly("111767", "t2", "111762", "111764", "111760");
            assertThat(predictions)
                    .filteredOn(each -> ((BooleanType) component(each, "chosen")).booleanValue())
                    .extracting(each -> each.getValueQuantity().getValue().doubleValue())
                    .containsExactly(lens().chosen().predicted().value());
        }

        private static Type component(Observation observation, String code) {
            return observation.getComponent().stream()
                    .filter(each -> each.getCode().getCodingFirstRep().getCode().equals(code))
                    .findFirst()
                    .orElseThrow()
                    .getValue();
        }

        @Test
        void the_check_expects_what_the_kit_holds_and_who_it_is_for() {
            Task check = Publishing.all(written, Task.class).findFirst().orElseThrow();
            assertThat(check.getFocus().getReference()).isEqualTo("DeviceRequest/plan-b1-primary");
            assertThat(check.getInput())
                    .extracting(input -> input.getType().getCodingFirstRep().getCode())
                    .containsExactly(
                            "plan",
                            "fingerprint",
                            "eye",
                            "lens-model",
                            "lens-power",
                            "operation-day",
                            "patient-identifier",
                            "birth-date",
                            "biometry",
                            "biometry",
                            "back-up",
                            "back-up",
                            "back-up");
            assertThat(((Quantity) check.getInput().get(4).getValue())
                            .getValue()
                            .doubleValue())
                    .isEqualTo(lens().kit().primary().power().value());
        }

        /** FHIR R4 RiskAssessment.prediction.probability: "Values are presumed to be 0-100" as a percentage. */
        @Test
        void the_risk_is_a_percentage() {
            RiskAssessment risk =
                    Publishing.all(written, RiskAssessment.class).findFirst().orElseThrow();
            // a woman of 66: 1.14 x 0.0075 / 0.9925 are odds of 0.008615, 0.85 %
            assertThat(risk.getPredictionFirstRep()
                            .getProbabilityDecimalType()
                            .getValue()
                            .doubleValue())
                    .isCloseTo(0.85, within(0.005));
        }
    }

    @Test
    void a_finding_is_an_issue_with_its_place_and_its_remedy() {
        record.change(Observation.class, "length-right", each -> each.setValue(Bundles.quantity("23.5", "inch")));
        DetectedIssue issue = (DetectedIssue) Publishing.entry(written(), "DetectedIssue/plan-b1-unit-unknown")
                .orElseThrow()
                .getResource();
        assertThat(issue.getSeverity()).isEqualTo(DetectedIssue.DetectedIssueSeverity.HIGH);
        assertThat(issue.getDetail()).contains("'inch'");
        assertThat(issue.getImplicated())
                .extracting(Reference::getReference)
                .containsExactly("Observation/length-right");
        assertThat(issue.getEvidenceFirstRep().getCodeFirstRep().getText())
                .isEqualTo("Observation/length-right.value.code");
        assertThat(issue.getMitigationFirstRep().getAction().getText()).startsWith("Correct the unit");
    }

    @Test
    void findings_of_one_code_are_numbered() {
        record.change(Observation.class, "length-right", each -> each.setEffective(null));
        record.change(Observation.class, "depth-right", each -> each.setEffective(null));
        assertThat(Publishing.urls(written()))
                .contains("DetectedIssue/plan-b1-date-missing", "DetectedIssue/plan-b1-date-missing-2");
    }

    @Test
    void the_left_eye_is_written_as_the_left_eye() {
        record.booking(each -> each.getBodySiteFirstRep().getCodingFirstRep().setCode("1290031003"));
        assertThat(record.plan().booking().eye()).contains(Laterality.LEFT);
        assertThat(Publishing.all(written(), Observation.class)).isNotEmpty().allMatch(each -> side(each.getBodySite())
                .equals("1290031003"));
    }

    @Test
    void a_plan_of_no_single_eye_is_of_an_eye_unsided() {
        record.booking(each -> each.getBodySite().clear());
        Procedure procedure =
                Publishing.all(written(), Procedure.class).findFirst().orElseThrow();
        assertThat(side(procedure.getBodySiteFirstRep())).isEqualTo("81745001");
        assertThat(procedure.getExtensionByUrl(BASE + "target-refraction")).isNull();
    }

    @Test
    void any_newer_source_makes_another_plan() {
        String before = record.plan().fingerprint().hex();
        List<String> sources = record.plan().basis().stream()
                .map(evidence -> evidence.resource())
                .filter(resource -> !resource.startsWith("Patient"))
                .toList();
        assertThat(sources).hasSizeGreaterThan(6).allSatisfy(source -> {
            Bundles newer = Bundles.ordinary();
            newer.all().stream().filter(each -> Shelf.name(each).equals(source)).forEach(each -> each.getMeta()
                    .setVersionId("2"));
            assertThat(newer.plan().fingerprint().hex()).isNotEqualTo(before);
        });
    }
}
