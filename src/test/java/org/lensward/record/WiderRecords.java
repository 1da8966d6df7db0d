package org.lensward.record;

import java.util.List;
import java.util.function.Consumer;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Condition;
import org.hl7.fhir.r4.model.DeviceDefinition;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;
import org.lensward.flow.PolicyFile;
import org.lensward.plan.EyePlan;
import org.lensward.plan.Planner;

/** Records of eyes that are not ordinary: astigmatic, lasered, long, full of oil, without a lens. */
final class WiderRecords {

    static final String RIGHT = "1290032005";
    private static final String DICOM = "http://dicom.nema.org/resources/ontology/DCM";

    private WiderRecords() {}

    static Bundles toric() {
        return Bundles.ordinary().add(toricBag()).change(Observation.class, "cornea-right", cornea -> {
            powers(cornea, "43.00", "45.00");
            component(cornea, "keratometry-steep-axis", Bundles.quantity("80", "deg"));
        });
    }

    static DeviceDefinition toricBag() {
        DeviceDefinition lens = LensDefinitions.bag();
        LensDefinitions.property(lens, "cylinders")
                .addValueQuantity(Bundles.dioptres("1.0"))
                .addValueQuantity(Bundles.dioptres("1.5"))
                .addValueQuantity(Bundles.dioptres("2.25"))
                .addValueQuantity(Bundles.dioptres("3.0"));
        return lens;
    }

    /** After laser for myopia, with the figures of before it. */
    static Bundles lasered() {
        return sign(length(flat(Bundles.ordinary()), "25.9"), "cornea-flattened-by-laser")
                .add(reading("before-power", "corneal-power-before-laser", Bundles.dioptres("44.00")))
                .add(reading("before-refraction", "refraction-before-laser", Bundles.dioptres("-6.50")))
                .add(reading("after-refraction", "refraction-after-laser", Bundles.dioptres("-0.25")));
    }

    static Bundles laseredWithoutHistory() {
        return sign(length(flat(Bundles.ordinary()), "25.9"), "cornea-flattened-by-laser");
    }

    static Bundles laseredForHyperopia() {
        return sign(length(Bundles.ordinary(), "22.4"), "cornea-steepened-by-laser");
    }

    static Bundles flat(Bundles record) {
        return record.change(Observation.class, "cornea-right", cornea -> powers(cornea, "38.00", "38.50"));
    }

    static Bundles longEye() {
        return length(Bundles.ordinary(), "27.5").change(DeviceDefinition.class, "bag", lens -> lowest(lens, "-5"));
    }

    static Bundles oil() {
        return sign(sign(Bundles.ordinary(), "silicone-oil"), "silicone-oil-stays");
    }

    static Bundles length(Bundles record, String millimetres) {
        return record.change(
                Observation.class, "length-right", length -> length.setValue(Bundles.quantity(millimetres, "mm")));
    }

    static Bundles sign(Bundles record, String code) {
        Condition condition = new Condition().setSubject(Bundles.PATIENT.copy()).setCode(Bundles.ours("sign", code));
        condition.addBodySite(Bundles.snomed(RIGHT));
        condition.setId(code);
        return record.add(condition);
    }

    /** Of the right eye, by its own device. */
    static Observation reading(String id, String code, Quantity value) {
        return Shape.placed(Shape.observation(id, code), RIGHT).setValue(value);
    }

    static Observation deviceReported(String power, String lens) {
        Observation report = reading("device", "device-reported-power", Bundles.dioptres(power));
        report.getMethod().setText("the device's own way");
        report.addFocus(new Reference(lens));
        return report;
    }

    static void powers(Observation cornea, String flat, String steep) {
        component(cornea, "keratometry-flat-power", Bundles.dioptres(flat));
        component(cornea, "keratometry-steep-power", Bundles.dioptres(steep));
    }

    static void component(Observation into, String code, Quantity value) {
        into.getComponent().stream()
                .filter(each -> each.getCode().getCodingFirstRep().getCode().equals(code))
                .forEach(each -> each.setValue(value));
    }

    static Consumer<Observation> byUltrasound(String dicom) {
        return length -> length.setMethod(Bundles.coded(DICOM, dicom));
    }

    private static void lowest(DeviceDefinition lens, String power) {
        LensDefinitions.find(lens, "power-range").getValueQuantity().set(0, Bundles.dioptres(power));
    }

    /** Under the policy that is shipped. */
    static EyePlan plan(Bundles record) {
        return new Planner(PolicyFile.shipped()).plan(record.planning());
    }

    static List<Resource> written(Bundles record) {
        Publication publication =
                new PlanTransaction(record.shelf(), Publishing.NOW).publish(record.read(), plan(record));
        return Publishing.written(publication).getEntry().stream()
                .map(Bundle.BundleEntryComponent::getResource)
                .toList();
    }
}
