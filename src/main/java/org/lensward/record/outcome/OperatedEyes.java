package org.lensward.record.outcome;

import java.util.List;
import org.lensward.outcome.OperatedEye;
import org.lensward.record.Unused;

/**
 * What the record says of one person's operated eyes.
 *
 * @param eyes one for each operation that left a lens
 * @param unused what could not be used, and why
 */
record OperatedEyes(List<OperatedEye> eyes, List<Unused> unused) {

    OperatedEyes {
        eyes = List.copyOf(eyes);
        unused = List.copyOf(unused);
    }
}
