package org.lensward.risk.preparation;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.lensward.eye.Allergen;
import org.lensward.eye.Sign;

/** The agents that tests are made with; the same as the shipped ones. */
final class Pharmacy {

    private static final String COMMON = "common practice, no source";

    private Pharmacy() {}

    static Map<Purpose, List<Agent>> agents() {
        return Map.ofEntries(
                Map.entry(
                        Purpose.ANTISEPTIC,
                        List.of(
                                new Agent(
                                        "povidone iodine",
                                        "5 % into the conjunctival sac, 3 minutes",
                                        Set.of(Allergen.IODINE),
                                        Set.of(),
                                        Set.of(),
                                        "Speaker and Menikoff, Ophthalmology 1991;98:1769 (value from memory)"),
                                new Agent(
                                        "aqueous chlorhexidine",
                                        "0.05 %",
                                        Set.of(Allergen.CHLORHEXIDINE),
                                        Set.of(),
                                        Set.of(),
                                        COMMON))),
                Map.entry(
                        Purpose.ANTIBIOTIC,
                        List.of(
                                new Agent(
                                        "cefuroxime",
                                        "1 mg in 0.1 mL",
                                        Set.of(Allergen.CEPHALOSPORIN),
                                        Set.of(Allergen.PENICILLIN),
                                        Set.of(Sign.RESISTANT_BACTERIA),
                                        "ESCRS Endophthalmitis Study Group, J Cataract Refract Surg 2007;33:978-988 (value from memory)"),
                                new Agent(
                                        "moxifloxacin",
                                        "0.5 mg in 0.1 mL",
                                        Set.of(Allergen.FLUOROQUINOLONE),
                                        Set.of(),
                                        Set.of(Sign.RESISTANT_BACTERIA),
                                        "common practice, no source; doses differ between units"))),
                Map.entry(
                        Purpose.MYDRIATIC,
                        List.of(
                                new Agent(
                                        "phenylephrine",
                                        "1.5 % without preservative or bisulphite, 0.6 mL",
                                        Set.of(Allergen.PHENYLEPHRINE),
                                        Set.of(),
                                        Set.of(),
                                        "Lorente et al., Ophthalmology 2012 (abstract read); 1 to 1.25 % may do: Chua et al., J Cataract Refract Surg 2024;50:187 (abstract read)"),
                                new Agent(
                                        "adrenaline",
                                        "1:10 000 unpreserved, 0.2 mL",
                                        Set.of(Allergen.ADRENALINE),
                                        Set.of(),
                                        Set.of(),
                                        COMMON))),
                Map.entry(
                        Purpose.TOPICAL_ANAESTHETIC,
                        List.of(
                                new Agent(
                                        "oxybuprocaine",
                                        "0.4 % drops",
                                        Set.of(Allergen.ESTER_ANAESTHETIC),
                                        Set.of(),
                                        Set.of(),
                                        COMMON),
                                new Agent(
                                        "lidocaine",
                                        "4 % drops",
                                        Set.of(Allergen.AMIDE_ANAESTHETIC),
                                        Set.of(),
                                        Set.of(),
                                        COMMON))),
                Map.entry(
                        Purpose.BLOCK_ANAESTHETIC,
                        List.of(
                                new Agent(
                                        "lidocaine with hyaluronidase",
                                        "2 % with 15 IU/mL, 3 to 5 mL",
                                        Set.of(Allergen.AMIDE_ANAESTHETIC, Allergen.HYALURONIDASE),
                                        Set.of(),
                                        Set.of(),
                                        COMMON),
                                new Agent(
                                        "lidocaine without hyaluronidase",
                                        "2 %, 3 to 5 mL",
                                        Set.of(Allergen.AMIDE_ANAESTHETIC),
                                        Set.of(),
                                        Set.of(),
                                        COMMON))),
                Map.entry(
                        Purpose.PRESSURE_LOWERING,
                        List.of(
                                new Agent(
                                        "acetazolamide",
                                        "500 mg intravenously",
                                        Set.of(Allergen.SULPHONAMIDE),
                                        Set.of(),
                                        Set.of(Sign.KIDNEY_DISEASE),
                                        "common practice, no source; a cautious policy counts it as a sulphonamide, though Lee et al., Am J Ophthalmol 2004;138:114 (abstract read) found little cross-reaction"),
                                new Agent(
                                        "mannitol",
                                        "20 %, 1 g/kg intravenously over 30 minutes",
                                        Set.of(),
                                        Set.of(),
                                        Set.of(Sign.HEART_FAILURE, Sign.KIDNEY_DISEASE),
                                        COMMON),
                                new Agent("brimonidine", "0.2 % drops", Set.of(), Set.of(), Set.of(), COMMON))),
                Map.entry(
                        Purpose.PRESSURE_PROPHYLAXIS,
                        List.of(
                                new Agent(
                                        "timolol",
                                        "0.5 % drops",
                                        Set.of(),
                                        Set.of(),
                                        Set.of(Sign.ASTHMA, Sign.HEART_FAILURE),
                                        COMMON),
                                new Agent("brimonidine", "0.2 % drops", Set.of(), Set.of(), Set.of(), COMMON))),
                Map.entry(
                        Purpose.ANTI_INFLAMMATORY,
                        List.of(
                                new Agent(
                                        "dexamethasone with ketorolac",
                                        "0.1 % and 0.5 % drops, four times a day",
                                        Set.of(Allergen.CORTICOSTEROID, Allergen.NON_STEROIDAL_ANTI_INFLAMMATORY),
                                        Set.of(),
                                        Set.of(),
                                        COMMON),
                                new Agent(
                                        "dexamethasone",
                                        "0.1 % drops, four times a day",
                                        Set.of(Allergen.CORTICOSTEROID),
                                        Set.of(),
                                        Set.of(),
                                        COMMON),
                                new Agent(
                                        "ketorolac",
                                        "0.5 % drops, four times a day",
                                        Set.of(Allergen.NON_STEROIDAL_ANTI_INFLAMMATORY),
                                        Set.of(),
                                        Set.of(),
                                        COMMON))),
                Map.entry(
                        Purpose.DISPERSIVE_VISCOELASTIC,
                        List.of(
                                new Agent(
                                        "sodium hyaluronate with chondroitin",
                                        "3 % and 4 %",
                                        Set.of(Allergen.HYALURONATE),
                                        Set.of(),
                                        Set.of(),
                                        COMMON),
                                new Agent("hypromellose", "2 %", Set.of(), Set.of(), Set.of(), COMMON))),
                Map.entry(
                        Purpose.COHESIVE_VISCOELASTIC,
                        List.of(new Agent(
                                "sodium hyaluronate of high viscosity",
                                "1.4 to 2.3 %",
                                Set.of(Allergen.HYALURONATE),
                                Set.of(),
                                Set.of(),
                                COMMON))));
    }
}
