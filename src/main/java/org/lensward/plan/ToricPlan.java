package org.lensward.plan;

import org.lensward.optics.toric.Astigmatism;
import org.lensward.optics.toric.ToricChoice;
import org.lensward.quantity.Degrees;

/**
 * The cylinder of a toric lens.
 *
 * @param anterior astigmatism as the keratometer measured it
 * @param net what the lens has to correct: with the back of the cornea and the incision's effect
 * @param choice the labelled cylinder, its axis and what it leaves
 */
public record ToricPlan(Astigmatism anterior, Astigmatism net, ToricChoice choice) {

    /** The meridian to lay the marks on, to the whole degree that a hand can keep; 180 for 0. */
    public Degrees markedAxis() {
        double degree = Math.rint(choice.lens().axis().value());
        return Degrees.of(degree == 0 ? 180 : degree);
    }
}
