package org.lensward.eye;

import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.PureNumber;
import org.lensward.quantity.Quantity;

/** The biometry policy that tests are made with. */
public final class Policies {

    private static final String KNOX_CARTWRIGHT = "Knox Cartwright et al., Eye 2010;24:894-900 (value from memory)";
    private static final String SCREEN = "stricter screen of two eyes, secondary source";
    private static final String COMMON = "common practice, no source";

    private Policies() {}

    public static BiometryPolicy standard() {
        return new BiometryPolicy(
                limit(Millimetres.of(21.30), KNOX_CARTWRIGHT),
                limit(Millimetres.of(26.60), KNOX_CARTWRIGHT),
                limit(Dioptres.of(41), KNOX_CARTWRIGHT),
                limit(Dioptres.of(47), KNOX_CARTWRIGHT),
                limit(Dioptres.of(2.50), KNOX_CARTWRIGHT),
                limit(Dioptres.of(1.00), COMMON),
                limit(Millimetres.of(0.70), KNOX_CARTWRIGHT),
                limit(Dioptres.of(0.90), KNOX_CARTWRIGHT),
                limit(Millimetres.of(0.05), COMMON),
                limit(Dioptres.of(0.25), COMMON),
                limit(PureNumber.of(7), COMMON),
                limit(PureNumber.of(28), COMMON),
                limit(PureNumber.of(2), COMMON),
                limit(Millimetres.of(0.3), SCREEN),
                limit(Dioptres.of(1), SCREEN),
                limit(PureNumber.of(12), COMMON),
                limit(PureNumber.of(24), COMMON),
                limit(Dioptres.of(1.00), COMMON));
    }

    /** A limit with its source. */
    public static <Q extends Quantity> Limit<Q> limit(Q value, String source) {
        return new Limit<>(value, source);
    }
}
