package org.lensward.eye;

import java.util.List;
import java.util.Optional;
import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;

/**
 * One eye as the record shows it.
 *
 * @param side which eye
 * @param biometry the measurements to plan with, where there are usable ones
 * @param history signs affirmed and denied
 * @param surgery operations it has had
 * @param pupil diameter when dilated, where that was recorded
 * @param surprise achieved minus predicted spherical equivalent of a lens it already has, where both are recorded
 * @param other what only some plans ask for
 * @param examination what was measured for the sake of the operation itself
 */
public record Eye(
        Laterality side,
        Optional<Biometry> biometry,
        History history,
        List<EyeSurgery> surgery,
        Optional<Measured<Millimetres>> pupil,
        Optional<Measured<Dioptres>> surprise,
        OtherReadings other,
        Examination examination) {

    public Eye {
        surgery = List.copyOf(surgery);
        if (biometry.isPresent() && biometry.get().eye() != side) {
            throw new IllegalArgumentException("Biometry of the other eye");
        }
    }

    /** An eye that was not examined for the operation yet. */
    public Eye(
            Laterality side,
            Optional<Biometry> biometry,
            History history,
            List<EyeSurgery> surgery,
            Optional<Measured<Millimetres>> pupil,
            Optional<Measured<Dioptres>> surprise,
            OtherReadings other) {
        this(side, biometry, history, surgery, pupil, surprise, other, Examination.none());
    }

    /** An eye of which nothing else was recorded. */
    public Eye(
            Laterality side,
            Optional<Biometry> biometry,
            History history,
            List<EyeSurgery> surgery,
            Optional<Measured<Millimetres>> pupil,
            Optional<Measured<Dioptres>> surprise) {
        this(side, biometry, history, surgery, pupil, surprise, OtherReadings.none());
    }

    /** The same eye, examined. */
    public Eye examined(Examination found) {
        return new Eye(side, biometry, history, surgery, pupil, surprise, other, found);
    }

    /** The same eye with another biometry. */
    public Eye measured(Biometry other) {
        return new Eye(side, Optional.of(other), history, surgery, pupil, surprise, this.other, examination);
    }
}
