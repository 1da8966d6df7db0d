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
record PersonsEyes(List<OperatedEye> eyes, List<Unused> unused) {

    PersonsEyes {
        eyes = List.copyOf(eyes);
        unused = List.copyOf(unused);
    }
}
