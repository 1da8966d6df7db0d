package org.lensward.optics;

import org.lensward.quantity.Millimetres;
import org.lensward.quantity.PureNumber;

/**
 * Haigis' three constants: d = a0 + a1 ACD + a2 AL (Haigis et al., Graefe's Arch 2000;238:765).
 *
 * @param a0 offset
 * @param a1 weight of the anterior chamber depth
 * @param a2 weight of the axial length
 */
public record HaigisConstants(Millimetres a0, PureNumber a1, PureNumber a2) {}
