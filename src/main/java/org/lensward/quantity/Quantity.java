package org.lensward.quantity;

/** A number with its unit. */
public sealed interface Quantity
        permits Millimetres, Dioptres, Degrees, PureNumber, Probability, RefractiveIndex, MetresPerSecond {

    /** The size in the type's own unit; always finite. */
    double value();

    /** The unit as a person writes it. */
    String symbol();
}
