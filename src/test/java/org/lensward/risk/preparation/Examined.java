package org.lensward.risk.preparation;

import java.time.LocalDate;
import java.util.Optional;
import org.lensward.eye.Examination;
import org.lensward.eye.Measured;
import org.lensward.eye.Readings.Dated;
import org.lensward.finding.Evidence;
import org.lensward.quantity.CellsPerSquareMillimetre;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.MillimetresOfMercury;
import org.lensward.quantity.PureNumber;
import org.lensward.quantity.Quantity;

/** An examination for tests. */
record Examined(Examination examination) {

    static Examined nothing() {
        return new Examined(Examination.none());
    }

    /** Every figure before the operation taken, and none amiss. */
    static Examined ordinary() {
        return nothing().pressure(15).cells(2500).thickness(0.55).lost(0);
    }

    Examined pressure(double mercury) {
        return new Examined(new Examination(
                measured("pressure", MillimetresOfMercury.of(mercury)),
                examination.endothelialDensity(),
                examination.cornealThickness(),
                examination.zonuleLoss(),
                examination.clotting(),
                examination.openingDiameter(),
                examination.openingDecentration()));
    }

    Examined cells(double density) {
        return new Examined(new Examination(
                examination.pressure(),
                measured("cells", CellsPerSquareMillimetre.of(density)),
                examination.cornealThickness(),
                examination.zonuleLoss(),
                examination.clotting(),
                examination.openingDiameter(),
                examination.openingDecentration()));
    }

    Examined thickness(double millimetres) {
        return new Examined(new Examination(
                examination.pressure(),
                examination.endothelialDensity(),
                measured("thickness", Millimetres.of(millimetres)),
                examination.zonuleLoss(),
                examination.clotting(),
                examination.openingDiameter(),
                examination.openingDecentration()));
    }

    /** Clock hours of zonule missing. */
    Examined lost(double hours) {
        return new Examined(new Examination(
                examination.pressure(),
                examination.endothelialDensity(),
                examination.cornealThickness(),
                measured("zonules", PureNumber.of(hours)),
                examination.clotting(),
                examination.openingDiameter(),
                examination.openingDecentration()));
    }

    Examined clotting(double ratio, LocalDate day) {
        return new Examined(new Examination(
                examination.pressure(),
                examination.endothelialDensity(),
                examination.cornealThickness(),
                examination.zonuleLoss(),
                measured("inr", PureNumber.of(ratio)).map(each -> new Dated<>(each, day)),
                examination.openingDiameter(),
                examination.openingDecentration()));
    }

    /** The capsule as it was opened. */
    Examined opening(double diameter, double decentration) {
        return new Examined(new Examination(
                examination.pressure(),
                examination.endothelialDensity(),
                examination.cornealThickness(),
                examination.zonuleLoss(),
                examination.clotting(),
                measured("opening", Millimetres.of(diameter)),
                measured("decentration", Millimetres.of(decentration))));
    }

    private static <Q extends Quantity> Optional<Measured<Q>> measured(String what, Q value) {
        return Optional.of(new Measured<>(value, new Evidence("Observation/" + what, "1", "value")));
    }
}
