package org.lensward.optics;

import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;

/**
 * What is left of a thick element when it is replaced by two planes.
 *
 * @param power equivalent power
 * @param front the first principal plane, from the front vertex; positive behind it
 * @param back the second principal plane, from the back vertex; negative before it
 */
public record PrincipalPlanes(Dioptres power, Millimetres front, Millimetres back) {}
