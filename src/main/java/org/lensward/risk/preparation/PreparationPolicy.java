package org.lensward.risk.preparation;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.lensward.eye.Limit;
import org.lensward.quantity.Dioptres;
import org.lensward.risk.TheatreItem;

/**
 * How the hospital prepares an eye.
 *
 * @param agents for each purpose, the preferred first
 * @param anaesthetic how the anaesthetic is chosen
 * @param front thresholds of the front of the eye
 * @param support of a weakly held lens
 * @param retina thresholds of the back of the eye
 * @param lensTypes which kinds of lens suit
 * @param similarPowers lenses no further apart are kept apart on a list
 * @param shared things that serve every eye of a day in turn and are counted once
 */
public record PreparationPolicy(
        Map<Purpose, List<Agent>> agents,
        AnaestheticPolicy anaesthetic,
        FrontPolicy front,
        SupportPolicy support,
        RetinaPolicy retina,
        LensTypePolicy lensTypes,
        Limit<Dioptres> similarPowers,
        Set<TheatreItem> shared) {

    public PreparationPolicy {
        agents = Map.copyOf(agents);
        shared = Set.copyOf(shared);
    }
}
