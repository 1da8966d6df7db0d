package org.lensward.optics;

import java.util.List;

/** All formulas, in the order a plan lists them. */
public final class Formulas {

    private static final List<Formula> ALL =
            List.of(new SrkT(), new T2(), new Holladay1(), new HofferQ(), new Haigis());

    private Formulas() {}

    public static List<Formula> all() {
        return ALL;
    }

    public static Formula named(FormulaName name) {
        return ALL.stream()
                .filter(formula -> formula.name() == name)
                .findFirst()
                .orElseThrow();
    }
}
