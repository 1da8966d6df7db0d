package org.lensward.optics;

import org.lensward.quantity.Dioptres;

/**
 * One way to plan a lens behind a reshaped cornea, and why it may be used.
 *
 * @param words the method's name, such as "SRK/T double-K"
 * @param formula what computes it
 * @param why as the plan explains it
 * @param reported the prediction error's standard deviation that a paper reports
 */
public record PostLaserMethod(String words, Formula formula, String why, Spread<Dioptres> reported) {}
