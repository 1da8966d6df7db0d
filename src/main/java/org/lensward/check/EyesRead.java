package org.lensward.check;

import java.util.Optional;
import org.lensward.eye.Laterality;

/**
 * The eye as people find it stated, each place by itself; empty where it is not stated.
 *
 * @param booking by consent or booking
 * @param sheet on the plan's sheet
 * @param biometry on the biometry it came from
 * @param mark by the surgeon's mark on the skin
 */
public record EyesRead(
        Optional<Laterality> booking,
        Optional<Laterality> sheet,
        Optional<Laterality> biometry,
        Optional<Laterality> mark) {

    /** The same eye everywhere. */
    public static EyesRead all(Laterality eye) {
        return new EyesRead(Optional.of(eye), Optional.of(eye), Optional.of(eye), Optional.of(eye));
    }
}
