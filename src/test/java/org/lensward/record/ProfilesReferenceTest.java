package org.lensward.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.hl7.fhir.r4.model.DeviceRequest;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.StructureDefinition;
import org.hl7.fhir.r4.model.Task;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** References must point to the right type of resource: a validator without the targets at hand does not ask. */
class ProfilesReferenceTest {

    static List<Resource> examples() {
        return ProfileArtefacts.examples();
    }

    @ParameterizedTest
    @MethodSource("examples")
    void an_example_points_to_resources_of_the_allowed_types(Resource example) {
        assertThat(ReferenceTargets.misdirected(example)).isEmpty();
    }

    /** What R4 4.0.1 allows is read from HL7's own definitions; the third column is what we allow of it. */
    @ParameterizedTest
    @CsvSource({
        "eye-plan, Procedure.basedOn, ServiceRequest",
        "eye-plan, Procedure.subject, Patient",
        "lens-request, DeviceRequest.basedOn, ServiceRequest",
        "lens-request, DeviceRequest.subject, Patient",
        "predicted-refraction, Observation.basedOn, DeviceRequest",
        "predicted-refraction, Observation.partOf, Procedure",
        "predicted-refraction, Observation.subject, Patient",
        "predicted-refraction, Observation.derivedFrom, Observation",
        "capsule-rupture-risk, RiskAssessment.basedOn, ServiceRequest",
        "capsule-rupture-risk, RiskAssessment.subject, Patient",
        "capsule-rupture-risk, RiskAssessment.basis, Resource",
        "finding, DetectedIssue.patient, Patient",
        "finding, DetectedIssue.implicated, Resource",
        "finding, DetectedIssue.evidence.detail, Resource",
        "lens-check, Task.basedOn, ServiceRequest",
        "lens-check, Task.focus, DeviceRequest",
        "lens-check, Task.for, Patient",
        "check-provenance, Provenance.target, Resource",
        "plan-provenance, Provenance.target, Resource",
        "plan-provenance, Provenance.entity.what, Resource",
        "booking, ServiceRequest.subject, Patient",
        "booking, ServiceRequest.supportingInfo, Resource",
        "axial-length, Observation.subject, Patient",
        "keratometry, Observation.subject, Patient",
        "anterior-chamber-depth, Observation.subject, Patient",
        "lens-thickness, Observation.subject, Patient",
        "biometry-panel, Observation.subject, Patient",
        "biometry-panel, Observation.hasMember, Observation",
        "lens-unit, Device.definition, DeviceDefinition",
        "lens-unit, Device.patient, Patient",
        "lens-unit, Device.owner, Organization",
        "lens-unit, Device.location, Location",
        "unit-movement, Provenance.target, Resource",
        "unit-movement, Provenance.entity.what, Resource",
        "implant-record, Procedure.basedOn, ServiceRequest",
        "implant-record, Procedure.performer.onBehalfOf, Organization",
        "implant-record, Procedure.focalDevice.manipulated, Device",
        "lens-use, DeviceUseStatement.subject, Patient",
        "lens-use, DeviceUseStatement.derivedFrom, Procedure",
        "lens-use, DeviceUseStatement.device, Device"
    })
    void a_profile_allows_no_target_that_r4_forbids(String profile, String path, String allowed) {
        StructureDefinition ours = ProfileValidator.definition(ProfileArtefacts.url(profile));
        StructureDefinition standard =
                ProfileValidator.definition("http://hl7.org/fhir/StructureDefinition/" + ours.getType());

        assertThat(ReferenceTargets.allowed(ours, path)).isEqualTo(types(allowed));
        Set<String> r4 = ReferenceTargets.allowed(standard, path);
        assertThat(r4.contains("Resource") || r4.containsAll(types(allowed))).isTrue();
    }

    @Test
    void the_inputs_of_a_check_are_the_plan_the_model_the_biometry_and_the_lenses_that_stand_by() {
        assertThat(ReferenceTargets.allowed(
                        ProfileValidator.definition(ProfileArtefacts.url("lens-check")), "Task.input.value[x]"))
                .isEqualTo(types("Procedure DeviceDefinition Observation DeviceRequest"));
    }

    @Test
    void the_outputs_of_a_check_are_people_and_the_carton() {
        assertThat(ReferenceTargets.allowed(
                        ProfileValidator.definition(ProfileArtefacts.url("lens-check")), "Task.output.value[x]"))
                .isEqualTo(types("Device Practitioner PractitionerRole"));
    }

    @Test
    void a_plan_based_on_a_device_request_is_misdirected() {
        Procedure plan = (Procedure) ProfileArtefacts.example("eye-plan");
        plan.getBasedOnFirstRep().setReference("DeviceRequest/plan-b-204-primary");

        assertThat(ReferenceTargets.misdirected(plan))
                .singleElement()
                .asString()
                .startsWith("Procedure.basedOn");
    }

    @Test
    void a_lens_that_names_a_device_for_its_model_is_misdirected() {
        DeviceRequest lens = (DeviceRequest) ProfileArtefacts.example("lens-request");
        ((Reference) lens.getExtensionByUrl(ProfileArtefacts.url("lens-model")).getValue())
                .setReference("Device/harbour-60");

        assertThat(ReferenceTargets.misdirected(lens))
                .singleElement()
                .asString()
                .startsWith("DeviceRequest.extension");
    }

    @Test
    void a_prediction_derived_from_a_version_on_another_server_is_fine_but_from_a_booking_is_not() {
        Observation prediction = (Observation) ProfileArtefacts.example("predicted-refraction");
        prediction.getDerivedFrom().get(0).setReference("https://record.example/fhir/Observation/al-1/_history/2");
        prediction.getDerivedFrom().get(1).setReference("https://record.example/fhir/ServiceRequest/b-204/_history/2");

        assertThat(ReferenceTargets.misdirected(prediction))
                .singleElement()
                .asString()
                .contains("ServiceRequest/b-204");
    }

    @Test
    void a_check_whose_focus_is_the_plan_is_misdirected() {
        Task check = (Task) ProfileArtefacts.example("lens-check");
        check.getFocus().setReference("Procedure/plan-b-204");

        assertThat(ReferenceTargets.misdirected(check))
                .singleElement()
                .asString()
                .startsWith("Task.focus");
    }

    private static Set<String> types(String words) {
        return new TreeSet<>(Arrays.asList(words.split(" ")));
    }
}
