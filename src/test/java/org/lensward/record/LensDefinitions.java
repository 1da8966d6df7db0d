package org.lensward.record;

import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.DeviceDefinition;
import org.hl7.fhir.r4.model.DeviceDefinition.DeviceDefinitionPropertyComponent;
import org.hl7.fhir.r4.model.DeviceDefinition.DeviceNameType;
import org.hl7.fhir.r4.model.Quantity;

/** Invented lens models as DeviceDefinitions. */
final class LensDefinitions {

    private static final String DICOM = "http://dicom.nema.org/resources/ontology/DCM";

    private LensDefinitions() {}

    static DeviceDefinition bag() {
        DeviceDefinition lens = model("bag", "capsular-bag", "118.4");
        constant(lens, Bundles.coded(DICOM, "111773"), Bundles.quantity("1.45", "mm"));
        constant(lens, Bundles.coded(DICOM, "111772"), Bundles.quantity("5.20", "mm"));
        constant(lens, Bundles.coded(DICOM, "111769"), Bundles.quantity("1.30", "mm"));
        constant(lens, Bundles.coded(DICOM, "111770"), Bundles.quantity("0.4", "1"));
        constant(lens, Bundles.coded(DICOM, "111771"), Bundles.quantity("0.1", "1"));
        return lens;
    }

    static DeviceDefinition sulcus() {
        return model("sulcus", "sulcus", "118.4");
    }

    static DeviceDefinition anteriorChamber() {
        return model("chamber", "anterior-chamber", "115.3");
    }

    static DeviceDefinition model(String id, String site, String aConstant) {
        DeviceDefinition lens = new DeviceDefinition().setType(Bundles.ours("device-type", "intraocular-lens"));
        lens.setId(id);
        lens.addDeviceName().setName("the " + id + " lens").setType(DeviceNameType.MODELNAME);
        property(lens, "placement").addValueCode(Bundles.ours("lens-site", site));
        property(lens, "optic-diameter").addValueQuantity(Bundles.quantity("6.0", "mm"));
        property(lens, "power-range")
                .addValueQuantity(Bundles.dioptres("6"))
                .addValueQuantity(Bundles.dioptres("30"))
                .addValueQuantity(Bundles.dioptres("0.5"));
        constant(lens, Bundles.snomed("397263007"), Bundles.quantity(aConstant, "1"));
        return lens;
    }

    static DeviceDefinitionPropertyComponent property(DeviceDefinition lens, String code) {
        return lens.addProperty().setType(Bundles.ours("lens-property", code));
    }

    static DeviceDefinitionPropertyComponent constant(DeviceDefinition lens, CodeableConcept type, Quantity value) {
        return lens.addProperty()
                .setType(type)
                .addValueQuantity(value)
                .addValueCode(Bundles.ours("biometry-method", "optical"));
    }

    /** The property of ours under that code. */
    static DeviceDefinitionPropertyComponent find(DeviceDefinition lens, String code) {
        return lens.getProperty().stream()
                .filter(each -> each.getType().getCodingFirstRep().getCode().equals(code))
                .findFirst()
                .orElseThrow();
    }
}
