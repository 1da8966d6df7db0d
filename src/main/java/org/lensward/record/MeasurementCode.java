package org.lensward.record;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.lensward.finding.Coded;

/** The measurements that planning reads, with what their value can be in any eye; outside that, unit or value is wrong. */
enum MeasurementCode implements Coded {
    BIOMETRY_PANEL("biometry", UnitKind.NONE, 0, 0),
    KERATOMETRY("keratometry", UnitKind.NONE, 0, 0),
    AXIAL_LENGTH("axial length", UnitKind.LENGTH, 14, 40, "64742-0", "66067-0"),
    AXIAL_LENGTH_SD("scatter of the axial length", UnitKind.LENGTH, 0, 5),
    AXIAL_LENGTH_SNR("signal-to-noise ratio of the axial length", UnitKind.NUMBER, 0, 1e6),
    SOUND_VELOCITY("velocity of sound", UnitKind.VELOCITY, 900, 1800),
    CORNEAL_POWER_SD("scatter of the corneal power", UnitKind.POWER, 0, 10),
    SOFT_LENSES_OUT("days without soft contact lenses", UnitKind.DURATION, 0, 100_000),
    RIGID_LENSES_OUT("days without rigid contact lenses", UnitKind.DURATION, 0, 100_000),
    KERATOMETRY_FLAT_POWER("flat corneal power", UnitKind.POWER, 30, 60),
    KERATOMETRY_STEEP_POWER("steep corneal power", UnitKind.POWER, 30, 60),
    KERATOMETRY_FLAT_RADIUS("flat corneal radius", UnitKind.LENGTH, 5.6, 11.3),
    KERATOMETRY_STEEP_RADIUS("steep corneal radius", UnitKind.LENGTH, 5.6, 11.3),
    KERATOMETRY_STEEP_AXIS("steep corneal meridian", UnitKind.ANGLE, 0, 180),
    KERATOMETRIC_INDEX("keratometric index", UnitKind.NUMBER, 1.32, 1.35),
    ANTERIOR_CHAMBER_DEPTH("anterior chamber depth", UnitKind.LENGTH, 1, 6),
    LENS_THICKNESS("lens thickness", UnitKind.LENGTH, 2, 8),
    DILATED_PUPIL("dilated pupil", UnitKind.LENGTH, 0.5, 11),
    TARGET_REFRACTION("target refraction", UnitKind.POWER, -15, 5),
    PREDICTED_REFRACTION("predicted refraction", UnitKind.POWER, -25, 15),
    ACHIEVED_REFRACTION("achieved refraction", UnitKind.POWER, -25, 15),
    SPHERICAL_EQUIVALENT("spherical equivalent", UnitKind.POWER, -30, 20),
    CORNEAL_POWER_BEFORE_LASER("corneal power before the laser", UnitKind.POWER, 30, 60),
    REFRACTION_BEFORE_LASER("refraction before the laser", UnitKind.POWER, -25, 15),
    REFRACTION_AFTER_LASER("refraction after the laser", UnitKind.POWER, -25, 15),
    DEVICE_REPORTED_POWER("device-reported lens power", UnitKind.POWER, -20, 60),
    INTRAOCULAR_PRESSURE("pressure inside the eye", UnitKind.PRESSURE, 0, 90, "79892-6", "79893-4", "56844-4"),
    ENDOTHELIAL_DENSITY("endothelial cell density", UnitKind.DENSITY, 100, 6000),
    CORNEAL_THICKNESS("central corneal thickness", UnitKind.LENGTH, 0.2, 1.2, "64744-6", "66068-8", "79826-4"),
    ZONULE_LOSS("clock hours without zonule", UnitKind.NUMBER, 0, 12),
    CLOTTING_INR("INR", UnitKind.NUMBER, 0.5, 20, "6301-6", "34714-6"),
    OPENING_DIAMETER("diameter of the capsule opening", UnitKind.LENGTH, 2, 10),
    OPENING_DECENTRATION("decentration of the capsule opening", UnitKind.LENGTH, 0, 4),
    // after the operation
    REFRACTION("refraction", UnitKind.NONE, 0, 0, "251794006"),
    REFRACTION_SPHERE("sphere", UnitKind.POWER, -25, 20, "251795007"),
    REFRACTION_CYLINDER("cylinder", UnitKind.POWER, -12, 12, "251797004"),
    REFRACTION_AXIS("axis of the cylinder", UnitKind.ANGLE, 0, 180, "251799001"),
    VERTEX_DISTANCE("vertex distance", UnitKind.LENGTH, 0, 20),
    CORRECTED_ACUITY("corrected visual acuity", UnitKind.ACUITY, -0.47, 3, "419775003");

    private static final Set<MeasurementCode> OF_EXAMINATION = EnumSet.range(INTRAOCULAR_PRESSURE, CORRECTED_ACUITY);

    private final String words;
    private final UnitKind kind;
    private final double least;
    private final double most;
    private final List<String> standard;

    MeasurementCode(String words, UnitKind kind, double least, double most, String... standard) {
        this.words = words;
        this.kind = kind;
        this.least = least;
        this.most = most;
        this.standard = List.of(standard);
    }

    /** The measurement that the concept names, by our code, by LOINC or by SNOMED CT. */
    static Optional<MeasurementCode> of(CodeableConcept concept) {
        for (MeasurementCode each : values()) {
            if (Codes.has(concept, Systems.MEASUREMENT, each.code())
                    || each.standard.stream().anyMatch(code -> Codes.has(concept, system(code), code))) {
                return Optional.of(each);
            }
        }
        return Optional.empty();
    }

    /** A LOINC code ends in a hyphen and its check digit, a SNOMED CT code is digits alone. */
    private static String system(String code) {
        return code.contains("-") ? Systems.LOINC : Systems.SNOMED;
    }

    String words() {
        return words;
    }

    UnitKind kind() {
        return kind;
    }

    double least() {
        return least;
    }

    double most() {
        return most;
    }

    /** Whether it serves the operation itself and not the choice of the lens, so that doubt about it withholds nothing. */
    boolean ofExamination() {
        return OF_EXAMINATION.contains(this);
    }

    /** Whether it is one of the scalars that make up a keratometry. */
    boolean ofCornea() {
        return name().startsWith("KERATOMETR") && this != KERATOMETRY;
    }
}
