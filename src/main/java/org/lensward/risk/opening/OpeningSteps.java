package org.lensward.risk.opening;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lensward.eye.Sign;

/** What is done, in order. Common practice, no source. */
final class OpeningSteps {

    private OpeningSteps() {}

    static List<String> of(
            OpeningTechnique technique, Optional<OpeningSize> size, OpeningCase which, Optional<DyePlan> dye) {
        List<String> steps = new ArrayList<>();
        String opening = size.map(each -> "an opening of " + each.diameter().rounded())
                .orElse("an opening of the diameter the surgeon decides");
        switch (technique) {
            case TORN_BY_HAND -> torn(opening, which.facts().mayBeUnderPressure(), dye, steps);
            case PHOTODISRUPTION -> photodisruption(opening, dye, steps);
            case DYE_LASER_COAGULATION -> dyeLaser(opening, dye, steps);
            case THERMAL -> thermal(opening, dye, steps);
        }
        steps.add("Look at the whole edge; measure the opening's diameter and decentration and record them"
                + " before the lens goes in.");
        if (which.facts().any(Sign.POSTERIOR_POLAR_CATARACT).yes()) {
            steps.add("No hydrodissection: free the nucleus by hydrodelineation only.");
        }
        return steps;
    }

    private static void torn(String opening, boolean pressure, Optional<DyePlan> dye, List<String> steps) {
        stain(dye, steps);
        if (pressure) {
            steps.add("Fill the chamber with dense cohesive viscoelastic until the front of the lens is flat.");
            steps.add("Through a fine stab that does not leak, let the fluid out from in front of the nucleus"
                    + " and from behind it.");
            steps.add("Tear a small opening first, then enlarge it to " + opening + ", centred on the lens's axis.");
        } else {
            steps.add("Fill the chamber with viscoelastic.");
            steps.add("Tear " + opening + ", centred on the lens's axis.");
        }
    }

    private static void photodisruption(String opening, Optional<DyePlan> dye, List<String> steps) {
        steps.add("Dock the laser to the eye before any incision.");
        steps.add("Cut " + opening + ", centred on the lens's axis.");
        stain(dye, steps);
        steps.add("Fill the chamber with viscoelastic; make sure that the disc is free all round before it is lifted.");
    }

    private static void thermal(String opening, Optional<DyePlan> dye, List<String> steps) {
        stain(dye, steps);
        steps.add("Fill the chamber with viscoelastic.");
        steps.add("Set the ring down for " + opening + ", centred on the lens's axis; fire.");
        steps.add("Make sure that the disc is free all round before it is lifted.");
    }

    private static void dyeLaser(String opening, Optional<DyePlan> dye, List<String> steps) {
        steps.add("Coat the surface of the cornea.");
        dye.ifPresent(each -> {
            coat(each, steps);
            steps.add("Fill the chamber with " + each.preparation()
                    + ", no air bubble in it: under air the stain is uneven.");
            waitAndWash(each, steps);
        });
        steps.add("Fill the chamber with viscoelastic.");
        steps.add("Make sure that the stain is even all round where the laser will pass; if not, open by hand.");
        steps.add("Fire for " + opening + ", centred on the lens's axis.");
        steps.add("Make sure that the disc is free all round before it is lifted.");
    }

    private static void stain(Optional<DyePlan> dye, List<String> steps) {
        dye.ifPresent(each -> {
            coat(each, steps);
            steps.add("Stain the capsule with " + each.preparation() + ".");
            waitAndWash(each, steps);
        });
    }

    private static void coat(DyePlan dye, List<String> steps) {
        if (!dye.preparation().coat().isEmpty()) {
            steps.add(dye.preparation().coat());
        }
    }

    private static void waitAndWash(DyePlan dye, List<String> steps) {
        steps.add("Wait " + dye.preparation().contact().value() + ".");
        steps.add(dye.preparation().washOut());
    }
}
