package org.lensward.record;

import java.util.List;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.DeviceRequest;
import org.hl7.fhir.r4.model.DeviceRequest.DeviceRequestStatus;
import org.hl7.fhir.r4.model.DeviceRequest.RequestIntent;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Type;
import org.lensward.lens.KitLens;
import org.lensward.lens.KitRole;
import org.lensward.plan.LensPlan;
import org.lensward.plan.ToricPlan;

/** The kit as DeviceRequests: the primary lens as the plan, the others as options. */
final class LensRequests {

    private static final String LENS_MODEL = Systems.extension("lens-model");

    private LensRequests() {}

    static List<DeviceRequest> of(PlanContext context, LensPlan lens) {
        return lens.kit().all().stream()
                .map(each -> request(context, lens, each))
                .toList();
    }

    static Reference primary(PlanContext context) {
        return new Reference("DeviceRequest/" + context.key().id(KitRole.PRIMARY.code()));
    }

    private static DeviceRequest request(PlanContext context, LensPlan plan, KitLens lens) {
        DeviceRequest request = new DeviceRequest();
        request.setId(context.key().id(lens.role().code()));
        request.getMeta().addProfile(Systems.profile("lens-request"));
        request.addExtension(PlanResources.EYE, context.eye());
        request.addExtension(LENS_MODEL, new Reference(lens.model().evidence().resource()));
        request.addIdentifier(context.key().identifier());
        request.addBasedOn(context.booking());
        request.setGroupIdentifier(context.key().identifier());
        request.setStatus(DeviceRequestStatus.ACTIVE);
        request.setIntent(lens.role() == KitRole.PRIMARY ? RequestIntent.PLAN : RequestIntent.OPTION);
        request.setCode(new CodeableConcept().setText(lens.model().name()));
        parameter(request, "lens-power", "Lens power", Quantities.dioptres(lens.power()));
        if (lens.model().equals(plan.kit().primary().model())) {
            plan.toric().ifPresent(toric -> cylinder(request, toric));
        }
        parameter(
                request,
                "kit-role",
                "Role in the kit",
                new CodeableConcept()
                        .addCoding(Codes.concept(Systems.KIT_ROLE, lens.role().code(), display(lens.role()))
                                .getCodingFirstRep()));
        parameter(request, "eye", "Eye", context.eye());
        request.setSubject(context.patient());
        request.setOccurrence(context.operation());
        return request;
    }

    private static void cylinder(DeviceRequest request, ToricPlan toric) {
        parameter(
                request,
                "lens-cylinder",
                "Lens cylinder",
                Quantities.dioptres(toric.choice().lens().cylinder()));
        parameter(request, "lens-axis", "Axis of the lens marks", Quantities.degrees(toric.markedAxis()));
    }

    private static String display(KitRole role) {
        return switch (role) {
            case PRIMARY -> "Lens to implant";
            case SPARE -> "Identical spare";
            case SULCUS -> "Sulcus lens";
            case ANTERIOR_CHAMBER -> "Anterior chamber lens";
        };
    }

    private static void parameter(DeviceRequest request, String code, String display, Type value) {
        request.addParameter()
                .setCode(Codes.concept(Systems.LENS_PARAMETER, code, display))
                .setValue(value);
    }
}
