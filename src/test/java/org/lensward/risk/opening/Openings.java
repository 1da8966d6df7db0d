package org.lensward.risk.opening;

import static org.lensward.eye.Policies.limit;
import static org.lensward.risk.opening.OpeningTechnique.DYE_LASER_COAGULATION;
import static org.lensward.risk.opening.OpeningTechnique.PHOTODISRUPTION;
import static org.lensward.risk.opening.OpeningTechnique.THERMAL;
import static org.lensward.risk.opening.OpeningTechnique.TORN_BY_HAND;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.lensward.eye.Limit;
import org.lensward.eye.Sign;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.Percent;
import org.lensward.quantity.Seconds;

/** The opening policy that tests are made with: the figures of the shipped one. */
public final class Openings {

    private static final String COMMON = "common practice, no source";

    /** The protocol that some tests name. */
    static final DyeProtocol PROTOCOL =
            new DyeProtocol("strong dye for the laser", DyeAgent.TRYPAN_BLUE, percent(0.1), percent(0.4));

    private Openings() {}

    /** A hospital that tears by hand and has no protocol of its own. */
    public static OpeningPolicy policy() {
        return having(Set.of(TORN_BY_HAND), dyes());
    }

    /** A hospital that has these techniques as well, and the protocol that the dye-absorbing laser needs. */
    static OpeningPolicy having(OpeningTechnique... more) {
        Set<OpeningTechnique> all = new HashSet<>(Arrays.asList(more));
        all.add(TORN_BY_HAND);
        return having(all, dyes(PROTOCOL));
    }

    static OpeningPolicy having(Set<OpeningTechnique> atHand, DyePolicy dye) {
        Map<OpeningTechnique, TechniquePolicy> techniques = new EnumMap<>(OpeningTechnique.class);
        techniques.put(TORN_BY_HAND, technique(atHand.contains(TORN_BY_HAND), 5.25, 0.25));
        techniques.put(PHOTODISRUPTION, technique(atHand.contains(PHOTODISRUPTION), 5.25, 0.25));
        techniques.put(DYE_LASER_COAGULATION, technique(atHand.contains(DYE_LASER_COAGULATION), 5.8, 0));
        techniques.put(THERMAL, technique(atHand.contains(THERMAL), 5.25, 0.25));
        return new OpeningPolicy(
                millimetres(6),
                techniques,
                List.of(TORN_BY_HAND, THERMAL, DYE_LASER_COAGULATION, PHOTODISRUPTION),
                List.of(THERMAL, DYE_LASER_COAGULATION, TORN_BY_HAND, PHOTODISRUPTION),
                List.of(PHOTODISRUPTION, DYE_LASER_COAGULATION, THERMAL, TORN_BY_HAND),
                contraction(),
                millimetres(0.25),
                millimetres(5),
                millimetres(1),
                millimetres(0.3),
                millimetres(0.4),
                dye);
    }

    static DyePolicy dyes(DyeProtocol... protocols) {
        return new DyePolicy(
                Map.of(
                        DyeAgent.TRYPAN_BLUE, new DyeRange(percent(0.0125), percent(0.016), percent(0.1)),
                        DyeAgent.INDOCYANINE_GREEN, new DyeRange(percent(0.25), percent(0.25), percent(0.5))),
                List.of(
                        preparation(DyeAgent.TRYPAN_BLUE, 0.016, "Put viscoelastic over the endothelium."),
                        preparation(DyeAgent.INDOCYANINE_GREEN, 0.25, "")),
                preparation(DyeAgent.TRYPAN_BLUE, 0.4, "Put dispersive viscoelastic over the endothelium."),
                List.of(protocols));
    }

    static DyePreparation preparation(DyeAgent agent, double concentration, String coat) {
        return new DyePreparation(
                agent,
                percent(concentration),
                limit(Seconds.of(concentration > 0.1 ? 60 : 10), COMMON),
                "Wash the dye out until the fluid runs clear.",
                coat);
    }

    private static Map<Sign, Limit<Percent>> contraction() {
        return Map.of(
                Sign.PSEUDOEXFOLIATION,
                        limit(Percent.of(25), "Hayashi et al., Br J Ophthalmol 1998;82:1429 (abstract)"),
                Sign.RETINITIS_PIGMENTOSA,
                        limit(Percent.of(45), "Hayashi et al., Ophthalmology 1998;105:1239 (abstract)"),
                Sign.DIABETES, percent(15),
                Sign.DIABETIC_RETINOPATHY, percent(20),
                Sign.UVEITIS, percent(20),
                Sign.HIGH_MYOPIA, percent(15));
    }

    private static TechniquePolicy technique(boolean atHand, double preferred, double leastOverlap) {
        return new TechniquePolicy(
                atHand, millimetres(preferred), millimetres(leastOverlap), millimetres(0.1), percent(10));
    }

    static Limit<Millimetres> millimetres(double value) {
        return limit(Millimetres.of(value), COMMON);
    }

    static Limit<Percent> percent(double value) {
        return limit(Percent.of(value), COMMON);
    }
}
