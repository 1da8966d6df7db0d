package org.lensward.bench;

import org.lensward.optics.Formula;
import org.lensward.optics.FormulaName;
import org.lensward.optics.Formulas;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/** Which formula is measured. */
@State(Scope.Thread)
public class Chosen {

    @Param({"SRK_T", "T2", "HOLLADAY_1", "HOFFER_Q", "HAIGIS"})
    FormulaName name = FormulaName.SRK_T;

    Formula formula = Formulas.named(name);

    @Setup
    public void choose() {
        formula = Formulas.named(name);
    }
}
