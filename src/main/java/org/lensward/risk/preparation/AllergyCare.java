package org.lensward.risk.preparation;

import org.lensward.eye.Allergen;
import org.lensward.eye.Allergy;
import org.lensward.risk.TheatreItem;

/** Allergies before anything is given, and gloves. */
final class AllergyCare implements Step {

    private static final String SOURCE = "common practice, no source";

    @Override
    public void write(Sheet sheet) {
        Draft draft = new Draft(Topic.ALLERGIES);
        for (Allergy allergy : sheet.facts().person().allergies()) {
            draft.because(allergy.words(), allergy.evidence());
            if (allergy.to().isEmpty()) {
                draft.ask("what the allergy \"" + allergy.words() + "\" forbids");
            }
        }
        if (!draft.hasReasons() && sheet.facts().person().noAllergy().isEmpty()) {
            draft.ask("any allergy, for none is recorded");
        }
        sheet.add(draft, "Check every drug, solution and glove against the allergies before it is opened.", SOURCE);
        latex(sheet);
    }

    private static void latex(Sheet sheet) {
        Draft draft = new Draft(Topic.LATEX);
        sheet.facts().person().allergicTo(Allergen.LATEX).ifPresent(allergy -> draft.because(
                        allergy.words(), allergy.evidence())
                .bring(TheatreItem.LATEX_FREE_SET));
        sheet.add(draft, "Latex-free gloves and set; first on the list.", SOURCE);
    }
}
