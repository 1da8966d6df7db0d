package org.lensward.outcome;

import org.lensward.quantity.PureNumber;

/**
 * Visual acuity.
 *
 * @param decimal the Snellen fraction as a decimal: 1.0 is 6/6 or 20/20; above nought, 3 at most
 */
public record Acuity(PureNumber decimal) implements Comparable<Acuity> {

    public Acuity {
        if (decimal.value() <= 0 || decimal.value() > 3) {
            throw new IllegalArgumentException("An acuity lies above 0 and not above 3, not at " + decimal);
        }
    }

    /** Of a chart read to this logMAR: decimal = 10^-logMAR (Bailey and Lovie, Am J Optom Physiol Opt 1976;53:740). */
    public static Acuity ofLogMar(PureNumber logMar) {
        return new Acuity(PureNumber.of(Math.pow(10, -logMar.value())));
    }

    /** The logarithm of the minimum angle of resolution; 0 for 6/6, 0.30 for 6/12. */
    public PureNumber logMar() {
        return PureNumber.of(-Math.log10(decimal.value()));
    }

    @Override
    public int compareTo(Acuity other) {
        return decimal.compareTo(other.decimal);
    }
}
