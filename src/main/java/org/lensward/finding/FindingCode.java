package org.lensward.finding;

import static org.lensward.finding.Severity.CAUTION;
import static org.lensward.finding.Severity.CONDITION;
import static org.lensward.finding.Severity.NOTE;
import static org.lensward.finding.Severity.WITHHOLDS;

import java.util.Locale;

/**
 * Every reason a plan can change, each with one meaning, one default severity, a message, a remedy and where the rule comes from.
 * The kebab-case form of the name is the code in our FHIR CodeSystem.
 */
public enum FindingCode {

    // The booking and the person
    BOOKING_WITHOUT_EYE(
            WITHHOLDS,
            "The booking does not say which eye.",
            "Put the eye on the booking as bodySite.",
            Source.WRONG_LENS_REVIEWS),
    BOOKING_FOR_BOTH_EYES(
            WITHHOLDS,
            "The booking names both eyes, or two different ones: %s.",
            "Make one booking for each eye.",
            Source.WRONG_LENS_REVIEWS),
    BOOKING_WITHOUT_DATE(
            WITHHOLDS,
            "The booking has no operation date, so the age of the biometry cannot be judged.",
            "Put occurrenceDateTime on the booking or link an appointment to it.",
            Source.HOUSE),
    PATIENT_MISSING(
            WITHHOLDS,
            "The booking's patient, %s, is not in the record that was read.",
            "Correct the booking's subject or restore the patient.",
            Source.WRONG_LENS_REVIEWS),
    BIRTH_DATE_MISSING(
            CONDITION,
            "The patient's date of birth is not recorded: age cannot enter the risk and identity cannot be checked.",
            "Complete the patient's date of birth.",
            Source.WRONG_LENS_REVIEWS),
    TARGET_NOT_RECORDED(
            CONDITION,
            "No target refraction is recorded; the policy's %s was used.",
            "Agree the target with the patient and record it on the booking.",
            Source.HOUSE),
    TARGET_HYPEROPIC(
            CONDITION,
            "The target of +%s would leave the eye hyperopic.",
            "Check the sign of the target with the patient's wish.",
            Source.WRONG_LENS_REVIEWS),
    TARGET_CONTRADICTORY(
            WITHHOLDS,
            "Two target refractions are recorded for this booking: %s and %s.",
            "Keep one target; mark the other entered in error.",
            Source.WRONG_LENS_REVIEWS),

    // One measurement
    MEASUREMENT_WITHOUT_EYE(
            WITHHOLDS,
            "The %s does not say which eye it was taken from.",
            "Put the eye on the measurement, or mark it entered in error and measure again.",
            Source.WRONG_LENS_REVIEWS),
    MEASUREMENT_FOR_BOTH_EYES(
            WITHHOLDS,
            "The %s is recorded for both eyes at once.",
            "Record one measurement for each eye.",
            Source.WRONG_LENS_REVIEWS),
    MEASUREMENT_EYES_CONFLICT(
            WITHHOLDS,
            "The %s names two different eyes: %s.",
            "Find out which eye was measured; mark the measurement entered in error and measure again.",
            Source.WRONG_LENS_REVIEWS),
    VALUE_MISSING(
            WITHHOLDS,
            "The %s has no value.",
            "Complete the value, or mark the measurement entered in error and measure again.",
            Source.HOUSE),
    UNIT_UNKNOWN(
            WITHHOLDS,
            "The %s has the unit '%s', which is not one of: %s.",
            "Correct the unit, or map it for this hospital.",
            Source.UCUM),
    UNIT_NORMALISED(
            NOTE,
            "The %s was recorded in '%s', which is not a valid unit code, and was read as %s.",
            "Ask the sender to use the standard unit code.",
            Source.UCUM),
    VALUE_IMPLAUSIBLE(
            WITHHOLDS,
            "The %s of %s lies outside what an eye can be (%s to %s).",
            "Check the value and its unit against the device; measure again.",
            Source.HOUSE),
    DATE_MISSING(WITHHOLDS, "The %s has no date.", "Complete the date of the measurement.", Source.HOUSE),
    DATE_IN_FUTURE(
            WITHHOLDS,
            "The %s is dated %s, which has not come yet.",
            "Correct the date of the measurement.",
            Source.HOUSE),
    METHOD_UNKNOWN(
            WITHHOLDS,
            "The axial length does not say how it was measured, so no lens constant fits it.",
            "Record the method: optical, immersion ultrasound or contact ultrasound.",
            Source.DICOM_ULTRASOUND),
    INDEX_MISSING(
            WITHHOLDS,
            "The corneal power is given in dioptres without its keratometric index.",
            "Record the index the keratometer used (often 1.3375), or the radii in millimetres.",
            Source.HOUSE),
    MERIDIANS_SWAPPED(
            WITHHOLDS,
            "The flat meridian of the keratometry is recorded as steeper than the steep one.",
            "Correct the keratometry; check which meridian the axis belongs to.",
            Source.HOUSE),
    MEASUREMENT_NOT_FINAL(
            NOTE, "The %s is still '%s' and was not used.", "Release the measurement when it is final.", Source.HOUSE),
    CODE_UNMAPPED(
            NOTE,
            "An observation of this eye has a code that is not understood: %s.",
            "Map the code for this hospital if it matters to planning.",
            Source.HOUSE),

    // All measurements of the eye together
    AXIAL_LENGTH_MISSING(
            WITHHOLDS,
            "There is no usable axial length of the %s eye.",
            "Measure the axial length of this eye; by immersion ultrasound if the lens is too dense for light.",
            Source.HOUSE),
    KERATOMETRY_MISSING(
            WITHHOLDS,
            "There is no usable keratometry of the %s eye.",
            "Measure the keratometry of this eye in the same session as its length.",
            Source.HOUSE),
    MEASUREMENTS_CONTRADICT(
            WITHHOLDS,
            "Two measurements of the %s of the %s eye on the same day disagree: %s and %s.",
            "Measure again and mark the wrong one entered in error.",
            Source.BIOMETRY_GATES),
    BIOMETRY_OVER_A_YEAR_OLD(
            CONDITION,
            "The biometry was measured %d months before the operation.",
            "Measure again before the operation, or confirm that nothing has changed.",
            Source.BIOMETRY_AGE),
    BIOMETRY_EXPIRED(
            WITHHOLDS,
            "The biometry was measured %d months before the operation; the policy allows %d.",
            "Measure this eye again.",
            Source.BIOMETRY_AGE),
    BIOMETRY_BEFORE_EYE_SURGERY(
            WITHHOLDS,
            "The eye was operated on (%s) after the biometry of %s.",
            "Measure this eye again.",
            Source.BIOMETRY_AGE),
    AXIAL_LENGTH_UNUSUAL(
            CONDITION,
            "The axial length of %s lies outside %s to %s.",
            "Repeat the measurement and confirm it.",
            Source.BIOMETRY_GATES),
    KERATOMETRY_UNUSUAL(
            CONDITION,
            "The mean corneal power of %s lies outside %s to %s.",
            "Repeat the keratometry and confirm it.",
            Source.BIOMETRY_GATES),
    CORNEAL_ASTIGMATISM_HIGH(
            CONDITION,
            "The corneal astigmatism of %s exceeds %s.",
            "Repeat the keratometry and look at the corneal topography.",
            Source.BIOMETRY_GATES),
    EYES_DIFFER_IN_LENGTH(
            CONDITION,
            "The two eyes differ by %s in axial length, more than %s.",
            "Measure both eyes again and confirm.",
            Source.BIOMETRY_GATES),
    EYES_DIFFER_IN_CORNEAL_POWER(
            CONDITION,
            "The two eyes differ by %s in mean corneal power, more than %s.",
            "Measure both eyes again and confirm.",
            Source.BIOMETRY_GATES),
    FELLOW_EYE_NOT_MEASURED(
            NOTE,
            "The fellow eye has no biometry to compare with.",
            "Measure both eyes where that is possible.",
            Source.BIOMETRY_GATES),
    LENGTH_READINGS_SCATTERED(
            CONDITION,
            "The axial length readings scatter by %s, more than %s.",
            "Repeat the axial length.",
            Source.COMMON_PRACTICE),
    LENGTH_SIGNAL_WEAK(
            CONDITION,
            "The signal-to-noise ratio of the axial length is %s, below %s.",
            "Repeat the axial length, or use immersion ultrasound.",
            Source.COMMON_PRACTICE),
    CORNEAL_READINGS_SCATTERED(
            CONDITION,
            "The corneal power readings scatter by %s, more than %s.",
            "Repeat the keratometry; look at the tear film.",
            Source.COMMON_PRACTICE),
    CONTACT_LENS_WORN_LATELY(
            CONDITION,
            "Contact lenses had been left out for %s days before the keratometry, fewer than %s.",
            "Measure the cornea again when the lenses have been out long enough.",
            Source.COMMON_PRACTICE),
    CONTACT_ULTRASOUND(
            CONDITION,
            "The axial length was taken by contact ultrasound, which may press the eye short.",
            "Repeat by immersion or by light.",
            Source.ULTRASOUND_CONTACT),
    CORNEA_AFTER_LASER(
            WITHHOLDS,
            "The cornea was reshaped %s: keratometry and standard formulas mislead, and no method here is made for it.",
            "Find out whether a laser flattened or steepened the cornea; else plan by hand from topography.",
            Source.POST_LASER),
    CORNEA_IRREGULAR(
            WITHHOLDS,
            "The cornea is irregular (%s): keratometry does not give its power.",
            "Obtain corneal topography; plan by hand.",
            Source.COMMON_PRACTICE),
    SILICONE_OIL_IN_EYE(
            WITHHOLDS,
            "The eye holds silicone oil (%s): sound and light travel differently in it.",
            "Confirm the length by light or correct it for oil, and say whether the oil stays.",
            Source.HOFFER_1994),
    LENS_ALREADY_OUT(
            WITHHOLDS,
            "The eye to be operated on has no natural lens (%s).",
            "Check the booking's eye; plan a secondary lens by hand.",
            Source.HOLLADAY_1993),
    FUNDUS_NOT_SEEN(
            CONDITION, "The fundus cannot be seen.", "Ultrasound B-scan before the list.", Source.COMMON_PRACTICE),
    SIDE_NOT_STATED(
            CAUTION,
            "The record says '%s' without saying of which eye; it was taken to concern this one.",
            "Put the eye on the entry.",
            Source.HOUSE),
    FELLOW_EYE_SURPRISE(
            CONDITION,
            "The fellow eye ended %s from its prediction.",
            "Find the reason before choosing this lens; half of the first eye's error may be carried over.",
            Source.SECOND_EYE),
    CORNEAL_ASTIGMATISM_TORIC(
            NOTE,
            "The corneal astigmatism of %s at %s may be worth a toric lens.",
            "Discuss a toric lens; confirm with a second keratometer.",
            Source.COMMON_PRACTICE),

    // Optics
    ANTERIOR_CHAMBER_DEPTH_MISSING(
            NOTE,
            "%s needs the anterior chamber depth from the epithelium, which was not measured; it was left out.",
            "Measure the anterior chamber depth.",
            Source.HAIGIS_2000),
    FORMULA_BEYOND_CHECKED_RANGE(
            CAUTION,
            "%s is used beyond the range it was checked in: %s.",
            "Compare formulas; prefer one made for such eyes.",
            Source.HOUSE),
    CORNEAL_HEIGHT_CUSP(
            CAUTION,
            "SRK/T has no real corneal height for this steep, long eye; its height was held at the radius.",
            "Prefer T2 or another formula for this eye.",
            Source.SHEARD_2010),
    NO_LENS_POSITION(
            WITHHOLDS,
            "%s places the lens at %s, outside this eye.",
            "Check the biometry and the lens constants.",
            Source.HOUSE),
    FORMULAS_DISAGREE(
            CAUTION,
            "The formulas disagree by %s on the chosen lens.",
            "Look again at the biometry; weigh the formulas for this eye.",
            Source.COMMON_PRACTICE),
    AXIAL_LENGTH_ADJUSTED(
            NOTE,
            "%s takes this long eye as %s, not the measured %s (%s).",
            "Compare with a formula made for long eyes.",
            Source.WANG_KOCH),
    LENGTH_CORRECTED_FOR_SOUND(
            NOTE,
            "The ultrasound length of %s, computed with %s, was corrected to %s for %s.",
            "Confirm what the sound passed through and the velocity the device used.",
            Source.HOFFER_1994),
    LENGTH_CORRECTED_FOR_CONTACT(
            CONDITION,
            "The contact ultrasound length of %s was lengthened to %s; single readings scatter by %s.",
            "Repeat by immersion or by light.",
            Source.ULTRASOUND_CONTACT),
    OIL_POWER_ADDED(
            CONDITION,
            "Silicone oil that stays asks for %s more lens power.",
            "Confirm with the retinal surgeon that the oil stays; a plano-convex lens, its curved side forward.",
            Source.SILICONE_OIL),
    POST_LASER_METHOD(
            CAUTION,
            "The cornea was reshaped; the lens was planned by %s: %s.",
            "Compare the methods; tell the patient that the result is less certain.",
            Source.POST_LASER),
    CORNEA_PERHAPS_RESHAPED(
            CONDITION,
            "The cornea of %s lies outside %s to %s, as after a laser that the record does not mention.",
            "Ask for earlier refractive surgery; look at the corneal topography.",
            Source.COMMON_PRACTICE),
    STEEP_MERIDIAN_MISSING(
            WITHHOLDS,
            "The corneal astigmatism of %s has no meridian; no toric lens can be planned.",
            "Record the steep meridian of the keratometry.",
            Source.HOUSE),
    MERIDIAN_WITHOUT_ASTIGMATISM(
            CONDITION,
            "A steep meridian of %s is recorded for a cornea without astigmatism.",
            "Check the keratometry; a value may be missing.",
            Source.HOUSE),
    SECOND_EYE_EXPECTED(
            NOTE,
            "With %s of the first eye's error carried over, this lens is expected to leave %s; the formula says %s.",
            "Weigh a different power if the first eye's error is explained by nothing else.",
            Source.SECOND_EYE),
    TORIC_ON_RESHAPED_CORNEA(
            WITHHOLDS,
            "A toric lens is asked for on a cornea that was reshaped; what its back adds to the astigmatism is not known.",
            "Name a lens without cylinder, or plan by hand from topography.",
            Source.POST_LASER),
    ADDED_LENS(
            NOTE,
            "From its refraction of %s alone, %s in the %s would need %s to reach %s.",
            "For the surgeon's own plan of a second lens; check the refraction and its vertex distance.",
            Source.HOLLADAY_1993),
    DEVICE_REPORTED(
            NOTE,
            "Device-reported: %s gives %s for %s; our unrounded power is %s.",
            "Compare; the device's method is not recomputed here.",
            Source.HOUSE),
    DEVICE_REPORT_DIFFERS(
            CAUTION,
            "Device-reported: %s gives %s for %s, %s away from our unrounded power.",
            "Find out why before choosing: target, constant, measurement or method.",
            Source.COMMON_PRACTICE),
    EYES_WILL_DIFFER(
            CAUTION,
            "The two eyes are expected to end %s apart, more than %s.",
            "Discuss the target with the patient; a contact lens or the second eye may be needed.",
            Source.COMMON_PRACTICE),
    RESULT_BEYOND_TARGET(
            CONDITION,
            "The chosen lens is predicted to leave %s, too far from the target of %s.",
            "Choose the next power, or confirm the target.",
            Source.COMMON_PRACTICE),

    // Lenses
    LENS_MODEL_NOT_CHOSEN(
            WITHHOLDS,
            "No lens model is named on the booking, and the catalogue offers %d house lenses for the capsular bag.",
            "Name the lens model on the booking, or mark one model of the catalogue as the house lens.",
            Source.HOUSE),
    LENS_MODEL_UNKNOWN(
            WITHHOLDS,
            "The lens model %s named on the booking is not in the catalogue as a lens for the capsular bag.",
            "Correct the booking, or add the model to the catalogue.",
            Source.HOUSE),
    LENS_MODEL_UNREADABLE(
            CAUTION, "The lens model cannot be used: %s.", "Correct the model's entry in the catalogue.", Source.HOUSE),
    CONSTANT_MISSING(
            WITHHOLDS,
            "The lens model %s has no constant for eyes measured by %s.",
            "Add the constant for this model and method; constants are never shared across methods.",
            Source.CONSTANTS),
    CONSTANT_CONVERTED(
            CAUTION,
            "The %s constant of %s was converted from its A-constant, not derived from outcomes.",
            "Add the constant published for this model and method.",
            Source.CONSTANTS),
    POWER_NOT_MADE(
            WITHHOLDS,
            "The power needed, %s, lies outside the powers made of %s.",
            "Choose a model that is made in this power.",
            Source.HOUSE),
    BACK_UP_LENS_MISSING(
            CONDITION,
            "No %s lens can be planned: %s.",
            "Choose a back-up lens by hand before the list.",
            Source.BACK_UPS),

    // Risk
    CAPSULE_RUPTURE_LIKELIER(
            CAUTION,
            "Posterior capsule rupture is %.1f times likelier than in the reference eye; chiefly: %s.",
            "Name the risk in the consent; plan the surgeon's grade and vitrectomy to match.",
            Source.NARENDRAN_2009),
    RISK_FACTORS_UNKNOWN(
            NOTE,
            "The record does not say: %s. Each is left out of the odds, not taken as absent.",
            "Complete the examination to sharpen the risk.",
            Source.NARENDRAN_2009),
    ZONULES_WEAK(
            CAUTION,
            "The lens is weakly held (%s).",
            "Have a capsular tension ring and hooks at hand; no toric or multifocal lens without a stable bag.",
            Source.COMMON_PRACTICE),
    IRIS_MAY_BE_FLOPPY(
            CAUTION,
            "The patient takes or took %s: the iris may be floppy.",
            "Have intracameral phenylephrine or adrenaline and iris hooks or a ring at hand.",
            Source.FLOPPY_IRIS),
    LENS_WHITE_OR_BROWN(
            CAUTION,
            "The lens is white or brown (%s).",
            "Have capsule dye and dense viscoelastic at hand.",
            Source.COMMON_PRACTICE),
    ALLERGY(
            CAUTION,
            "The patient is allergic to or does not tolerate: %s.",
            "Check antibiotic, antiseptic, anaesthetic, dye and latex against it.",
            Source.COMMON_PRACTICE),

// Opening the capsule

// Preparation

// Carton labels

// The lens bank

// The lens check
    CHECK_IDENTITY_INCOMPLETE(
            WITHHOLDS,
            "Two identifiers, each with its system, and the date of birth are needed to check the %s: expected %s, presented %s.",
            "Complete the patient's identifiers, each with its system, and the date of birth.",
            Source.WHO_IDENTITY),
    CHECK_PATIENT_DIFFERS(
            WITHHOLDS,
            "Another patient, by the %s: expected %s, presented %s.",
            "Stop. Find out whose plan and whose carton these are.",
            Source.WHO_IDENTITY),
    CHECK_BIRTH_DATE_DIFFERS(
            WITHHOLDS,
            "Another patient, by the %s: expected %s, presented %s.",
            "Stop. A namesake is another patient: find out whose plan this is.",
            Source.WHO_IDENTITY),
    CHECK_EYE_DIFFERS(
            WITHHOLDS,
            "Another eye, %s: expected %s, presented %s.",
            "Stop. The surgeon settles the eye from consent, mark and biometry.",
            Source.WRONG_LENS_REVIEWS),
    CHECK_PLAN_DIFFERS(
            WITHHOLDS,
            "The sheet in hand is of another %s: expected %s, presented %s.",
            "Throw the sheet away and print the plan that stands.",
            Source.WRONG_LENS_REVIEWS),
    CHECK_DAY_DIFFERS(
            WITHHOLDS,
            "The %s is not the planned one: expected %s, presented %s.",
            "Book the operation for the day it is done.",
            Source.COMMON_PRACTICE),
    CHECK_MODEL_DIFFERS(
            WITHHOLDS,
            "Another lens, %s: expected %s, presented %s.",
            "Put the carton back; the surgeon chooses again.",
            Source.WRONG_LENS_REVIEWS),
    CHECK_POWER_DIFFERS(
            WITHHOLDS,
            "Another lens, %s: expected %s, presented %s.",
            "Put the carton back; look at the sign as well; the surgeon chooses again.",
            Source.WRONG_LENS_REVIEWS),
    CHECK_CYLINDER_DIFFERS(
            WITHHOLDS,
            "Another lens, %s: expected %s, presented %s.",
            "Put the carton back; the surgeon chooses again.",
            Source.WRONG_LENS_REVIEWS),
    CHECK_AXIS_DIFFERS(
            WITHHOLDS,
            "Another %s than planned: expected %s, presented %s.",
            "Read the axis from the plan that stands; the surgeon chooses again.",
            Source.WRONG_LENS_REVIEWS),
    CHECK_CARTON_DIFFERS(
            WITHHOLDS,
            "Another carton than the %s: expected %s, presented %s.",
            "Find the carton that was picked, or let the surgeon choose again.",
            Source.WRONG_LENS_REVIEWS),
    CHECK_CARTON_NOT_FREE(
            WITHHOLDS,
            "This %s may not be used here: expected %s, presented %s.",
            "Put it back where it belongs and pick another.",
            Source.COMMON_PRACTICE),
    CHECK_LENS_EXPIRED(
            WITHHOLDS,
            "The lens is not in date by its %s: expected %s, presented %s.",
            "Take it out of use and pick another.",
            Source.COMMON_PRACTICE),
    CHECK_PACKAGE_NOT_INTACT(
            WITHHOLDS,
            "The %s is not as it must be: expected %s, presented %s.",
            "Do not use the lens; quarantine the carton.",
            Source.COMMON_PRACTICE),
    CHECK_ALLERGIES_DIFFER(
            WITHHOLDS,
            "The patient now tells other %s: expected %s, presented %s.",
            "Correct the record; a clinician decides what it means for antibiotic, antiseptic and dye.",
            Source.COMMON_PRACTICE),
    CHECK_BACK_UP_ABSENT(
            WITHHOLDS,
            "A %s does not stand by: expected %s, presented %s.",
            "Bring it, or let the surgeon decide to go on without.",
            Source.BACK_UPS),
    CHECK_SECOND_PERSON_MISSING(
            WITHHOLDS,
            "Not enough %s: expected %s, presented %s.",
            "Let somebody else read it as well, and name both.",
            Source.WRONG_LENS_REVIEWS),
    CHECK_SCAN_UNREADABLE(
            WITHHOLDS,
            "The scan cannot be read: %s.",
            "Scan the whole label again; clean it or enter what is printed. Nothing was changed.",
            Source.HOUSE),
    CHECK_NONE_OPEN(
            WITHHOLDS,
            "There is no lens check of this booking.",
            "See whether the plan is withheld or not yet made.",
            Source.HOUSE),
    CHECK_NOT_CONFIRMED(
            WITHHOLDS,
            "No surgeon has confirmed the plan.",
            "Let the surgeon confirm or change the plan before a lens is picked.",
            Source.WRONG_LENS_REVIEWS),
    CHECK_OUT_OF_ORDER(
            WITHHOLDS,
            "The step %s does not follow a check that is %s.",
            "Do the checkpoints in their order.",
            Source.COMMON_PRACTICE),
    CHECK_STOPPED(
            WITHHOLDS,
            "The lens check has ended: %s.",
            "Only a new choice by the surgeon goes on, in a new lens check.",
            Source.WRONG_LENS_REVIEWS),
    CHECK_CLOSED(
            WITHHOLDS,
            "The lens check takes no such step: it is %s.",
            "Read the check that stands for this booking.",
            Source.HOUSE),
    CHECK_NOT_STOPPED(
            WITHHOLDS, "The lens check has not ended; it is %s.", "Go on with it, or change the plan.", Source.HOUSE),
    CHECK_PLAN_CHANGED(
            WITHHOLDS,
            "What the plan rests on has changed since: nothing verified counts any more.",
            "Wait for the new plan and let the surgeon confirm it.",
            Source.WRONG_LENS_REVIEWS),
    CHECK_LIST_CHANGED(
            WITHHOLDS,
            "The operating list has changed: the patient stood at %s and now stands at %s.",
            "Verify again from the pick.",
            Source.WRONG_LENS_REVIEWS),
    CHECK_OVERRIDE_REFUSED(
            WITHHOLDS,
            "An override needs a clinician, a reason and a second, different person.",
            "Name both people and the reason, or stop.",
            Source.WRONG_LENS_REVIEWS),
    CHECK_SURGEON_UNNAMED(
            WITHHOLDS,
            "A surgeon decides this and says why: the surgeon or the reason is missing.",
            "Name the surgeon as the record refers to them, and the reason.",
            Source.WRONG_LENS_REVIEWS),
    CHECK_CHANGE_EMPTY(
            WITHHOLDS,
            "Neither another target nor another lens is named.",
            "Name what the surgeon changes.",
            Source.HOUSE)
;

    private final Severity severity;
    private final String template;
    private final String remedy;
    private final String source;

    FindingCode(Severity severity, String template, String remedy, String source) {
        this.severity = severity;
        this.template = template;
        this.remedy = remedy;
        this.source = source;
    }

    /** The code as the record carries it, such as {@code axial-length-missing}. */
    public String code() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    public Severity severity() {
        return severity;
    }

    String template() {
        return template;
    }

    /** What a person does about it. */
    public String remedy() {
        return remedy;
    }

    /** Where the rule comes from. */
    public String source() {
        return source;
    }

    /** Sources cited by more than one code. */
    private static final class Source {
        static final String HOUSE = "Lensward: absence and doubt are findings, never defaults";
        static final String COMMON_PRACTICE = "common practice, no source";
        static final String UCUM = "Unified Code for Units of Measure";
        static final String WRONG_LENS_REVIEWS = "Kelly and Jalil, Eye 2011; Steeples et al., Eye 2016";
        static final String BIOMETRY_GATES = "Knox Cartwright et al., Eye 2010;24:894-900 (values from memory)";
        static final String BIOMETRY_AGE = "common practice, no source; the limit is the policy's";
        static final String ULTRASOUND_CONTACT = "contact reads 0.20 mm shorter than immersion (value from memory)";
        static final String POST_LASER = "Haigis, J Cataract Refract Surg 2008;34:1658; Aramberri, 2003;29:2063";
        static final String HOFFER_1994 = "Hoffer, J Cataract Refract Surg 1994 (ultrasound velocities)";
        static final String HOLLADAY_1993 = "Holladay, Am J Ophthalmol 1993;116:63";
        static final String HAIGIS_2000 = "Haigis et al., Graefe's Arch 2000;238:765";
        static final String SHEARD_2010 = "Sheard, Smith and Cooke, J Cataract Refract Surg 2010;36:1829";
        static final String WANG_KOCH =
                "Wang et al., J Cataract Refract Surg 2011;37:2018; Wang and Koch, 2018;44:1396";
        static final String SILICONE_OIL = "common practice: the index step behind a plano-convex lens";
        static final String SECOND_EYE = "half of the first eye's error (value from memory)";
        static final String DICOM_ULTRASOUND = "DICOM PS3.16 CID 4230";
        static final String CONSTANTS = "constants belong to one model and one biometry method; common practice";
        static final String BACK_UPS =
                "common practice, no source: back-up lenses are in the building before the anaesthetic";
        static final String NARENDRAN_2009 = "Narendran et al., Eye 2009;23:31-37";
        static final String WHO_IDENTITY =
                "WHO Patient Safety Solutions 2, 2007: at least two identifiers (from memory)";
        static final String FLOPPY_IRIS = "relative risks by drug (secondary sources); common practice";
    }
}
