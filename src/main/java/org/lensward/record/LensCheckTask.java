package org.lensward.record;

import java.util.stream.Stream;
import org.hl7.fhir.r4.model.DateType;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.StringType;
import org.hl7.fhir.r4.model.Task;
import org.hl7.fhir.r4.model.Task.TaskIntent;
import org.hl7.fhir.r4.model.Task.TaskStatus;
import org.hl7.fhir.r4.model.Type;
import org.lensward.eye.Allergy;
import org.lensward.lens.KitLens;
import org.lensward.plan.LensPlan;

/** The lens check that this very plan asks for: another plan, another Task. */
final class LensCheckTask {

    private LensCheckTask() {}

    static Task of(PlanContext context, Patient patient, LensPlan lens) {
        Task task = new Task();
        task.setId(context.key().versionedId("check", context.plan().fingerprint()));
        task.getMeta().addProfile(Systems.profile("lens-check"));
        task.addIdentifier(context.key().identifier());
        task.addBasedOn(context.booking());
        task.setStatus(TaskStatus.REQUESTED);
        task.setBusinessStatus(
                Codes.concept(Systems.CHECK_STATE, "awaiting-confirmation", "Awaiting the surgeon's confirmation"));
        task.setIntent(TaskIntent.ORDER);
        task.setCode(Codes.concept(Systems.TASK, "verify-lens", "Verify the lens"));
        task.setFocus(LensRequests.primary(context));
        task.setFor(context.patient());
        expect(task, context, patient, lens.kit().primary());
        lens.toric().ifPresent(toric -> {
            input(
                    task,
                    "lens-cylinder",
                    "Lens cylinder",
                    Quantities.dioptres(toric.choice().lens().cylinder()));
            input(task, "lens-axis", "Axis of the lens marks", Quantities.degrees(toric.markedAxis()));
        });
        rest(task, context, lens);
        return task;
    }

    /** What the plan rests on and what must stand by. */
    private static void rest(Task task, PlanContext context, LensPlan lens) {
        Stream.of(lens.biometry().axialLength(), lens.biometry().keratometry())
                .map(each -> each.evidence().resource())
                .distinct()
                .forEach(each -> input(task, "biometry", "Biometry", new Reference(each)));
        context.plan().person().allergies().stream()
                .map(Allergy::words)
                .distinct()
                .forEach(each -> input(task, "allergy", "Allergy or intolerance", new StringType(each)));
        lens.kit()
                .backUps()
                .forEach(each -> input(
                        task,
                        "back-up",
                        "Lens that stands by",
                        new Reference("DeviceRequest/"
                                        + context.key().id(each.role().code()))
                                .setDisplay(
                                        each.model().name() + " " + each.power().signed())));
    }

    private static void expect(Task task, PlanContext context, Patient patient, KitLens primary) {
        input(task, "plan", "Plan", context.key().plan());
        input(
                task,
                "fingerprint",
                "Fingerprint of the plan",
                new StringType(context.plan().fingerprint().hex()));
        input(task, "eye", "Eye", context.eye());
        input(
                task,
                "lens-model",
                "Lens model",
                new Reference(primary.model().evidence().resource())
                        .setDisplay(primary.model().name()));
        input(task, "lens-power", "Labelled power", Quantities.dioptres(primary.power()));
        context.plan()
                .booking()
                .operation()
                .ifPresent(day -> input(task, "operation-day", "Day of the operation", new DateType(day.toString())));
        for (Identifier identifier : patient.getIdentifier()) {
            input(task, "patient-identifier", "Patient identifier", identifier.copy());
        }
        if (patient.hasBirthDate()) {
            input(
                    task,
                    "birth-date",
                    "Date of birth",
                    new DateType(patient.getBirthDateElement().getValueAsString()));
        }
    }

    private static void input(Task task, String code, String display, Type value) {
        task.addInput()
                .setType(Codes.concept(Systems.CHECK_INPUT, code, display))
                .setValue(value);
    }
}
