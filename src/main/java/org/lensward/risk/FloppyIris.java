package org.lensward.risk;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.lensward.eye.Sign;
import org.lensward.quantity.PureNumber;

/**
 * Drugs that slacken the iris, with the risk ratio of a floppy iris against no alpha blocker: Wang et al., Front Med 2022;9:941130, 6,488
 * cases (abstract read). Silodosin has none there.
 */
public final class FloppyIris {

    /** The strongest first; those without a ratio last. */
    public static final List<Sign> DRUGS =
            List.of(Sign.TAMSULOSIN, Sign.TERAZOSIN, Sign.ALFUZOSIN, Sign.DOXAZOSIN, Sign.OTHER_ALPHA_BLOCKER);

    private static final Map<Sign, PureNumber> RATIOS = Map.of(
            Sign.TAMSULOSIN, PureNumber.of(13.85),
            Sign.TERAZOSIN, PureNumber.of(8.94),
            Sign.ALFUZOSIN, PureNumber.of(7.73),
            Sign.DOXAZOSIN, PureNumber.of(3.88));

    private FloppyIris() {}

    /** The published risk ratio; empty where there is none. */
    public static Optional<PureNumber> ratio(Sign drug) {
        return Optional.ofNullable(RATIOS.get(drug));
    }
}
