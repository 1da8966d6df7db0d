package org.lensward.risk.preparation;

import java.util.List;
import org.lensward.eye.Limit;
import org.lensward.eye.Measured;
import org.lensward.eye.Sign;
import org.lensward.quantity.Millimetres;

/** Pressure before the eye is opened, the room in front of the lens, and the pressure afterwards. */
final class PressureCare implements Step {

    private static final String HAEMORRHAGE =
            "suprachoroidal haemorrhage: raised pressure OR 3.7, glaucoma 1.7, age 90 or more 6.7: Stewart et al., Eye 2023 (abstract read)";

    private final FrontPolicy policy;

    PressureCare(FrontPolicy policy) {
        this.policy = policy;
    }

    @Override
    public void write(Sheet sheet) {
        before(sheet);
        chamber(sheet);
        after(sheet);
    }

    private void before(Sheet sheet) {
        Facts facts = sheet.facts();
        Draft draft = new Draft(Topic.PRESSURE_BEFORE)
                .above("pressure", facts.examination().pressure(), policy.raisedPressure());
        facts.affirmed(Sign.SWOLLEN_LENS).ifPresent(swollen -> facts.chamberDepth()
                .filter(this::isShallow)
                .ifPresent(depth ->
                        draft.because(tight(depth), depth.evidence()).because(tight(depth), swollen.evidence())));
        if (!draft.hasReasons()) {
            sheet.add(draft, "", HAEMORRHAGE);
            return;
        }
        facts.affirmed(Sign.GLAUCOMA).ifPresent(draft::because);
        facts.age()
                .filter(age -> age.value().compareTo(policy.bleedingAge().value()) >= 0)
                .ifPresent(age -> draft.because("age " + Figures.of(age.value()), age.evidence()));
        AgentChoice choice = sheet.choose(Purpose.PRESSURE_LOWERING, draft);
        sheet.add(
                draft,
                "Lower the pressure before the eye is opened: " + choice.words() + "; measure it again.",
                HAEMORRHAGE);
    }

    private static String tight(Measured<Millimetres> depth) {
        return "swollen lens in a shallow chamber of " + Figures.of(depth.value());
    }

    private boolean isShallow(Measured<Millimetres> depth) {
        Limit<Millimetres> limit = policy.shallowChamber();
        return depth.value().compareTo(limit.value()) < 0;
    }

    private void chamber(Sheet sheet) {
        Draft draft = new Draft(Topic.CHAMBER)
                .below("anterior chamber depth", sheet.facts().chamberDepth(), policy.shallowChamber());
        String agent = sheet.agentWords(Purpose.COHESIVE_VISCOELASTIC, draft);
        sheet.add(
                draft,
                "Deepen the chamber before the capsule is touched: " + agent + ".",
                policy.shallowChamber().source());
    }

    private static void after(Sheet sheet) {
        Draft draft = new Draft(Topic.PRESSURE_AFTER)
                .signs(sheet.facts(), List.of(Sign.GLAUCOMA, Sign.PRESSURE_SPIKE_BEFORE));
        String agent = sheet.agentWords(Purpose.PRESSURE_PROPHYLAXIS, draft);
        sheet.add(
                draft,
                "Remove every viscoelastic; against a rise of pressure: " + agent + "; measure it at 2 to 3 hours.",
                "pressure rose in 20 % of all eyes at 2 to 3 hours, in glaucoma more (secondary source)");
    }
}
