package org.lensward.optics;

/**
 * A lens constant and whether anyone derived it.
 *
 * @param value the constant
 * @param converted true if it was computed from another formula's constant; such a constant is a finding where it is used
 */
public record Constant<T>(T value, boolean converted) {

    static <T> Constant<T> published(T value) {
        return new Constant<>(value, false);
    }

    static <T> Constant<T> convertedAs(T value) {
        return new Constant<>(value, true);
    }
}
