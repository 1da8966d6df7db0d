package org.lensward.check;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.lensward.eye.Laterality;
import org.lensward.finding.Evidence;
import org.lensward.quantity.Degrees;

/**
 * What a lens check expects on patient and carton: the plan as it was confirmed.
 *
 * @param evidence the check's Task in the record
 * @param booking the booking, such as {@code ServiceRequest/b1}
 * @param patient who
 * @param eye which eye
 * @param fingerprint of the plan, 64 hexadecimal digits
 * @param lens model, signed power and cylinder
 * @param axis of the lens marks, for a toric lens
 * @param operation the day
 * @param allergies known when it was planned, in the record's words
 * @param backUps that must stand by
 */
public record Expected(
        Evidence evidence,
        String booking,
        Identity patient,
        Laterality eye,
        String fingerprint,
        CheckedLens lens,
        Optional<Degrees> axis,
        LocalDate operation,
        Set<String> allergies,
        List<BackUp> backUps) {

    /** As many digits of a fingerprint as a sheet prints. */
    static final int PRINTED = 12;

    public Expected {
        allergies = Set.copyOf(allergies);
        backUps = List.copyOf(backUps);
        if (!fingerprint.matches("[0-9a-f]{64}")) {
            throw new IllegalArgumentException("A fingerprint has 64 hexadecimal digits");
        }
    }

    /** Whether what stands on a sheet is this plan's fingerprint: whole, or as many of its first digits as are printed. */
    boolean isNamed(String onTheSheet) {
        String read = onTheSheet.strip();
        return read.length() >= PRINTED && fingerprint.startsWith(read);
    }

    @Override
    public String toString() {
        return evidence.resource();
    }
}
