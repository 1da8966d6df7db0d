package org.lensward.optics;

import static org.lensward.finding.FindingCode.OIL_POWER_ADDED;

import java.util.List;
import java.util.Locale;
import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.Outcome;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.RefractiveIndex;

/**
 * An eye whose vitreous stays replaced by silicone oil. Behind a plano-convex lens, its flat side to the oil, light focuses further
 * back, and the lens needs
 *
 * <pre>
 * dP = 1000 (n_oil - n) / (L - d)
 * </pre>
 *
 * more power; n = 1.336, L and d of the {@link ThinEye} in mm. Other lens shapes lose or gain power at their back surface too and are
 * not modelled.
 */
public final class SiliconeOil {

    /** Index of silicone oil: 1.4034 (value from memory). */
    public static final RefractiveIndex INDEX = RefractiveIndex.of(1.4034);

    private SiliconeOil() {}

    /** How much more power the lens needs while the oil stays, with the finding that says so. */
    public static Outcome<Dioptres> addedPower(ThinEye eye, Evidence evidence) {
        double behindLens = eye.opticalLength().value() - eye.lensPosition().value();
        double added = 1000 * (INDEX.value() - ThinEye.INDEX.value()) / behindLens;
        String shown = String.format(Locale.ROOT, "%.2f D", added);
        return Outcome.ready(Dioptres.of(added), List.of(Finding.of(OIL_POWER_ADDED, evidence, shown)));
    }
}
