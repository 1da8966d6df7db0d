package org.lensward.risk.opening;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.lensward.risk.Bring;
import org.lensward.risk.TheatreItem;

/** What has to lie ready for opening the capsule. */
final class OpeningThings {

    private OpeningThings() {}

    /**
     * @param dye the dye planned or, where the red reflex is not known, the one to have at hand
     */
    static List<Bring> of(OpeningTechnique technique, OpeningCase which, Optional<DyePlan> dye) {
        List<Bring> things = new ArrayList<>();
        device(technique).ifPresent(item -> things.add(bring(item, technique.toString())));
        boolean pressure = which.facts().mayBeUnderPressure();
        boolean laser = technique == OpeningTechnique.DYE_LASER_COAGULATION;
        if (laser) {
            things.add(viscoelastic(TheatreItem.DISPERSIVE_VISCOELASTIC, "coats the cornea before the dye"));
        }
        if (laser || pressure) {
            things.add(viscoelastic(
                    TheatreItem.COHESIVE_VISCOELASTIC,
                    pressure ? "holds the lens flat against its pressure" : "fills the chamber before firing"));
        }
        if (pressure && technique == OpeningTechnique.TORN_BY_HAND) {
            things.add(bring(TheatreItem.FINE_STAB_BLADE, "a stab that does not leak, to let the fluid out"));
        }
        dye.ifPresent(each -> things.add(new Bring(
                TheatreItem.CAPSULE_DYE,
                1,
                each.preparation().toString(),
                each.preparation().agent().allergens(),
                laser ? "the laser's light is absorbed by it" : "shows the capsule where the red reflex does not")));
        return things;
    }

    private static Optional<TheatreItem> device(OpeningTechnique technique) {
        return switch (technique) {
            case TORN_BY_HAND -> Optional.empty();
            case PHOTODISRUPTION -> Optional.of(TheatreItem.PHOTODISRUPTION_LASER);
            case DYE_LASER_COAGULATION -> Optional.of(TheatreItem.DYE_ABSORBING_LASER);
            case THERMAL -> Optional.of(TheatreItem.THERMAL_OPENING_DEVICE);
        };
    }

    private static Bring viscoelastic(TheatreItem item, String reason) {
        return bring(item, reason);
    }

    private static Bring bring(TheatreItem item, String reason) {
        return new Bring(item, 1, "", Set.of(), reason);
    }
}
