package org.lensward.optics.toric;

import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.lensward.quantity.Degrees;
import org.lensward.quantity.Dioptres;

/**
 * The labelled cylinder that leaves the least astigmatism, and what is left if the lens turns.
 *
 * @param ideal the lens that would leave none
 * @param lens the labelled lens chosen, laid on the net steep meridian
 * @param residual what it leaves
 * @param spherical what a lens without cylinder would leave
 * @param rotations what the chosen lens leaves when it lies askew
 */
public record ToricChoice(
        ToricLens ideal, ToricLens lens, SphereCylinder residual, SphereCylinder spherical, List<Rotation> rotations) {

    private static final List<Degrees> TURNS = List.of(Degrees.of(5), Degrees.of(10), Degrees.of(30));

    public ToricChoice {
        rotations = List.copyOf(rotations);
    }

    /**
     * What is left when the lens has turned.
     *
     * @param by anticlockwise from where it belongs
     * @param residual the refraction then
     */
    public record Rotation(Degrees by, SphereCylinder residual) {}

    /**
     * Chooses among the cylinders of a model.
     *
     * @param eye with its net astigmatism
     * @param equivalent the labelled spherical equivalent already chosen
     * @param cylinders labelled, at the lens plane; nought stands for the spherical lens and always competes
     */
    public static ToricChoice of(ToricEye eye, Dioptres equivalent, List<Dioptres> cylinders) {
        Degrees axis = eye.cornea().steepMeridian();
        ToricLens spherical = new ToricLens(equivalent, Dioptres.of(0), axis);
        ToricLens lens = Stream.concat(
                        Stream.of(spherical), cylinders.stream().map(c -> new ToricLens(equivalent, c, axis)))
                .min(Comparator.comparingDouble((ToricLens candidate) -> left(eye, candidate))
                        .thenComparing(ToricLens::cylinder))
                .orElseThrow();
        SphereCylinder residual = eye.refraction(lens);
        return new ToricChoice(
                eye.lensFor(residual.sphericalEquivalent()),
                lens,
                residual,
                eye.refraction(spherical),
                TURNS.stream()
                        .map(by -> new Rotation(by, eye.refraction(lens.rotated(by))))
                        .toList());
    }

    private static double left(ToricEye eye, ToricLens lens) {
        return -eye.refraction(lens).cylinder().value();
    }

    /** Whether the chosen lens corrects more than there is, so that what remains lies across. */
    public boolean overcorrects() {
        return lens.cylinder().compareTo(ideal.cylinder()) > 0;
    }
}
