package org.lensward.risk.preparation;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import org.lensward.risk.Bring;

/** The viscoelastics that opening the capsule asks for: which of the hospital's own the patient may have. */
final class OpeningCare implements Step {

    private static final List<Purpose> VISCOELASTICS =
            List.of(Purpose.DISPERSIVE_VISCOELASTIC, Purpose.COHESIVE_VISCOELASTIC);

    private final Collection<Bring> asked;

    /**
     * For one opening.
     *
     * @param asked what it asks for
     */
    OpeningCare(Collection<Bring> asked) {
        this.asked = asked;
    }

    /** Whether the hospital's list of agents, and not the opening, says which of it to bring. */
    static boolean isAgent(Bring bring) {
        return VISCOELASTICS.stream().anyMatch(each -> each.item().orElseThrow() == bring.item());
    }

    @Override
    public void write(Sheet sheet) {
        Draft draft = new Draft(Topic.OPENING);
        List<String> words = new ArrayList<>();
        for (Purpose purpose : VISCOELASTICS) {
            List<Bring> wanted = asked.stream()
                    .filter(each -> each.item() == purpose.item().orElseThrow())
                    .toList();
            if (!wanted.isEmpty()) {
                wanted.forEach(each ->
                        draft.because(each.reason(), sheet.facts().person().evidence()));
                words.add(sheet.choose(purpose, draft).words());
            }
        }
        sheet.add(draft, "For opening the capsule: " + String.join("; ", words) + ".", "common practice, no source");
    }
}
