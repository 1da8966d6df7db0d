package org.lensward.board.fhir;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import org.hl7.fhir.r4.model.BooleanType;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.CodeType;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.DateType;
import org.hl7.fhir.r4.model.Device;
import org.hl7.fhir.r4.model.Parameters;
import org.hl7.fhir.r4.model.Parameters.ParametersParameterComponent;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Procedure;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.StringType;
import org.hl7.fhir.r4.model.Task;
import org.hl7.fhir.r4.model.Type;
import org.lensward.board.ServedDay;
import org.lensward.board.step.BundledBooking;
import org.lensward.flow.BundlePlanning;
import org.lensward.flow.PolicyFile;
import org.lensward.plan.Policy;
import org.lensward.record.Shelf;
import org.lensward.record.Systems;
import org.lensward.record.check.LensChecks;

/** What a careful team presents of the demo's ordinary eye, in a Bundle with the bank: planned, and confirmed by the surgeon. */
final class CarefulTeam {

    private static final String BOOKING = "ServiceRequest/booking-01";

    /** GS1 element string of a carton in the demo's bank, a Harbour 60 of 22 D. */
    static final String RIGHT = "(01)09521234000013(17)270228(10)HB62702(21)70107";

    /** A Harbour 60 of 23.5 D. */
    static final String STRONGER = "(01)09521234000013(17)270331(10)HB62703(21)70163";

    private CarefulTeam() {}

    /** Booking, data, plan, bank and the check that awaits confirmation. */
    static Bundle planned() throws IOException {
        Bundle all = PlanCalls.ordinary("in.json");
        ServedDay.FHIR
                .newJsonParser()
                .parseResource(Bundle.class, Files.readString(Path.of("demo-data/lens-bank.json")))
                .getEntry()
                .stream()
                .filter(each -> each.getResource() instanceof Device unit
                        && List.of("HB62702", "HB62703").contains(unit.getLotNumber()))
                .forEach(all::addEntry);
        booked(all);
        return all;
    }

    static Bundle confirmed() throws IOException {
        Bundle all = planned();
        booked(all).act((checks, now) -> checks.confirm(now, BOOKING, "The surgeon"));
        // Only what stands in the end; the demo's files number nothing.
        Shelf shelf = new Shelf(all);
        Bundle last = new Bundle().setType(Bundle.BundleType.COLLECTION);
        shelf.all(Resource.class).forEach(each -> last.addEntry().setResource(each));
        return last;
    }

    private static BundledBooking booked(Bundle all) {
        Policy policy = PolicyFile.shipped();
        Clock clock = Clock.systemUTC();
        LensChecks checks = new LensChecks(ServedDay.FHIR, policy, policy.check(), clock);
        return new BundledBooking(all, BOOKING, checks, ServedDay.FHIR)
                .planned(new BundlePlanning(ServedDay.FHIR, policy, clock));
    }

    /** Everything right, at the pick. */
    static Parameters pick(Bundle bundle, String scan) {
        Shelf shelf = new Shelf(bundle);
        Parameters given = new Parameters();
        given.addParameter().setName("bundle").setResource(bundle);
        add(given, "checkpoint", new CodeType("pick"));
        add(given, "scan", new StringType(scan));
        Patient patient = shelf.all(Patient.class).findFirst().orElseThrow();
        patient.getIdentifier().forEach(each -> add(given, "patient-identifier", each));
        add(given, "birth-date", new DateType(patient.getBirthDateElement().getValueAsString()));
        List.of("booking", "sheet", "biometry", "mark").forEach(place -> eye(given, place, "1290032005"));
        Procedure plan = shelf.find(Procedure.class, new Reference("Procedure/plan-booking-01"))
                .orElseThrow();
        add(given, "fingerprint", new StringType(plan.getExtensionString(Systems.extension("plan-fingerprint"))));
        add(given, "package", new CodeType("intact"));
        add(given, "no-allergy", new BooleanType(true));
        backUp(given, "spare", "harbour-60", "22");
        backUp(given, "sulcus", "harbour-60-three", "21");
        backUp(given, "anterior-chamber", "breakwater-ac", "18");
        add(given, "reader", new StringType("First nurse"));
        add(given, "second", new StringType("Second nurse"));
        add(given, "at", new DateTimeType("2026-12-10T08:20:00+00:00"));
        return given;
    }

    static void eye(Parameters given, String place, String code) {
        ParametersParameterComponent eye = given.addParameter().setName("eye");
        eye.addPart().setName("source").setValue(new CodeType(place));
        eye.addPart().setName("value").setValue(new CodeableConcept(new Coding(Systems.SNOMED, code, null)));
    }

    private static void backUp(Parameters given, String role, String model, String power) {
        ParametersParameterComponent lens = given.addParameter().setName("back-up");
        lens.addPart().setName("role").setValue(new CodeType(role));
        lens.addPart().setName("model").setValue(new Reference("DeviceDefinition/" + model));
        lens.addPart().setName("power").setValue(dioptres(power));
    }

    static Quantity dioptres(String power) {
        return new Quantity()
                .setValue(new BigDecimal(power))
                .setUnit("D")
                .setSystem(Systems.UCUM)
                .setCode("[diop]");
    }

    static void add(Parameters given, String name, Type value) {
        given.addParameter().setName(name).setValue(value);
    }

    static void replace(Parameters given, String name, Type... values) {
        given.getParameter().removeIf(each -> name.equals(each.getName()));
        List.of(values).forEach(each -> add(given, name, each));
    }

    static Task task(Bundle bundle) {
        return new Shelf(bundle).all(Task.class).findFirst().orElseThrow();
    }
}
