package org.lensward.risk.preparation;

import java.util.Map;
import java.util.TreeMap;
import org.lensward.eye.Sign;

/** Macula and retina: what swells or tears after the operation. */
final class BackCare implements Step {

    private static final String MACULA = "macular oedema, relative risk against 1.17 % of all: uveitis, membrane, vein"
            + " occlusion: Chu et al., Ophthalmology 2016;123:316 (abstract read); diabetes, retinopathy (value from memory)";

    private static final String RETINA =
            "retinal detachment, hazard ratio: age below 60 5.12, axial length above 25 mm 3.98: Petousis et al., Br J Ophthalmol 2016;100:1461 (abstract read)";

    private static final Map<Sign, String> RISKS = new TreeMap<>(Map.of(
            Sign.UVEITIS, "2.88",
            Sign.EPIRETINAL_MEMBRANE, "5.60",
            Sign.RETINAL_VEIN_OCCLUSION, "4.47",
            Sign.DIABETES, "1.80",
            Sign.DIABETIC_RETINOPATHY, "6.23"));

    private final RetinaPolicy policy;

    BackCare(RetinaPolicy policy) {
        this.policy = policy;
    }

    @Override
    public void write(Sheet sheet) {
        macula(sheet);
        retina(sheet);
    }

    private static void macula(Sheet sheet) {
        Facts facts = sheet.facts();
        Draft draft = new Draft(Topic.MACULA);
        RISKS.forEach((sign, risk) -> facts.affirmed(sign)
                .ifPresent(entry -> draft.because(
                        entry.words() + ", " + risk + " times the risk of macular oedema", entry.evidence())));
        facts.unknown(RISKS.keySet()).forEach(sign -> draft.ask(Question.about(sign)));
        String agent = sheet.agentWords(Purpose.ANTI_INFLAMMATORY, draft);
        sheet.add(draft, "OCT of the macula before; against macular oedema by local policy: " + agent + ".", MACULA);
    }

    private void retina(Sheet sheet) {
        Facts facts = sheet.facts();
        Draft draft = new Draft(Topic.RETINA)
                .above("axial length", facts.length(), policy.longEye())
                .below("age", facts.age(), policy.youngAge());
        facts.affirmed(Sign.FUNDUS_NOT_SEEN)
                .ifPresent(entry -> draft.because(entry).ask("whether the retina is attached (B-scan)"));
        sheet.add(
                draft,
                "Look at the periphery of the retina, dilated, before and after; counsel on flashes and floaters.",
                RETINA);
    }
}
