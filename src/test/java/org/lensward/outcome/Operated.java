package org.lensward.outcome;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.lensward.eye.Biometry;
import org.lensward.eye.Laterality;
import org.lensward.eye.Specimen;
import org.lensward.flow.OutcomePolicyFile;
import org.lensward.lens.LensSite;
import org.lensward.optics.LensConstants;
import org.lensward.optics.toric.Astigmatism;
import org.lensward.quantity.Degrees;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.Probability;
import org.lensward.quantity.PureNumber;

/** An operated eye for tests: one that counts unless a test says otherwise. */
public record Operated(
        EyeKeys keys,
        Laterality side,
        LocalDate day,
        ImplantedLens lens,
        Optional<Biometry> biometry,
        Optional<LensConstants> constants,
        Optional<Astigmatism> residual,
        AfterSurgery after) {

    public static final LocalDate DAY = LocalDate.of(2026, 3, 2);
    public static final OutcomePolicy POLICY = OutcomePolicyFile.shipped();

    public static Operated ordinary() {
        return ordinary(Laterality.RIGHT);
    }

    public static Operated ordinary(Laterality side) {
        return new Operated(
                new EyeKeys("patient-1", "operation-1"),
                side,
                DAY,
                new ImplantedLens("model-a", Dioptres.of(21), Optional.empty(), Optional.of(LensSite.CAPSULAR_BAG)),
                Optional.of(Specimen.ordinary(side, DAY.minusDays(40)).biometry()),
                Optional.of(LensConstants.ofAConstant(PureNumber.of(118.7))),
                Optional.empty(),
                after(refracted(side, 28)));
    }

    public static AfterSurgery after(Refraction... refractions) {
        return new AfterSurgery(true, Set.of(), Optional.empty(), List.of(refractions), Optional.empty());
    }

    /** -0.25 D as +0.00 -0.50 x 90, subjective, 6/6. */
    public static Refraction refracted(Laterality side, int days) {
        return written(side, days, 0, Optional.of(cylinder(0.5, Refraction.Form.MINUS, 90)), Optional.of(12.0), 1);
    }

    public static Refraction.Cylinder cylinder(double power, Refraction.Form form, double axis) {
        return new Refraction.Cylinder(Dioptres.of(power), form, Optional.of(Degrees.of(axis)));
    }

    public static Refraction written(
            Laterality side,
            int days,
            double sphere,
            Optional<Refraction.Cylinder> cylinder,
            Optional<Double> vertex,
            double acuity) {
        return new Refraction(
                side,
                DAY.plusDays(days),
                Refraction.Way.SUBJECTIVE,
                Dioptres.of(sphere),
                cylinder,
                vertex.map(Millimetres::of),
                Optional.of(new Acuity(PureNumber.of(acuity))));
    }

    public Operated keys(String patient, String operation) {
        return new Operated(new EyeKeys(patient, operation), side, day, lens, biometry, constants, residual, after);
    }

    public Operated on(LocalDate other) {
        return new Operated(keys, side, other, lens, biometry, constants, residual, after);
    }

    public Operated lens(ImplantedLens other) {
        return new Operated(keys, side, day, other, biometry, constants, residual, after);
    }

    public Operated site(Optional<LensSite> site) {
        return lens(new ImplantedLens(lens.model(), lens.power(), lens.cylinder(), site));
    }

    public Operated biometry(Optional<Biometry> other) {
        return new Operated(keys, side, day, lens, other, constants, residual, after);
    }

    public Operated constants(Optional<LensConstants> other) {
        return new Operated(keys, side, day, lens, biometry, other, residual, after);
    }

    public Operated expecting(Astigmatism left) {
        return new Operated(keys, side, day, lens, biometry, constants, Optional.of(left), after);
    }

    public Operated after(AfterSurgery other) {
        return new Operated(keys, side, day, lens, biometry, constants, residual, other);
    }

    public Operated with(Refraction... refractions) {
        return after(after(refractions));
    }

    public OperatedEye eye() {
        return eye(0.01);
    }

    /** With that chance of a rupture foretold. */
    public OperatedEye eye(double risk) {
        return new OperatedEye(
                keys,
                side,
                day,
                "Practitioner/s1",
                lens,
                new BeforeSurgery(
                        biometry,
                        constants,
                        Map.of(),
                        Optional.of(Dioptres.of(-0.25)),
                        Optional.of(Probability.of(risk)),
                        Optional.of(PureNumber.of(1.5)),
                        residual),
                after);
    }

    /** Admitted by itself. */
    public Admitted admitted() {
        return new Admission(POLICY).admit(eye());
    }

    public Admitted.Counted counted() {
        return (Admitted.Counted) admitted();
    }
}
