package org.lensward.risk.opening;

import org.lensward.quantity.Millimetres;
import org.lensward.quantity.Percent;

/**
 * How a round opening of the capsule lies over a round optic: circle geometry, seen along the lens's axis.
 *
 * <pre>
 * least overlap    = (D - d) / 2 - e
 * greatest overlap = (D - d) / 2 + e
 * </pre>
 *
 * <p>D is the optic, d the opening, e the distance between their centres. Not modelled: an opening that is not round, the tilt of the
 * lens, a lens that moves as the capsule contracts.
 *
 * @param optic diameter of the optic, more than 0
 * @param opening diameter of the opening, more than 0
 * @param decentration distance between the two centres, 0 or more
 */
public record Overlap(Millimetres optic, Millimetres opening, Millimetres decentration) {

    /** Far below what any instrument resolves, in millimetres. */
    private static final double SAME = 1e-9;

    public Overlap {
        if (optic.value() <= 0 || opening.value() <= 0 || decentration.value() < 0) {
            throw new IllegalArgumentException("An optic of " + optic + " and an opening of " + opening + ", "
                    + decentration + " off centre, are no circles");
        }
    }

    /** Where the rim of capsule over the optic is narrowest; negative by how far the optic's edge stands free there. */
    public Millimetres least() {
        return Millimetres.of(rim() - decentration.value());
    }

    /** Where the rim is widest. */
    public Millimetres greatest() {
        return Millimetres.of(rim() + decentration.value());
    }

    /** Whether capsule covers the optic's edge all round. */
    public boolean complete() {
        return least().value() >= -SAME;
    }

    /** Share of the optic's edge that no capsule covers, 0 to 100 %. */
    public Percent freeEdge() {
        return Percent.of(100 * angle(optic.value() / 2, opening.value() / 2) / Math.PI);
    }

    /** Share of the optic's front that capsule covers, 0 to 100 %. */
    public Percent coveredFront() {
        double whole = Math.PI * square(optic.value() / 2);
        return Percent.of(Math.max(0, 100 * (1 - shared() / whole)));
    }

    private double rim() {
        return (optic.value() - opening.value()) / 2;
    }

    /** Whether one circle lies wholly within the other, equal and concentric ones included. */
    private boolean nested() {
        return decentration.value() <= Math.abs(rim());
    }

    /** Area common to both circles: the smaller one, or a sector of each less the kite between the centres and the crossings. */
    private double shared() {
        double large = optic.value() / 2;
        double small = opening.value() / 2;
        if (nested()) {
            return Math.PI * square(Math.min(large, small));
        }
        double onOptic = angle(large, small);
        double onOpening = angle(small, large);
        return square(large) * (onOptic - Math.sin(onOptic) * Math.cos(onOptic))
                + square(small) * (onOpening - Math.sin(onOpening) * Math.cos(onOpening));
    }

    /** Half the angle of the first circle's edge that lies inside the second, 0 to pi, by the law of cosines. */
    private double angle(double of, double inside) {
        if (nested()) {
            return of < inside ? Math.PI : 0;
        }
        double apart = decentration.value();
        double cosine = (square(of) + square(apart) - square(inside)) / (2 * of * apart);
        return Math.acos(Math.max(-1, Math.min(1, cosine)));
    }

    private static double square(double length) {
        return length * length;
    }
}
