package org.lensward.record.outcome;

import static org.lensward.record.outcome.JsonParts.OURS;
import static org.lensward.record.outcome.JsonParts.SNOMED;
import static org.lensward.record.outcome.JsonParts.coding;
import static org.lensward.record.outcome.JsonParts.component;
import static org.lensward.record.outcome.JsonParts.components;
import static org.lensward.record.outcome.JsonParts.concept;
import static org.lensward.record.outcome.JsonParts.measured;
import static org.lensward.record.outcome.JsonParts.number;
import static org.lensward.record.outcome.JsonParts.quantity;
import static org.lensward.record.outcome.JsonParts.reference;
import static org.lensward.record.outcome.JsonParts.side;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.lensward.eye.Laterality;
import org.lensward.optics.FormulaName;

/** An invented eye as a bulk export would hold it, a line for each resource, with one thing wrong where that is wanted. */
final class InventedLines {

    private static final String EXTENSION = "https://lensward.org/fhir/StructureDefinition/";
    private static final String DICOM = "http://dicom.nema.org/resources/ontology/DCM";

    private static final Map<FormulaName, String> METHODS = Map.of(
            FormulaName.SRK_T, coding(DICOM, "111767"),
            FormulaName.HOLLADAY_1, coding(DICOM, "111762"),
            FormulaName.HOFFER_Q, coding(DICOM, "111764"),
            FormulaName.HAIGIS, coding(DICOM, "111760"),
            FormulaName.T2, coding(OURS + "formula", "t2"));

    private final InventedEye eye;
    private final Fault fault;

    InventedLines(InventedEye eye, Fault fault) {
        this.eye = eye;
        this.fault = fault;
    }

    Stream<String> all() {
        return Stream.of(
                        operations(),
                        lens(),
                        biometry(),
                        predictions(),
                        refractions(),
                        openings(),
                        Stream.of(request(), risk()),
                        trail())
                .flatMap(each -> each);
    }

    Stream<String> operations() {
        String told = fault == Fault.NOBODY_SAYS_HOW_IT_WENT
                ? ""
                : ",\"complication\":[" + concept(OURS + "complication", complication()) + "]";
        String site = fault == Fault.OPERATION_WITHOUT_EYE ? "" : ",\"bodySite\":[" + side(eye.side) + "]";
        String lens = fault == Fault.LENS_NOT_RECORDED ? "" : focal("lens-" + eye.key());
        String opening = ",{\"url\":\"" + EXTENSION + "planned-opening\",\"extension\":[{\"url\":\"technique\","
                + "\"valueCodeableConcept\":" + concept(OURS + "opening-technique", "torn-by-hand")
                + "},{\"url\":\"diameter\",\"valueQuantity\":" + quantity(5.25, "mm") + "}]}";
        String first = operation(
                "operation-" + eye.key(),
                eye.day,
                "\"extension\":[{\"url\":\"" + EXTENSION + "target-refraction\",\"valueQuantity\":"
                        + quantity(-0.25, "[diop]") + "}" + opening + "],\"basedOn\":["
                        + reference("ServiceRequest/booking-" + eye.key())
                        + "],",
                site + told + lens);
        return switch (fault) {
            case EXCHANGED_BEFORE_REFRACTION -> Stream.of(first, exchange(20));
            case EXCHANGED_LATER -> Stream.of(first, exchange(120));
            case TOLD_TWICE ->
                Stream.of(first, first.replace("\"operation-" + eye.key(), "\"operation-again-" + eye.key()));
            default -> Stream.of(first);
        };
    }

    private String exchange(int daysAfter) {
        return operation(
                "exchange-" + eye.key(),
                eye.day.plusDays(daysAfter),
                "",
                ",\"bodySite\":[" + side(eye.side) + "],\"complication\":[" + concept(OURS + "complication", "none")
                        + "]" + focal("second-lens-" + eye.key()));
    }

    private String complication() {
        return fault == Fault.CAPSULE_TORN ? "capsule-rupture" : "none";
    }

    private String operation(String id, LocalDate day, String plan, String rest) {
        return "{\"resourceType\":\"Procedure\",\"id\":\"" + id + "\"," + plan + "\"status\":\"completed\",\"code\":"
                + concept(SNOMED, "415089008") + "," + subject() + ",\"performedDateTime\":\"" + day
                + "\",\"performer\":[{\"actor\":" + reference("Practitioner/surgeon-" + eye.surgeon) + "}]" + rest
                + "}";
    }

    private static String focal(String device) {
        return ",\"focalDevice\":[{\"action\":" + concept("http://hl7.org/fhir/device-action", "implanted")
                + ",\"manipulated\":" + reference("Device/" + device) + "}]";
    }

    Stream<String> lens() {
        String wearer = fault == Fault.LENS_OF_SOMEBODY_ELSE ? "Patient/somebody-else" : eye.patient();
        String first = device("lens-" + eye.key(), implanted(), wearer);
        return switch (fault) {
            case LENS_LOST -> Stream.of();
            case EXCHANGED_BEFORE_REFRACTION, EXCHANGED_LATER ->
                Stream.of(first, device("second-lens-" + eye.key(), eye.power + 1, wearer));
            default -> Stream.of(first);
        };
    }

    private double implanted() {
        return eye.power;
    }

    private String model() {
        return fault == Fault.OTHER_LENS_THAN_PLANNED
                ? "DeviceDefinition/harbour-60-three"
                : "DeviceDefinition/harbour-60";
    }

    private String device(String id, double power, String wearer) {
        return "{\"resourceType\":\"Device\",\"id\":\"" + id + "\",\"definition\":" + reference(model())
                + ",\"status\":\"active\",\"type\":" + concept(OURS + "device-type", "intraocular-lens")
                + ",\"property\":[{\"type\":" + concept(OURS + "lens-parameter", "lens-power") + ",\"valueQuantity\":["
                + quantity(power, "[diop]") + "]}],\"patient\":" + reference(wearer) + "}";
    }

    String request() {
        String role = fault == Fault.IN_THE_SULCUS ? "sulcus" : "primary";
        return "{\"resourceType\":\"DeviceRequest\",\"id\":\"request-" + eye.key() + "\",\"extension\":[{\"url\":\""
                + EXTENSION + "lens-model\",\"valueReference\":" + reference("DeviceDefinition/harbour-60")
                + "}],\"basedOn\":[" + reference("ServiceRequest/booking-" + eye.key())
                + "],\"status\":\"completed\",\"intent\":\"plan\",\"codeCodeableConcept\":{\"text\":\"Harbour 60\"},\"parameter\":[{\"code\":"
                + concept(OURS + "lens-parameter", "lens-power") + ",\"valueQuantity\":" + quantity(eye.power, "[diop]")
                + "},{\"code\":" + concept(OURS + "lens-parameter", "kit-role") + ",\"valueCodeableConcept\":"
                + concept(OURS + "kit-role", role) + "}]," + subject() + "}";
    }

    Stream<String> biometry() {
        String before = eye.day.minusDays(20).toString();
        String version = fault == Fault.BIOMETRY_CORRECTED_AFTERWARDS ? "2" : "1";
        return Stream.of(
                observation(
                        "length-" + eye.key(),
                        version,
                        measured("axial-length"),
                        before,
                        eye.side,
                        ",\"method\":" + concept(OURS + "biometry-method", "optical") + ",\"valueQuantity\":"
                                + quantity(eye.length, "mm")),
                observation(
                        "cornea-" + eye.key(),
                        "1",
                        measured("keratometry"),
                        before,
                        eye.side,
                        components(
                                component(measured("keratometry-flat-power"), quantity(eye.flat, "[diop]")),
                                component(measured("keratometry-steep-power"), quantity(eye.steep, "[diop]")),
                                component(measured("keratometry-steep-axis"), quantity(eye.axis, "deg")),
                                component(measured("keratometric-index"), quantity(1.3375, "1")))),
                observation(
                        "chamber-" + eye.key(),
                        "1",
                        measured("anterior-chamber-depth"),
                        before,
                        eye.side,
                        ",\"valueQuantity\":" + quantity(eye.chamber, "mm")));
    }

    Stream<String> predictions() {
        return eye.predicted.entrySet().stream().map(each -> prediction(each.getKey(), each.getValue()));
    }

    private String prediction(FormulaName formula, double value) {
        return "{\"resourceType\":\"Observation\",\"id\":\"predicted-"
                + formula.name().toLowerCase(Locale.ROOT).replace('_', '-')
                + "-" + eye.key() + "\",\"partOf\":[" + reference("Procedure/operation-" + eye.key())
                + "],\"status\":\"preliminary\",\"code\":" + measured("predicted-refraction") + "," + subject()
                + ",\"bodySite\":" + side(eye.side) + ",\"method\":{\"coding\":[" + METHODS.get(formula)
                + "]},\"valueQuantity\":" + quantity(value, "[diop]") + ",\"derivedFrom\":["
                + String.join(
                        ",",
                        List.of(
                                reference("Observation/length-" + eye.key()),
                                reference("Observation/cornea-" + eye.key()),
                                reference("Observation/chamber-" + eye.key())))
                + "]" + components(constants(formula)) + "}";
    }

    private static String[] constants(FormulaName formula) {
        return switch (formula) {
            case HOLLADAY_1 -> new String[] {component(concept(DICOM, "111773"), quantity(1.74, "mm"))};
            case HOFFER_Q -> new String[] {component(concept(DICOM, "111772"), quantity(5.49, "mm"))};
            case HAIGIS ->
                new String[] {
                    component(concept(DICOM, "111769"), quantity(0.22, "mm")),
                    component(concept(DICOM, "111770"), quantity(0.234, "1")),
                    component(concept(DICOM, "111771"), quantity(0.168, "1"))
                };
            default -> new String[] {component(concept(SNOMED, "397263007"), quantity(118.9, "1"))};
        };
    }

    Stream<String> refractions() {
        return fault == Fault.NEVER_REFRACTED ? Stream.of() : Stream.of(new InventedRefraction(eye, fault).line(this));
    }

    Stream<String> openings() {
        if (eye.number % 4 != 0) {
            return Stream.of();
        }
        double later = Math.rint((eye.opening - 0.15 - 0.01 * (eye.number % 9)) * 100) / 100;
        return Stream.of(opening("made", eye.day, eye.opening), opening("later", eye.day.plusDays(60), later));
    }

    private String opening(String when, LocalDate day, double diameter) {
        return observation(
                "opening-" + when + "-" + eye.key(),
                "1",
                measured("opening-diameter"),
                day.toString(),
                eye.side,
                ",\"valueQuantity\":" + quantity(diameter, "mm"));
    }

    String risk() {
        return "{\"resourceType\":\"RiskAssessment\",\"id\":\"risk-" + eye.key() + "\",\"basedOn\":"
                + reference("ServiceRequest/booking-" + eye.key()) + ",\"status\":\"preliminary\",\"code\":"
                + concept(OURS + "risk-outcome", "posterior-capsule-rupture") + "," + subject()
                + ",\"prediction\":[{\"probabilityDecimal\":" + number(eye.rupture) + "}]}";
    }

    Stream<String> trail() {
        return Stream.of("{\"resourceType\":\"Provenance\",\"id\":\"trail-" + eye.key() + "\",\"target\":["
                + reference("Procedure/operation-" + eye.key()) + "],\"recorded\":\"" + eye.day.minusDays(10)
                + "T08:00:00Z\",\"agent\":[{\"who\":{\"display\":\"Lensward\"}}],\"entity\":[{\"role\":\"source\",\"what\":"
                + reference("Observation/length-" + eye.key() + "/_history/1") + "}]}");
    }

    String observation(String id, String version, String code, String day, Laterality of, String rest) {
        return "{\"resourceType\":\"Observation\",\"id\":\"" + id + "\",\"meta\":{\"versionId\":\"" + version
                + "\"},\"status\":\"final\",\"code\":" + code + "," + subject() + ",\"effectiveDateTime\":\"" + day
                + "\",\"bodySite\":" + side(of) + rest + "}";
    }

    private String subject() {
        return "\"subject\":" + reference(eye.patient());
    }
}
