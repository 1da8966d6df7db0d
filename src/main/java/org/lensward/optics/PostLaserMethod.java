package org.lensward.optics;

import org.lensward.finding.Evidence;
import org.lensward.finding.Finding;
import org.lensward.finding.FindingCode;
import org.lensward.quantity.Dioptres;

/**
 * One way to plan a lens behind a reshaped cornea, and why it may be used.
 *
 * @param words the method's name, such as "SRK/T double-K"
 * @param formula what computes it
 * @param why as the plan explains it
 * @param reported the prediction error's standard deviation that a paper reports
 */
public record PostLaserMethod(String words, Formula formula, String why, Spread<Dioptres> reported) {

    /** That this method was the one to plan by, and why; not every method sees every eye. */
    public Finding named(Evidence reshaped) {
        return Finding.of(FindingCode.POST_LASER_METHOD, reshaped, words, why);
    }
}
