package org.lensward.outcome.constant;

import java.util.Optional;
import org.lensward.eye.BiometryMethod;
import org.lensward.optics.LensConstants;

/** The constants that plans are made with today; a fit starts from them and is drawn towards them. */
public interface ConstantsInUse {

    /** Those of that model for that method; empty where there are none, and then nothing is learnt either. */
    Optional<LensConstants> of(String model, BiometryMethod method);
}
