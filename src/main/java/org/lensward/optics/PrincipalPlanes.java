package org.lensward.optics;

import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;

/**
 * What is left of a thick element when it is replaced by two planes.
 *
 * <pre>
 * F  = F1 + F2 - t F1 F2
 * H  = n0 t F2 / F
 * H' = -n1 t F1 / F
 * </pre>
 *
 * F1 and F2 the surfaces' powers in D, t the reduced thickness in m, n0 and n1 the indices before and behind; Gullstrand's equations, any
 * textbook of geometrical optics.
 *
 * @param power F, equivalent power
 * @param front H, the first principal plane, from the front vertex; positive behind it
 * @param back H', the second principal plane, from the back vertex; negative before it
 */
public record PrincipalPlanes(Dioptres power, Millimetres front, Millimetres back) {

    /** A plate without power is taken as the limit of equal surfaces: both planes fall together in its middle. */
    static PrincipalPlanes of(ThickSurfaces surfaces, double before, double behind) {
        double power = surfaces.power();
        double frontShare = power == 0 ? 0.5 : surfaces.back() / power;
        double backShare = power == 0 ? 0.5 : surfaces.front() / power;
        double thickness = 1000 * surfaces.reduced();
        return new PrincipalPlanes(
                Dioptres.of(power),
                Millimetres.of(before * thickness * frontShare),
                Millimetres.of(-behind * thickness * backShare));
    }
}
