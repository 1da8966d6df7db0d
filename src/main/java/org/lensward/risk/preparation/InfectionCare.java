package org.lensward.risk.preparation;

import java.util.List;
import org.lensward.eye.Sign;
import org.lensward.finding.Evidence;

/** Lids, antiseptic before and antibiotic at the end. */
final class InfectionCare implements Step {

    @Override
    public void write(Sheet sheet) {
        Evidence everyEye = sheet.facts().person().evidence();
        sheet.add(
                new Draft(Topic.LIDS).signs(sheet.facts(), List.of(Sign.LID_INFECTION)),
                "Treat the lids first; defer while the infection is active.",
                "common practice, no source");
        Draft before = new Draft(Topic.ANTISEPTIC).because("every eye", everyEye);
        AgentChoice antiseptic = sheet.choose(Purpose.ANTISEPTIC, before);
        sheet.add(before, "Antiseptic: " + antiseptic.words() + ".", source(antiseptic));
        Draft after = new Draft(Topic.ANTIBIOTIC)
                .because("every eye: endophthalmitis was 4.92 times likelier without", everyEye);
        AgentChoice antibiotic = sheet.choose(Purpose.ANTIBIOTIC, after);
        sheet.add(
                after,
                "Antibiotic into the anterior chamber at the end: " + antibiotic.words() + ".",
                source(antibiotic));
    }

    private static String source(AgentChoice choice) {
        return choice.agent().map(Agent::source).orElse("the hospital's policy");
    }
}
