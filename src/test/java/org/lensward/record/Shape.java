package org.lensward.record;

import java.util.ArrayList;
import java.util.List;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Observation.ObservationStatus;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Reference;

/** The shapes in which a hospital may send one and the same biometry. */
enum Shape {
    /** One Observation for each measurement; keratometry is one with components. */
    FLAT,
    /** As flat, under a panel that alone carries side, date and method. */
    PANEL,
    /** One Observation, everything a component of it. */
    COMPONENT;

    static final String MEASURED_ON = "2026-02-16T09:30:00+01:00";

    /** Optical length, keratometry 43.00 / 43.25 D at 90 degrees and index 1.3375, anterior chamber 3.10 mm. */
    List<Observation> measured(String eye, String side, double length) {
        return switch (this) {
            case FLAT -> flat(eye, side, length);
            case PANEL -> panel(eye, side, length);
            case COMPONENT -> List.of(component(eye, side, length));
        };
    }

    private static List<Observation> flat(String eye, String side, double length) {
        List<Observation> all = members(eye, length);
        all.forEach(each -> placed(each, side));
        all.get(0).setMethod(Bundles.ours("biometry-method", "optical"));
        return all;
    }

    private static List<Observation> panel(String eye, String side, double length) {
        List<Observation> all = members(eye, length);
        Observation panel = placed(observation("panel-" + eye, "biometry-panel"), side);
        panel.setMethod(Bundles.ours("biometry-method", "optical"));
        all.forEach(each -> panel.addHasMember(new Reference("Observation/" + each.getId())));
        all.add(panel);
        return all;
    }

    private static Observation component(String eye, String side, double length) {
        Observation panel = placed(observation("panel-" + eye, "biometry-panel"), side);
        panel.setMethod(Bundles.ours("biometry-method", "optical"));
        add(panel, "axial-length", Bundles.quantity(String.valueOf(length), "mm"));
        add(panel, "axial-length-sd", Bundles.quantity("0.02", "mm"));
        cornea(panel);
        add(panel, "anterior-chamber-depth", Bundles.quantity("3.10", "mm"));
        return panel;
    }

    private static List<Observation> members(String eye, double length) {
        Observation axial = observation("length-" + eye, "axial-length");
        axial.setValue(Bundles.quantity(String.valueOf(length), "mm"));
        add(axial, "axial-length-sd", Bundles.quantity("0.02", "mm"));
        Observation cornea = observation("cornea-" + eye, "keratometry");
        cornea(cornea);
        Observation depth = observation("depth-" + eye, "anterior-chamber-depth");
        depth.setValue(Bundles.quantity("3.10", "mm"));
        return new ArrayList<>(List.of(axial, cornea, depth));
    }

    private static void cornea(Observation cornea) {
        add(cornea, "keratometry-flat-power", Bundles.dioptres("43.00"));
        add(cornea, "keratometry-steep-power", Bundles.dioptres("43.25"));
        add(cornea, "keratometry-steep-axis", Bundles.quantity("90", "deg"));
        add(cornea, "keratometric-index", Bundles.quantity("1.3375", "1"));
    }

    static void add(Observation into, String code, Quantity value) {
        into.addComponent().setCode(Bundles.ours("measurement", code)).setValue(value);
    }

    static Observation observation(String id, String code) {
        Observation observation = new Observation()
                .setStatus(ObservationStatus.FINAL)
                .setCode(Bundles.ours("measurement", code))
                .setSubject(Bundles.PATIENT.copy());
        observation.setId(id);
        return observation;
    }

    static Observation placed(Observation observation, String side) {
        return observation.setBodySite(Bundles.snomed(side)).setEffective(new DateTimeType(MEASURED_ON));
    }
}
