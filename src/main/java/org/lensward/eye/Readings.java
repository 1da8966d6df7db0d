package org.lensward.eye;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.lensward.quantity.MetresPerSecond;
import org.lensward.quantity.Millimetres;
import org.lensward.quantity.PureNumber;

/**
 * Every usable measurement the record holds of one eye, before one set is chosen to plan with.
 *
 * @param lengths axial lengths
 * @param corneas keratometry
 * @param chamberDepths anterior chamber depths from the epithelium
 * @param lensThicknesses of the natural lens
 */
public record Readings(
        List<Length> lengths,
        List<Dated<Keratometry>> corneas,
        List<Dated<Millimetres>> chamberDepths,
        List<Dated<Millimetres>> lensThicknesses) {

    public Readings {
        lengths = List.copyOf(lengths);
        corneas = List.copyOf(corneas);
        chamberDepths = List.copyOf(chamberDepths);
        lensThicknesses = List.copyOf(lensThicknesses);
    }

    /**
     * A measurement and its day.
     *
     * @param measured the value
     * @param day when it was taken
     */
    public record Dated<T>(Measured<T> measured, LocalDate day) {}

    /**
     * One axial length.
     *
     * @param measured the length
     * @param day when it was taken
     * @param method how
     * @param scatter standard deviation of its readings, where the device gave one
     * @param signal signal-to-noise ratio, where the device gave one
     * @param velocity of sound that the device assumed, for ultrasound
     */
    public record Length(
            Measured<Millimetres> measured,
            LocalDate day,
            BiometryMethod method,
            Optional<Measured<Millimetres>> scatter,
            Optional<Measured<PureNumber>> signal,
            Optional<Measured<MetresPerSecond>> velocity) {}
}
