package org.lensward.risk.preparation;

import static org.lensward.eye.Policies.limit;

import java.util.List;
import java.util.Set;
import org.lensward.eye.Sign;
import org.lensward.quantity.CellsPerSquareMillimetre;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.MillimetresOfMercury;
import org.lensward.quantity.PureNumber;
import org.lensward.risk.TheatreItem;
import org.lensward.risk.preparation.AnaestheticRule.LongEye;

/** The policy of preparation that tests are made with; the same as the shipped one. */
public final class Preparations {

    private static final String COMMON = "common practice, no source";

    private Preparations() {}

    public static PreparationPolicy policy() {
        return new PreparationPolicy(
                Pharmacy.agents(),
                anaesthetic(),
                front(),
                support(),
                retina(),
                lensTypes(),
                limit(Dioptres.of(0.5), "common practice, no source: the neighbouring label"),
                Set.of(
                        TheatreItem.DYE_ABSORBING_LASER,
                        TheatreItem.PHOTODISRUPTION_LASER,
                        TheatreItem.THERMAL_OPENING_DEVICE,
                        TheatreItem.GENERAL_ANAESTHETIC));
    }

    private static AnaestheticPolicy anaesthetic() {
        return new AnaestheticPolicy(
                List.of(
                        new AnaestheticRule(
                                Anaesthetic.TOPICAL,
                                Set.of(Sign.CANNOT_FIXATE, Sign.CANNOT_COOPERATE),
                                Set.of(Sign.SWOLLEN_LENS, Sign.PHACODONESIS, Sign.LENS_DISLOCATION),
                                LongEye.AVOIDS,
                                COMMON),
                        new AnaestheticRule(
                                Anaesthetic.SUB_TENON, Set.of(Sign.CANNOT_COOPERATE), Set.of(), LongEye.ALLOWS, COMMON),
                        new AnaestheticRule(
                                Anaesthetic.NEEDLE_BLOCK,
                                Set.of(
                                        Sign.CANNOT_COOPERATE,
                                        Sign.STAPHYLOMA,
                                        Sign.HIGH_MYOPIA,
                                        Sign.WARFARIN,
                                        Sign.DIRECT_ANTICOAGULANT),
                                Set.of(),
                                LongEye.REFUSES,
                                "needle blocks: 3.1 % complications, serious ones 2.5 times those of sub-Tenon; staphyloma in about 15 % at 27 to 29 mm (secondary source)"),
                        new AnaestheticRule(
                                Anaesthetic.GENERAL, Set.of(Sign.HEART_FAILURE), Set.of(), LongEye.ALLOWS, COMMON)),
                limit(Millimetres.of(26), COMMON),
                limit(
                        PureNumber.of(3),
                        "of 304 consultants 40 % cancel above the patient's own range, 35 % above 3, 20 % above 4: survey in Eye 2018 (read)"),
                limit(PureNumber.of(3), COMMON));
    }

    private static FrontPolicy front() {
        return new FrontPolicy(
                limit(Millimetres.of(2.5), COMMON),
                limit(MillimetresOfMercury.of(21), COMMON),
                limit(Millimetres.of(5), COMMON),
                limit(CellsPerSquareMillimetre.of(1000), COMMON),
                limit(Millimetres.of(0.64), "common practice, no source: 640 micrometres"),
                limit(PureNumber.of(90), "suprachoroidal haemorrhage from age 90 OR 6.7 (secondary source)"));
    }

    private static SupportPolicy support() {
        return new SupportPolicy(
                Set.of(Sign.PHACODONESIS, Sign.LENS_DISLOCATION),
                Set.of(
                        Sign.PSEUDOEXFOLIATION,
                        Sign.EYE_INJURY,
                        Sign.VITRECTOMY,
                        Sign.HIGH_MYOPIA,
                        Sign.SWOLLEN_LENS,
                        Sign.RETINITIS_PIGMENTOSA),
                Set.of(Sign.MARFAN_SYNDROME),
                limit(PureNumber.of(4), "common practice, no source: 3 to 4 clock hours"),
                limit(Millimetres.of(10.5), "the loop a unit owns; measure yours"),
                limit(Millimetres.of(5), COMMON),
                "Marques, Marques and Osher, J Cataract Refract Surg 2004;30:1295 (injury, pseudoexfoliation, Marfan syndrome; read); the rest common practice, no source");
    }

    private static RetinaPolicy retina() {
        return new RetinaPolicy(
                limit(Millimetres.of(25), "retinal detachment above 25 mm HR 3.98 (secondary source)"),
                limit(PureNumber.of(60), "retinal detachment below 60 years HR 5.12 (secondary source)"));
    }

    private static LensTypePolicy lensTypes() {
        return new LensTypePolicy(
                List.of(
                        new LensTypeRule(LensType.MONOFOCAL, Set.of(), Set.of(), false, COMMON),
                        new LensTypeRule(
                                LensType.EXTENDED_FOCUS,
                                Set.of(
                                        Sign.MACULOPATHY,
                                        Sign.VISUAL_FIELD_LOSS,
                                        Sign.CORNEA_IRREGULAR,
                                        Sign.KERATOCONUS,
                                        Sign.PHACODONESIS,
                                        Sign.LENS_DISLOCATION,
                                        Sign.DRIVES_AT_NIGHT),
                                Set.of(
                                        Sign.GLAUCOMA,
                                        Sign.DIABETIC_RETINOPATHY,
                                        Sign.EPIRETINAL_MEMBRANE,
                                        Sign.RETINITIS_PIGMENTOSA,
                                        Sign.CORNEA_GUTTATA,
                                        Sign.PSEUDOEXFOLIATION,
                                        Sign.FUNDUS_NOT_SEEN),
                                true,
                                COMMON),
                        new LensTypeRule(
                                LensType.MULTIFOCAL,
                                Set.of(
                                        Sign.MACULOPATHY,
                                        Sign.EPIRETINAL_MEMBRANE,
                                        Sign.DIABETIC_RETINOPATHY,
                                        Sign.RETINITIS_PIGMENTOSA,
                                        Sign.GLAUCOMA,
                                        Sign.VISUAL_FIELD_LOSS,
                                        Sign.CORNEA_IRREGULAR,
                                        Sign.KERATOCONUS,
                                        Sign.PHACODONESIS,
                                        Sign.LENS_DISLOCATION,
                                        Sign.DRIVES_AT_NIGHT),
                                Set.of(
                                        Sign.UVEITIS,
                                        Sign.RETINAL_VEIN_OCCLUSION,
                                        Sign.CORNEA_GUTTATA,
                                        Sign.PSEUDOEXFOLIATION,
                                        Sign.FUNDUS_NOT_SEEN),
                                true,
                                COMMON),
                        new LensTypeRule(
                                LensType.TORIC,
                                Set.of(
                                        Sign.CORNEA_IRREGULAR,
                                        Sign.KERATOCONUS,
                                        Sign.CORNEA_RESHAPED,
                                        Sign.PHACODONESIS,
                                        Sign.LENS_DISLOCATION),
                                Set.of(Sign.PSEUDOEXFOLIATION),
                                true,
                                COMMON)),
                limit(Dioptres.of(1), "common practice, no source: 1.0 to 1.5 D"),
                limit(Dioptres.of(0.25), COMMON),
                limit(Millimetres.of(0.3), "value from memory"));
    }
}
