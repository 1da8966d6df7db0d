package org.lensward.risk.preparation;

import java.util.List;
import java.util.Optional;
import org.lensward.eye.History.Entry;
import org.lensward.eye.Sign;
import org.lensward.risk.TheatreItem;

/** A white or brown lens, and one that is swollen: fluid under pressure tears the capsule outward as it is opened. */
final class WhiteLensCare implements Step {

    private static final String SOURCE =
            "radial tear in 3.85 to 28.3 % of swollen white lenses (secondary source); technique: common practice, no source";

    private static final String SEEN = "Stain the capsule as the plan of its opening says.";

    private static final String UNDER_PRESSURE = "Against a radial tear: stain the capsule as the plan of its opening"
            + " says; press the lens flat with a dense cohesive viscoelastic (%s); let the fluid in front of and"
            + " behind the nucleus out through a stab that does not leak; open small first and enlarge, or open by a"
            + " device.";

    @Override
    public void write(Sheet sheet) {
        Facts facts = sheet.facts();
        Draft draft = new Draft(Topic.WHITE_LENS).signs(facts, List.of(Sign.BROWN_OR_WHITE_LENS, Sign.SWOLLEN_LENS));
        Optional<Entry> swollen = facts.affirmed(Sign.SWOLLEN_LENS);
        // Until somebody has looked, a white lens is treated as swollen.
        boolean perhaps = facts.unknown(Sign.SWOLLEN_LENS) && draft.hasReasons();
        if (swollen.isEmpty() && !perhaps) {
            sheet.add(draft, SEEN, SOURCE);
            return;
        }
        AgentChoice cohesive = sheet.choose(Purpose.COHESIVE_VISCOELASTIC, draft);
        draft.bring(TheatreItem.FINE_STAB_BLADE);
        String action = String.format(UNDER_PRESSURE, cohesive.words());
        sheet.add(draft, perhaps ? "Until shown not to be swollen: " + action : action, SOURCE);
    }
}
