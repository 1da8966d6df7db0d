package org.lensward.record.check;

import java.util.Optional;
import org.lensward.quantity.Dioptres;

/**
 * What a surgeon wants otherwise. It goes into the booking, from which the plan is made again.
 *
 * @param target another refraction to aim at
 * @param model another lens model, such as {@code DeviceDefinition/lens-2}
 */
public record LensChange(Optional<Dioptres> target, Optional<String> model) {

    boolean isEmpty() {
        return target.isEmpty() && model.isEmpty();
    }
}
