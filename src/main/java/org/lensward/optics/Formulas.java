package org.lensward.optics;

import java.util.List;
import java.util.stream.Stream;

/** The published formulas, in the order a plan lists them. */
public final class Formulas {

    private static final List<Formula> ALL =
            List.of(new SrkT(), new T2(), new Holladay1(), new HofferQ(), new Haigis());

    private static final List<Formula> FOR_RESHAPED_CORNEAS =
            List.of(new HaigisL(), Shammas.afterMyopicLaser(), Shammas.afterHyperopicLaser());

    private Formulas() {}

    /** Those for corneas that no surgeon has reshaped. */
    public static List<Formula> all() {
        return ALL;
    }

    /** Those for corneas after laser that ask for no history; {@link PostLaserMethods} says when each applies. */
    public static List<Formula> forReshapedCorneas() {
        return FOR_RESHAPED_CORNEAS;
    }

    public static Formula named(FormulaName name) {
        return Stream.concat(ALL.stream(), FOR_RESHAPED_CORNEAS.stream())
                .filter(formula -> formula.name() == name)
                .findFirst()
                .orElseThrow();
    }
}
