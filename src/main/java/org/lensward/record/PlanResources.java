package org.lensward.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.CodeType;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Procedure.ProcedureStatus;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.StringType;
import org.lensward.eye.Laterality;
import org.lensward.plan.EyePlan;
import org.lensward.plan.LensPlan;

/** Writes one plan as FHIR resources. The same plan gives the same resources, byte for byte. */
final class PlanResources {

    static final String STATE = Systems.extension("plan-state");
    static final String FINGERPRINT = Systems.extension("plan-fingerprint");
    static final String POLICY_VERSION = Systems.extension("policy-version");
    static final String EYE = Systems.extension("eye");

    /** Said with every plan. */
    private static final String CAUTION =
            "Decision support. A surgeon confirms or changes this plan before any lens is picked; local"
                    + " policy and the licensed clinician's judgement come first.";

    private final BookedCase booked;
    private final EyePlan plan;
    private final PlanKey key;

    private PlanResources(BookedCase booked, EyePlan plan) {
        this.booked = booked;
        this.plan = plan;
        this.key = PlanKey.of(booked.request());
    }

    /** Everything the plan says, each resource with its lasting id; the plan itself first. */
    static List<Resource> of(BookedCase booked, EyePlan plan) {
        PlanResources writer = new PlanResources(booked, plan);
        PlanContext context = writer.context();
        List<Resource> resources = new ArrayList<>();
        resources.add(writer.procedure());
        plan.lens().ifPresent(lens -> {
            resources.addAll(LensRequests.of(context, lens));
            resources.addAll(PredictedRefractions.of(context, lens));
        });
        plan.rupture().ifPresent(rupture -> resources.add(RuptureAssessment.of(context, rupture)));
        resources.addAll(Issues.of(context, plan.findings()));
        plan.lens().ifPresent(lens -> resources.add(LensCheckTask.of(context, booked.patient(), lens)));
        return resources;
    }

    private PlanContext context() {
        return new PlanContext(
                key, new Reference(Shelf.name(booked.patient())), new Reference(Shelf.name(booked.request())), plan);
    }

    private Procedure procedure() {
        Procedure procedure = new Procedure();
        procedure.setId(key.planId());
        procedure.getMeta().addProfile(Systems.profile("eye-plan"));
        procedure.addExtension(STATE, new CodeType(plan.state().code()));
        procedure.addExtension(FINGERPRINT, new StringType(plan.fingerprint().hex()));
        procedure.addExtension(POLICY_VERSION, new StringType(plan.policyVersion()));
        plan.lens()
                .map(LensPlan::target)
                .ifPresent(
                        target -> procedure.addExtension(BookingReader.TARGET_EXTENSION, Quantities.dioptres(target)));
        TheatreExtensions.of(plan.theatre()).forEach(procedure::addExtension);
        procedure.addIdentifier(key.identifier());
        procedure.addBasedOn(new Reference(Shelf.name(booked.request())));
        procedure.setStatus(ProcedureStatus.PREPARATION);
        procedure.setCategory(Codes.concept(Systems.SNOMED, "387713003", "Surgical procedure"));
        procedure.setCode(booked.request().getCode().copy());
        procedure.setSubject(new Reference(Shelf.name(booked.patient())));
        procedure.addBodySite(bodySite(plan.booking().eye()));
        procedure.addNote().setText(CAUTION);
        return procedure;
    }

    /** A plan whose booking names no single eye still has a body site: an eye, unsided. */
    static CodeableConcept bodySite(Optional<Laterality> eye) {
        return eye.map(EyeCodes::concept).orElseGet(() -> new CodeableConcept(
                        new Coding().setSystem(Systems.SNOMED).setCode("81745001"))
                .setText("eye not stated"));
    }
}
