package org.lensward.risk.preparation;

import static org.lensward.eye.Policies.limit;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.lensward.eye.Allergen;
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
                agents(), anaesthetic(), front(), support(), retina(), lensTypes(), Set.of(TheatreItem.DYE_ABSORBING_LASER, TheatreItem.PHOTODISRUPTION_LASER, TheatreItem.THERMAL_OPENING_DEVICE, TheatreItem.GENERAL_ANAESTHETIC));
    }

    private static Map<Purpose, List<Agent>> agents() {
        return Map.ofEntries(
Map.entry(Purpose.ANTISEPTIC, List.of(
new Agent("povidone iodine", "5 % into the conjunctival sac, 3 minutes", Set.of(Allergen.IODINE), Set.of(), Set.of(), "Speaker and Menikoff, Ophthalmology 1991;98:1769 (value from memory)"),
new Agent("aqueous chlorhexidine", "0.05 %", Set.of(Allergen.CHLORHEXIDINE), Set.of(), Set.of(), COMMON))),
Map.entry(Purpose.ANTIBIOTIC, List.of(
new Agent("cefuroxime", "1 mg in 0.1 mL", Set.of(Allergen.CEPHALOSPORIN), Set.of(Allergen.PENICILLIN), Set.of(Sign.RESISTANT_BACTERIA), "ESCRS Endophthalmitis Study Group, J Cataract Refract Surg 2007;33:978-988 (value from memory)"),
new Agent("moxifloxacin", "0.5 mg in 0.1 mL", Set.of(Allergen.FLUOROQUINOLONE), Set.of(), Set.of(Sign.RESISTANT_BACTERIA), "common practice, no source; doses differ between units"))),
Map.entry(Purpose.MYDRIATIC, List.of(
new Agent("phenylephrine", "1.5 % without preservative or bisulphite, 0.6 mL", Set.of(Allergen.PHENYLEPHRINE), Set.of(), Set.of(), "Lorente et al., Ophthalmology 2012 (abstract read); 1 to 1.25 % may do: Chua et al., J Cataract Refract Surg 2024;50:187 (abstract read)"),
new Agent("adrenaline", "1:10 000 unpreserved, 0.2 mL", Set.of(Allergen.ADRENALINE), Set.of(), Set.of(), COMMON))),
Map.entry(Purpose.TOPICAL_ANAESTHETIC, List.of(
new Agent("oxybuprocaine", "0.4 % drops", Set.of(Allergen.ESTER_ANAESTHETIC), Set.of(), Set.of(), COMMON),
new Agent("lidocaine", "4 % drops", Set.of(Allergen.AMIDE_ANAESTHETIC), Set.of(), Set.of(), COMMON))),
Map.entry(Purpose.BLOCK_ANAESTHETIC, List.of(
new Agent("lidocaine with hyaluronidase", "2 % with 15 IU/mL, 3 to 5 mL", Set.of(Allergen.AMIDE_ANAESTHETIC, Allergen.HYALURONIDASE), Set.of(), Set.of(), COMMON),
new Agent("lidocaine without hyaluronidase", "2 %, 3 to 5 mL", Set.of(Allergen.AMIDE_ANAESTHETIC), Set.of(), Set.of(), COMMON))),
Map.entry(Purpose.PRESSURE_LOWERING, List.of(
new Agent("acetazolamide", "500 mg intravenously", Set.of(Allergen.SULPHONAMIDE), Set.of(), Set.of(Sign.KIDNEY_DISEASE), "common practice, no source; a cautious policy counts it as a sulphonamide, though Lee et al., Am J Ophthalmol 2004;138:114 (abstract read) found little cross-reaction"),
new Agent("mannitol", "20 %, 1 g/kg intravenously over 30 minutes", Set.of(), Set.of(), Set.of(Sign.HEART_FAILURE, Sign.KIDNEY_DISEASE), COMMON),
new Agent("brimonidine", "0.2 % drops", Set.of(), Set.of(), Set.of(), COMMON))),
Map.entry(Purpose.PRESSURE_PROPHYLAXIS, List.of(
new Agent("timolol", "0.5 % drops", Set.of(), Set.of(), Set.of(Sign.ASTHMA, Sign.HEART_FAILURE), COMMON),
new Agent("brimonidine", "0.2 % drops", Set.of(), Set.of(), Set.of(), COMMON))),
Map.entry(Purpose.ANTI_INFLAMMATORY, List.of(
new Agent("dexamethasone with ketorolac", "0.1 % and 0.5 % drops, four times a day", Set.of(Allergen.CORTICOSTEROID, Allergen.NON_STEROIDAL_ANTI_INFLAMMATORY), Set.of(), Set.of(), COMMON),
new Agent("dexamethasone", "0.1 % drops, four times a day", Set.of(Allergen.CORTICOSTEROID), Set.of(), Set.of(), COMMON),
new Agent("ketorolac", "0.5 % drops, four times a day", Set.of(Allergen.NON_STEROIDAL_ANTI_INFLAMMATORY), Set.of(), Set.of(), COMMON))),
Map.entry(Purpose.DISPERSIVE_VISCOELASTIC, List.of(
new Agent("sodium hyaluronate with chondroitin", "3 % and 4 %", Set.of(Allergen.HYALURONATE), Set.of(), Set.of(), COMMON),
new Agent("hypromellose", "2 %", Set.of(), Set.of(), Set.of(), COMMON))),
Map.entry(Purpose.COHESIVE_VISCOELASTIC, List.of(
new Agent("sodium hyaluronate of high viscosity", "1.4 to 2.3 %", Set.of(Allergen.HYALURONATE), Set.of(), Set.of(), COMMON))));
}

private static AnaestheticPolicy anaesthetic() {
return new AnaestheticPolicy(List.of(
new AnaestheticRule(Anaesthetic.TOPICAL, Set.of(Sign.CANNOT_FIXATE, Sign.CANNOT_COOPERATE), Set.of(Sign.SWOLLEN_LENS, Sign.PHACODONESIS, Sign.LENS_DISLOCATION), LongEye.AVOIDS, COMMON),
new AnaestheticRule(Anaesthetic.SUB_TENON, Set.of(Sign.CANNOT_COOPERATE), Set.of(), LongEye.ALLOWS, COMMON),
new AnaestheticRule(Anaesthetic.NEEDLE_BLOCK, Set.of(Sign.CANNOT_COOPERATE, Sign.STAPHYLOMA, Sign.HIGH_MYOPIA, Sign.WARFARIN, Sign.DIRECT_ANTICOAGULANT), Set.of(), LongEye.REFUSES, "needle blocks: 3.1 % complications, serious ones 2.5 times those of sub-Tenon; staphyloma in about 15 % at 27 to 29 mm (secondary source)"),
new AnaestheticRule(Anaesthetic.GENERAL, Set.of(Sign.HEART_FAILURE), Set.of(), LongEye.ALLOWS, COMMON)),
limit(Millimetres.of(26), COMMON),
limit(PureNumber.of(3), "of 304 consultants 40 % cancel above the patient's own range, 35 % above 3, 20 % above 4: survey in Eye 2018 (read)"),
limit(PureNumber.of(3), COMMON));
}

private static FrontPolicy front() {
return new FrontPolicy(limit(Millimetres.of(2.5), COMMON),
limit(MillimetresOfMercury.of(21), COMMON),
limit(Millimetres.of(5), COMMON),
limit(CellsPerSquareMillimetre.of(1000), COMMON),
limit(Millimetres.of(0.64), "common practice, no source: 640 micrometres"),
limit(PureNumber.of(90), "suprachoroidal haemorrhage from age 90 OR 6.7 (secondary source)"));
}

private static SupportPolicy support() {
return new SupportPolicy(Set.of(Sign.PHACODONESIS, Sign.LENS_DISLOCATION), Set.of(Sign.PSEUDOEXFOLIATION, Sign.EYE_INJURY, Sign.VITRECTOMY, Sign.HIGH_MYOPIA, Sign.SWOLLEN_LENS, Sign.RETINITIS_PIGMENTOSA), Set.of(Sign.MARFAN_SYNDROME), limit(PureNumber.of(4), "common practice, no source: 3 to 4 clock hours"), limit(Millimetres.of(10.5), "the loop a unit owns; measure yours"), limit(Millimetres.of(5), COMMON), "Marques, Marques and Osher, J Cataract Refract Surg 2004;30:1295 (injury, pseudoexfoliation, Marfan syndrome; read); the rest common practice, no source");
}

private static RetinaPolicy retina() {
return new RetinaPolicy(limit(Millimetres.of(25), "retinal detachment above 25 mm HR 3.98 (secondary source)"), limit(PureNumber.of(60), "retinal detachment below 60 years HR 5.12 (secondary source)"));
}

private static LensTypePolicy lensTypes() {
return new LensTypePolicy(List.of(new LensTypeRule(LensType.MONOFOCAL, Set.of(), Set.of(), false, COMMON),
new LensTypeRule(LensType.EXTENDED_FOCUS, Set.of(Sign.MACULOPATHY, Sign.VISUAL_FIELD_LOSS, Sign.CORNEA_IRREGULAR, Sign.KERATOCONUS, Sign.PHACODONESIS, Sign.LENS_DISLOCATION, Sign.DRIVES_AT_NIGHT), Set.of(Sign.GLAUCOMA, Sign.DIABETIC_RETINOPATHY, Sign.EPIRETINAL_MEMBRANE, Sign.RETINITIS_PIGMENTOSA, Sign.CORNEA_GUTTATA, Sign.PSEUDOEXFOLIATION, Sign.FUNDUS_NOT_SEEN), true, COMMON),
new LensTypeRule(LensType.MULTIFOCAL, Set.of(Sign.MACULOPATHY, Sign.EPIRETINAL_MEMBRANE, Sign.DIABETIC_RETINOPATHY, Sign.RETINITIS_PIGMENTOSA, Sign.GLAUCOMA, Sign.VISUAL_FIELD_LOSS, Sign.CORNEA_IRREGULAR, Sign.KERATOCONUS, Sign.PHACODONESIS, Sign.LENS_DISLOCATION, Sign.DRIVES_AT_NIGHT), Set.of(Sign.UVEITIS, Sign.RETINAL_VEIN_OCCLUSION, Sign.CORNEA_GUTTATA, Sign.PSEUDOEXFOLIATION, Sign.FUNDUS_NOT_SEEN), true, COMMON),
new LensTypeRule(LensType.TORIC, Set.of(Sign.CORNEA_IRREGULAR, Sign.KERATOCONUS, Sign.CORNEA_RESHAPED, Sign.PHACODONESIS, Sign.LENS_DISLOCATION), Set.of(Sign.PSEUDOEXFOLIATION), true, COMMON)),
limit(Dioptres.of(1), "common practice, no source: 1.0 to 1.5 D"),
limit(Dioptres.of(0.25), COMMON),
limit(Millimetres.of(0.3), "value from memory"));
}
}
