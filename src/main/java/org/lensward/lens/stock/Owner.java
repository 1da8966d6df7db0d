package org.lensward.lens.stock;

/**
 * Whose carton it is until it is implanted.
 *
 * @param name the owner as the record refers to them, such as {@code Organization/hospital}
 * @param consigned whether it is on consignment: owned by its supplier, replenished when used
 */
public record Owner(String name, boolean consigned) {}
