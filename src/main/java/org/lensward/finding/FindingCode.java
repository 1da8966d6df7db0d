package org.lensward.finding;

import static org.lensward.finding.Severity.CAUTION;
import static org.lensward.finding.Severity.CONDITION;
import static org.lensward.finding.Severity.NOTE;
import static org.lensward.finding.Severity.WITHHOLDS;

/**
 * Every reason a plan can change, each with one meaning, one default severity, a message, a remedy and where the rule comes from.
 * The kebab-case form of the name is the code in our FHIR CodeSystem.
 */
public enum FindingCode implements Coded {

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
    MEASURED_MORE_THAN_ONCE(
            NOTE,
            "The %s of the %s eye was measured more than once that day, from %s to %s; the plan rests on the first named.",
            "Look whether each is of this eye, and mark what is wrong entered in error.",
            Source.HOUSE),
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
    DRUG_NOT_UNDERSTOOD(
            CAUTION,
            "The drug '%s' has no code that is understood: whether it slackens the iris or thins the blood is not known.",
            "Look at the drug by hand; code it by the ATC, or map the hospital's code.",
            Source.HOUSE),
    EXAMINATION_NOT_USED(
            CAUTION,
            "An examination was not used: %s.",
            "Correct the entry, or mark it entered in error and examine again.",
            Source.HOUSE),
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
            "The patient takes or took what slackens the iris, by risk ratio: %s. Having stopped does not undo it.",
            "Have intracameral phenylephrine or adrenaline and iris hooks or a ring at hand.",
            Source.FLOPPY_IRIS),
    LENS_WHITE_OR_BROWN(
            CAUTION,
            "The lens is white or brown (%s).",
            "Have capsule dye and dense viscoelastic at hand.",
            Source.COMMON_PRACTICE),
    ALLERGY_NOT_UNDERSTOOD(
            CONDITION,
            "What the allergy to '%s' forbids is not understood: no drug of this plan is cleared of it.",
            "Look at it by hand before any drug is drawn up; code it by SNOMED CT, the ATC or our allergens.",
            Source.HOUSE),
    CAPSULE_MAY_TEAR_OUT(
            CAUTION,
            "The lens %s (%s): in series 3.85 to 28.3 %% of capsules under such pressure tore out to the side.",
            "Dye; dense cohesive viscoelastic; let fluid out before and behind the nucleus through a stab that does not leak;"
                    + " open small, then enlarge, or use an automated opening.",
            Source.RADIAL_TEAR),
    CAPSULE_OPEN_BEHIND(
            CAUTION,
            "The capsule behind the opacity may be open already (%s).",
            "No hydrodissection; low flow; vitrectomy and a lens for the sulcus at hand.",
            Source.COMMON_PRACTICE),
    CHAMBER_SHALLOW(
            CAUTION,
            "The anterior chamber is shallow: %s.",
            "Lower the pressure first; dense viscoelastic; mind iris and endothelium.",
            Source.COMMON_PRACTICE),
    ENDOTHELIUM_AT_RISK(
            CAUTION,
            "The corneal endothelium may not outlast the operation (%s).",
            "Dispersive viscoelastic, renewed often; low energy; warn of a later graft.",
            Source.CHEN_2021),
    MACULA_MAY_SWELL(
            CAUTION,
            "Macular oedema is likelier than the 1.17 %% of plain eyes, by relative risk: %s.",
            "OCT of the macula before the operation; prophylaxis by local policy; no multifocal lens.",
            Source.CHU_2016),
    DETACHMENT_LIKELIER(
            CAUTION,
            "Retinal detachment is likelier, by hazard ratio: %s; a capsule that ruptures with loss of vitreous adds x12.83.",
            "Examine the dilated fundus; tell the patient which signs to report.",
            Source.PETOUSIS_2016),
    PRESSURE_HIGH(
            CONDITION,
            "The pressure inside the eye is %s, above %s.",
            "Lower the pressure and measure it again before the operation.",
            Source.COMMON_PRACTICE),
    PRESSURE_RAISED(
            CAUTION,
            "The pressure inside the eye is %s, above %s.",
            "Lower the pressure before the eye is opened.",
            Source.COMMON_PRACTICE),
    PRESSURE_SPIKE_LIKELY(
            CAUTION,
            "The pressure may rise more than in other eyes after the operation (%s); it does in a fifth of all eyes.",
            "Wash the viscoelastic out well; prophylaxis by local policy; measure at two to three hours.",
            Source.COMMON_PRACTICE),
    CHOROID_MAY_BLEED(
            CAUTION,
            "Bleeding behind the choroid, 0.03 %% of all operations, is likelier by odds ratio: %s; a ruptured capsule adds x17.6.",
            "Lower the pressure first; anaesthetic in the chamber; keep the chamber formed; be ready to close at once.",
            Source.STEWART_2023),
    LIDS_INFECTED(
            CONDITION,
            "Lids or lacrimal sac are infected (%s).",
            "Treat the infection first; operate when it is gone.",
            Source.COMMON_PRACTICE),
    INFECTION_LIKELIER(
            CAUTION,
            "The patient carries bacteria that common antibiotics do not reach (%s).",
            "Ask the microbiologist for the antibiotic; last on the list.",
            Source.COMMON_PRACTICE),
    BLOOD_THINNED(
            CAUTION,
            "The patient's blood is thinned (%s).",
            "Go on with it by local policy; no sharp needle; INR near the operation for a vitamin K antagonist.",
            Source.COMMON_PRACTICE),
    NEEDLE_HAZARDOUS(
            CAUTION,
            "A sharp needle behind the eye is a hazard here (%s).",
            "Blunt sub-Tenon, topical or general anaesthetic.",
            Source.COMMON_PRACTICE),
    COOPERATION_IN_DOUBT(
            CAUTION,
            "The patient may not keep still or lie as needed (%s).",
            "Settle anaesthetic, table and helpers beforehand.",
            Source.COMMON_PRACTICE),
    RISKS_NOT_EXCLUDED(
            NOTE,
            "The record does not speak of: %s. Each is unknown, not absent.",
            "Ask and examine before the list.",
            Source.HOUSE),
    ALLERGY(
            CAUTION,
            "The patient is allergic to or does not tolerate: %s.",
            "Check antibiotic, antiseptic, anaesthetic, dye and latex against it.",
            Source.COMMON_PRACTICE),

    // Opening the capsule
    OPENING_TECHNIQUE_MISSING(
            CONDITION,
            "No technique of opening the capsule that the policy has suits this eye.",
            "The surgeon decides how the capsule is opened; see what stands against each technique.",
            Source.COMMON_PRACTICE),
    OPENING_FACTS_UNKNOWN(
            CONDITION,
            "Whether %s suits this eye is not known: %s.",
            "Complete the examination, or choose another technique.",
            Source.HOUSE),
    OPTIC_DIAMETER_UNKNOWN(
            CAUTION,
            "The catalogue gives no usable optic diameter of %s: the opening's diameter and its cover cannot be told.",
            "Add the optic's diameter to the catalogue.",
            Source.HOUSE),
    OPENING_MARGIN_THIN(
            CAUTION,
            "An opening of %s under an optic of %s, %s off centre, leaves %s of capsule over its edge; less than %s is thin.",
            "Centre the opening; measure it and its decentration before the lens goes in.",
            Source.OVERLAP),
    OPENING_PLANNED_SMALL(
            CAUTION,
            "Under an optic of %s the opening is planned at %s; openings below %s are apt to contract.",
            "Weigh a lens with a larger optic; look for contraction afterwards.",
            Source.CONTRACTION),
    OPENING_MAY_CONTRACT(
            CAUTION,
            "The capsule may contract (%s): %s of the opening's area instead of %s; planned at %s%s it would heal to %s.",
            "Clear the cells from under the capsule's rim; look for contraction in the first weeks.",
            Source.CONTRACTION),
    DYE_CONCENTRATION_UNUSUAL(
            CONDITION,
            "%s lies outside %s to %s: it is %.1f times the usual %s. It is permitted only by the local protocol '%s'.",
            "The surgeon confirms the protocol: cornea coated, no air bubble, stain even, every trace washed out.",
            Source.DYE_STRENGTH),
    DYE_PROTOCOL_MISSING(
            NOTE,
            "%s, %.1f times the usual %s, has no local protocol; an opening by dye-absorbing laser is not planned.",
            "Name the local protocol in the policy, or leave the laser out of it.",
            Source.DYE_STRENGTH),
    DYE_FORBIDDEN(
            CAUTION,
            "The capsule should be stained (%s), but no dye may be used: %s.",
            "Prepare to open without dye: light from the side, high magnification, dense viscoelastic.",
            Source.COMMON_PRACTICE),
    DYE_ALLERGY_UNCLEAR(
            CONDITION,
            "%s is planned, but %s.",
            "Find out what the patient is allergic to before any dye is used.",
            Source.HOUSE),
    DYE_MAY_STAIN_LENS(
            CONDITION,
            "%s may stain the water-rich optic of %s.",
            "Never with such a lens supplied dry; else wash out every trace first, or choose another material.",
            Source.DYE_UPTAKE),
    OPENING_TOO_SMALL(
            CONDITION,
            "The opening measures %s; below %s it is apt to contract.",
            "Widen it before the lens goes in, where its cover leaves room.",
            Source.CONTRACTION),
    OPENING_CENTRE_UNKNOWN(
            CAUTION,
            "How far the opening lies off centre was not recorded; the lens's cover and centring cannot be judged.",
            "Measure the decentration of the opening before the lens goes in.",
            Source.HOUSE),
    OPTIC_NOT_COVERED(
            CONDITION,
            "The opening of %s, %s off centre, does not cover the optic of %s all round: %s of its edge stands free.",
            "Choose a larger optic, or a monofocal lens without cylinder whose place matters less.",
            Source.OVERLAP),
    OPENING_DECENTRED(
            CONDITION,
            "The opening lies %s off centre; more than %s puts %s in doubt.",
            "Choose a lens whose centring matters less, or widen the opening towards the axis.",
            Source.DECENTRATION),

    // Preparation
    NO_AGENT_LEFT(
            CONDITION,
            "The policy leaves no %s for this patient: %s.",
            "Ask the anaesthetist or the pharmacist; choose by local policy.",
            Source.HOUSE),
    ANAESTHETIC_UNDECIDED(
            CAUTION,
            "The anaesthetic is undecided (%s, if nothing speaks against it); unknown: %s.",
            "Find out at the assessment and decide.",
            Source.HOUSE),
    NO_ANAESTHETIC_LEFT(
            CONDITION,
            "Every anaesthetic of the policy is refused: %s.",
            "Decide with the anaesthetist.",
            Source.HOUSE),
    CLOTTING_UNKNOWN(
            CONDITION, "The patient takes %s, and %s.", "Measure the INR near the operation.", Source.COMMON_PRACTICE),
    CLOTTING_TOO_SLOW(
            CONDITION,
            "The INR of %s is above %s.",
            "Bring it into the patient's range with whoever manages the warfarin, or defer; do not stop it unasked.",
            Source.COMMON_PRACTICE),
    LENS_TYPE_UNSUITABLE(
            CONDITION,
            "The planned lens (%s) does not suit this eye: %s.",
            "Choose another kind of lens, or have the surgeon confirm this one with the patient.",
            Source.COMMON_PRACTICE),
    LENS_TYPE_DOUBTFUL(
            CAUTION,
            "Whether the planned lens (%s) suits this eye is not settled: %s.",
            "Find out what is unknown; discuss the doubt with the patient.",
            Source.COMMON_PRACTICE),

    // Carton labels
    LABEL_EMPTY(WITHHOLDS, "The scan is empty.", Remedy.SCAN_AGAIN, Source.HOUSE),
    LABEL_NOT_RECOGNISED(
            WITHHOLDS,
            "The scan is neither a GS1 nor a HIBC label of a device: %s.",
            "Scan the barcode of the carton that carries device, lot and expiry; if none will, two people type it.",
            Source.LABELS),
    LABEL_GARBLED(
            WITHHOLDS,
            "The scan is garbled: %s.",
            "Set the scanner's keyboard layout to the computer's and scan again; until then, two people type the label.",
            Source.LABELS),
    LABEL_TRUNCATED(WITHHOLDS, "The scan breaks off: %s.", Remedy.SCAN_AGAIN, Source.LABELS),
    LABEL_CHECK_WRONG(
            WITHHOLDS, "The check character at the end of %s does not fit the rest.", Remedy.SCAN_AGAIN, Source.LABELS),
    LABEL_PART_UNKNOWN(
            WITHHOLDS,
            "The label goes on with %s, which its standard does not define, so the rest cannot be told apart.",
            "Scan again; if it stays, two people type device, lot, serial and expiry, and the maker is told.",
            Source.LABELS),
    LABEL_DATE_IMPOSSIBLE(WITHHOLDS, "The label's dates cannot be: %s.", Remedy.SCAN_AGAIN, Source.LABELS),
    LABEL_AMBIGUOUS(
            WITHHOLDS,
            "More than one label is in the scan, or it contradicts itself: %s.",
            "Put the other cartons away and scan one barcode at a time.",
            Source.WRONG_LENS_REVIEWS),
    LABEL_LINK_WRONG(
            WITHHOLDS,
            "The second barcode does not belong to the first: it links to %s, the first ends in %s.",
            "Put the other cartons away and scan both barcodes of this carton.",
            Source.HIBC),
    LABEL_OF_LARGER_BOX(
            WITHHOLDS,
            "The label, %s, is that of a larger box, not of one carton.",
            "Scan the carton that holds the single lens.",
            Source.LABELS),
    LABEL_WITHOUT_DEVICE(
            WITHHOLDS,
            "The scan names no device; it gives: %s.",
            "Scan the carton's other barcode together with this one.",
            Source.LABELS),

    // The lens bank
    LENS_NOT_IN_STOCK(
            CONDITION,
            "The %s lens, %s, for %s is not to be had from stock: %s.",
            "Order it by the day the stock check names or let the surgeon choose another lens; no anaesthetic before it is there.",
            Source.BACK_UPS),
    LENS_ORDER_LATE(
            CONDITION,
            "%s, needed on %s, should have been ordered by %s.",
            "Ask for an urgent delivery or a loan, let the surgeon choose another power or model, or move the operation.",
            Source.BACK_UPS),
    LENS_TO_BE_FETCHED(
            CAUTION,
            "The %s lens lies at %s and is needed at %s on %s.",
            "Send for it in time and see it arrive before the list.",
            Source.COMMON_PRACTICE),
    LENS_SHARED(
            NOTE,
            "One %s lens stands by for %d operations of the day.",
            "Once it is opened, find another before the next anaesthetic.",
            Source.COMMON_PRACTICE),
    LENS_HELD_UNUSED(
            CAUTION,
            "A carton is %s for this booking that cannot serve it.",
            "Put it back on the shelf, or quarantine it if it is out of date.",
            Source.COMMON_PRACTICE),

    UNIT_UNREADABLE(
            CAUTION,
            "The unit cannot be used as it stands in the record: %s.",
            "Correct the unit in the record against its carton.",
            Source.HOUSE),
    UNIT_LABEL_INCOMPLETE(
            WITHHOLDS,
            "The label gives neither a serial number nor a lot.",
            "Read the carton again; put it aside if it says no more.",
            Source.COMMON_PRACTICE),
    UNIT_NOT_IN_BANK(
            WITHHOLDS,
            "The bank holds no unit %s.",
            "Look for the carton by its label; take it in if it is new.",
            Source.HOUSE),
    UNIT_MODEL_UNKNOWN(
            WITHHOLDS,
            "The catalogue holds no lens model %s.",
            "Add the model to the catalogue, or read the carton again.",
            Source.HOUSE),
    UNIT_NOT_MADE(
            WITHHOLDS,
            "The model %s is not made in %s.",
            "Read the carton again: model, power with its sign, cylinder.",
            Source.WRONG_LENS_REVIEWS),
    UNIT_ALREADY_IN_BANK(
            WITHHOLDS,
            "This unit was taken in before; it is %s.",
            "Compare the serial number with the carton: either it was taken in twice or two cartons bear one number.",
            Source.HOUSE),
    UNIT_NOT_AVAILABLE(
            WITHHOLDS,
            "The unit is %s and cannot be %s.",
            "Take another unit, or settle first what this one is held or kept apart for.",
            Source.HOUSE),
    UNIT_HELD_FOR_ANOTHER(
            WITHHOLDS,
            "The unit is %s for %s, not for %s.",
            "Take another unit; only who holds this one may give it back.",
            Source.WRONG_LENS_REVIEWS),
    UNIT_STEP_MISSING(
            WITHHOLDS,
            "The unit is %s and cannot be %s: it must be %s first.",
            "Record the missing step, if it was taken.",
            Source.HOUSE),
    UNIT_EXPIRED(
            WITHHOLDS,
            "The unit may be used until %s, not on %s.",
            "Take another unit; put this one in quarantine.",
            Source.COMMON_PRACTICE),
    UNIT_GONE(
            WITHHOLDS,
            "The unit is %s and cannot be %s any more.",
            "Compare the serial number with the carton in hand.",
            Source.HOUSE),
    UNIT_MOVED_MEANWHILE(
            WITHHOLDS,
            "Someone else moved %s in the meantime; nothing was written.",
            "Look at it again, then decide anew.",
            Source.HOUSE),
    IMPLANT_WITHOUT_PLAN(
            WITHHOLDS,
            "There is no open plan to record the implantation on: %s.",
            "Look at the booking's plan; what is already recorded is corrected in the record itself.",
            Source.HOUSE),
    IMPLANT_NOT_AS_PLANNED(
            WITHHOLDS,
            "The lens in hand is %s; the plan's is %s.",
            "Stop and check. If a clinician chose this lens, record who and why.",
            Source.WRONG_LENS_REVIEWS),
    RECALL_LOT_UNRECORDED(
            CAUTION,
            "The unit has no lot in the record and may belong to the recalled one.",
            "Read the lot from the carton or the theatre notes.",
            Source.HOUSE),
    RECALL_PATIENT_UNKNOWN(
            WITHHOLDS,
            "The unit is implanted, and the record does not say in whom.",
            "Find the operation by the booking or the theatre register.",
            Source.HOUSE),
    RECALL_PATIENTS_DIFFER(
            WITHHOLDS,
            "The record says of one unit that it is in more than one patient: %s.",
            "Find out which by the labels in the notes; warn all of them until then.",
            Source.HOUSE),
    BANK_INCOMPLETE(
            WITHHOLDS,
            "The record counts %s lenses and gave %s: the list is not complete.",
            "Ask again; if it repeats, have the record's server looked at.",
            Source.HOUSE),

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
            Source.HOUSE),

    // Messages and files
    MESSAGE_UNREADABLE(
            WITHHOLDS,
            "The message cannot be read at %s: %s.",
            "Correct the sending system and send again.",
            Source.HL7),
    MESSAGE_NOT_ACCEPTED(
            WITHHOLDS,
            "This is not for us: %s %s.",
            "Send biometry as ORU^R01 and bookings as SIU^S12 to S15, HL7 2.3 to 2.8, for the processing id agreed.",
            Source.HL7),
    MESSAGE_FIELD_MISSING(
            WITHHOLDS,
            "The message does not fill %s.",
            "Have the sending system fill the field; then send again.",
            Source.HL7),
    MESSAGE_WITHOUT_EYE(
            WITHHOLDS,
            "Nothing in the message says which eye %s is of.",
            "Send the eye with each measurement and each booking; then send again.",
            Source.WRONG_LENS_REVIEWS),
    MESSAGE_EYES_CONFLICT(
            WITHHOLDS,
            "The message names more than one eye for %s: %s.",
            "Ask the sender which eye is meant; send one booking and one value for each eye.",
            Source.WRONG_LENS_REVIEWS),
    MESSAGE_EYE_UNREADABLE(
            WITHHOLDS,
            "The eye of %s is given by a code that nobody should guess.",
            "Send OD or OS of HL7 table 0163, or a SNOMED CT structure of one eye.",
            Source.HL7),
    PATIENT_SYSTEM_UNKNOWN(
            WITHHOLDS,
            "No patient identifier comes from an authority we know; %s is asked for.",
            "Add the authority to the setting lensward.hl7.systems, or correct the sender.",
            Source.HOUSE),
    PATIENT_NOT_IN_RECORD(
            WITHHOLDS,
            "The patient named at %s is not in the record; nobody is made up from a message.",
            "Register the patient; then send again.",
            Source.HOUSE),
    PATIENT_AMBIGUOUS(
            WITHHOLDS,
            "The identifiers at %s fit %s patients of the record.",
            "Have the duplicate merged or the identifier corrected; then send again.",
            Source.WRONG_LENS_REVIEWS),
    PATIENT_CONTRADICTED(
            WITHHOLDS,
            "What is sent at %s contradicts the record's patient.",
            "Find out whose measurements these are before anything is stored.",
            Source.WRONG_LENS_REVIEWS),
    FILE_NOT_ACCEPTED(
            WITHHOLDS,
            "The file is refused: %s.",
            "Give a FHIR Bundle (.json), NDJSON (.ndjson) or our CSV (.csv) within the size limit.",
            Source.HOUSE),
    FILE_UNREADABLE(
            WITHHOLDS,
            "The file cannot be read at %s: %s.",
            "Correct that place and put the whole file in again; nothing of it was stored.",
            Source.HOUSE),

    // The site's codes
    SITE_CODE_AMBIGUOUS(
            CONDITION,
            "The site's code map gives %s more than one meaning: %s. None was taken.",
            "Leave one entry for it in the site's code map; until then read this part of the record by eye.",
            Source.HOUSE),
    SITE_CODE_CONTRADICTED(
            WITHHOLDS,
            "%s means %s by the site's code map, but the code beside it means %s.",
            "Find out what was measured; correct the site's code map, or mark the entry entered in error.",
            Source.HOUSE),
    SITE_EYE_CONTRADICTED(
            CONDITION,
            "%s names the %s eye by the site's code map, but the record beside it names the %s eye.",
            "Find out which eye is meant; correct the site's code map, or mark the entry entered in error.",
            Source.WRONG_LENS_REVIEWS),
    PATIENT_IDENTIFIER_NOT_COUNTED(
            CONDITION,
            "None of the patient's identifiers is of a kind that the site's code map counts.",
            "Name the system of the patient's number in the site's code map, or complete the patient's identifiers.",
            Source.WRONG_LENS_REVIEWS),

    // The way to the record
    RECORD_POINTS_ELSEWHERE(
            WITHHOLDS,
            "%s of the record leads to another server (%s); nothing was asked or shown there.",
            "Have the record give addresses of its own, or correct lensward.record.url to the address it gives.",
            Source.SMART),
    RECORD_SIGN_IN_REFUSED(
            WITHHOLDS,
            "The server of tokens at %s does not let the adapter in: %s.",
            "Check client id, registered public keys and scopes with whoever runs that server.",
            Source.SMART),
    RECORD_SCOPE_MISSING(
            WITHHOLDS,
            "The record does not grant what the adapter needs: %s.",
            "Have these scopes granted to the adapter's client; it asks for no more than it needs.",
            Source.SMART),
    RECORD_KEY_MISSING(
            WITHHOLDS,
            "No key in %s is valid today and of a kind that the server takes: %s.",
            "Put a new private key (JWK) there and have its public half registered.",
            Source.SMART),
    RECORD_UNGUARDED(
            WITHHOLDS,
            "The server of tokens at %s is not reached over TLS; nothing was shown there.",
            "Give it an https address.",
            Source.SMART),

    // The lens bank's stores
    UNIT_STORE_UNKNOWN(
            WITHHOLDS,
            "The record holds no place %s.",
            "Choose a store that is in the record, or have it added.",
            Source.HOUSE);

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

    /** Remedies of more than one code. */
    private static final class Remedy {
        static final String SCAN_AGAIN = "Scan the carton's label again; if it will not scan, two people type it.";
    }

    /** Sources cited by more than one code. */
    private static final class Source {
        static final String HL7 = "HL7 version 2.5, chapters 2, 7 and 10";
        static final String WHO_IDENTITY =
                "WHO Patient Safety Solutions 2, 2007: at least two identifiers (from memory)";
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
        static final String FLOPPY_IRIS = "Wang et al., Front Med 2022;9:941130 (abstract read)";
        static final String RADIAL_TEAR = "range of published series (secondary source); common practice";
        static final String CHEN_2021 =
                "Chen et al., J Clin Med 2021;10:2270 (abstract read); limits are common practice";
        static final String CHU_2016 = "Chu et al., Ophthalmology 2016;123:316 (abstract read)";
        static final String PETOUSIS_2016 = "Petousis et al., Br J Ophthalmol 2016;100:1461 (abstract read)";
        static final String STEWART_2023 = "Stewart et al., National Ophthalmology Database report 12, Eye 2023";
        static final String SMART = "HL7 SMART App Launch 2.2.0, Backend Services (from memory)";
        static final String HIBC = "ANSI/HIBC 2.6, supplier labelling standard (2016)";
        static final String LABELS = "GS1 General Specifications; ANSI/HIBC 2.6";
        static final String OVERLAP = "circle geometry; the limit is common practice, no source";
        static final String CONTRACTION = "Hayashi et al., Br J Ophthalmol 1998;82:1429; Kato et al., 2001;85:21;"
                + " Hayashi et al., Ophthalmology 1998;105:1239; J Cataract Refract Surg 1996;22:585 (abstracts)";
        static final String DYE_STRENGTH =
                "J Cataract Refract Surg 2002;28:988 (abstract): 0.0125 % stains;" + " the range is the policy's";
        static final String DYE_UPTAKE = "Ozbek et al., Ophthalmologica 2004;218:243 (abstract)";
        static final String DECENTRATION = "Ashena et al., Vision 2020;4:41 (abstract): 0.2 to 0.3 mm goes unnoticed";
    }
}
